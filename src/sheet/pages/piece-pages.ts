import * as says from '../../../content/words/sheet/pages.ts'
import * as sides from '../../../content/words/sheet/sides.ts'
import * as steps from '../../../content/words/sheet/steps.ts'
import { mainFold } from '../../making/grain.ts'
import type { Design, Piece, Tight } from '../../paper/index.ts'
import { signedArea } from '../../paper/plane/convex.ts'
import type { Rectangle } from '../marks/clip.ts'
import type { SheetLines, Trim } from '../marks/instructions.ts'
import { faceOf, printedAs, trimStep } from '../marks/instructions.ts'
import { placesOn } from '../marks/joint-places.ts'
import type { Place } from '../marks/piece-marks.ts'
import { readersEnds } from '../marks/readers-end.ts'
import { RULER_WIDTH, rulers } from '../marks/rulers.ts'
import type { Run, SheetMark } from '../marks/setting.ts'
import { moved, stack } from '../marks/setting.ts'
import type { Cell } from './bed.ts'
import { GAP, MARGIN, Shelves } from './bed.ts'
import { bedPage, trimmedAlong } from './bed-page.ts'
import type { Turned } from './fit.ts'
import { turns } from './fit.ts'
import { HARD, hardship } from './hardship.ts'
import type { Cut, Cuts, Drawn, Job } from './named-piece.ts'
import { cutsOf, drawnIn, movedPlace, nameOfPiece, ROOMS } from './named-piece.ts'
import { nestedIn, nothingKnown, roundNested } from './nested.ts'
import type { Paper } from './paper-sizes.ts'
import type { Spot } from './rows.ts'
import { APART, asRead, besideRows, columnsIn, LEAST, shelved } from './rows.ts'
import type { Fitting, Section } from './sections.ts'
import { checkName, checkWords, fittings, pieceHead, pieceHeader, rulersAlone } from './sections.ts'

/** A page of pieces that are glued on. */
export interface PiecePage {
  readonly turn: Turned
  readonly marks: readonly SheetMark[]
  readonly placed: readonly { readonly piece: string; readonly place: Place }[]
}

/** Lists that may run on in a next column. */
const PARTED: ReadonlySet<Section['id']> = new Set(['sizes', 'joints', 'steps'])

/** Between the rows of a section that the end of a column parts, mm. */
const ROW_GAP = 1.2

/** How words stand on free paper: in which type they are tried, in columns about so wide, mm. */
interface Manner {
  readonly types: readonly Fitting[]
  readonly isSmall?: boolean
  readonly column: number
}

/** Roomy as far as that goes; and close from the start, where a further page of words alone is spared by it. */
const manners: readonly Manner[] = [
  { types: [fittings.roomy, fittings.close], column: 75 },
  { types: [fittings.close], column: 75 },
  { types: [fittings.close], column: 56 },
  { types: [fittings.tight], column: 75, isSmall: true },
  { types: [fittings.least], column: 75, isSmall: true },
  { types: [fittings.least], column: 56, isSmall: true },
]

const drawn = (spots: readonly Spot[], turn: Turned): PiecePage => ({
  turn,
  marks: spots.flatMap(({ cut, x, y }) => cut.marks.map((mark) => moved(mark, x, y))),
  placed: spots.map(({ cut, x, y }) => ({ piece: cut.piece.id, place: movedPlace(cut.place, x, y) })),
})

/** Pages of pieces, and the sections of words that found no room on them. */
export interface PiecePages {
  readonly pages: readonly PiecePage[]
  readonly left: ReadonlySet<Section['id']>
}

/** A column that begins no farther to the right of the check lines than this, mm, is the edge for what stands beside them. */
const NEAR = 15

/**
 * What the check lines are for, or their name where that is said already, at their right, under the column that
 * begins there; and where it begins. No words where it would be too narrow.
 */
function checkBeside(
  spots: readonly Spot[],
  turn: Turned,
  isSaid: boolean,
  stretch: number | undefined,
  cells: readonly Cell[],
): { readonly words: readonly SheetMark[]; readonly top: number } {
  const least = MARGIN + RULER_WIDTH + GAP
  const near = cells.map((cell) => cell.x).filter((x) => x >= least && x <= least + NEAR)
  const x = near.length > 0 ? Math.min(...near) : least
  const low = turn.height - MARGIN
  const width = turn.width - MARGIN - x
  const block =
    width < LEAST ? null : isSaid ? checkName(width) : checkWords(fittings.roomy, stretch).block(width)
  // Above the number of the page.
  const top = isSaid ? low - rulers().height - 1 : low - (block?.height ?? 0)
  const bottom = Math.max(...spots.map(({ cut, y }) => y + cut.height))
  if (!block || top < bottom + APART) return { words: [], top: low }
  return { words: block.marks.map((mark) => moved(mark, x, top)), top }
}

/** The words on a page of pieces: its head, its check lines, and what else finds room. */
function wordsOn(
  spots: readonly Spot[],
  { turn, freeOn }: Pick<Way, 'turn' | 'freeOn'>,
  head: readonly SheetMark[],
  waiting: (type: Fitting) => readonly Section[],
  left: Set<Section['id']>,
  { types, column }: Manner,
  stretch: number | undefined,
): readonly SheetMark[] {
  const foot = turn.height - MARGIN - rulers().height
  const marks = [...head, ...rulers().marks.map((mark) => moved(mark, MARGIN, foot))]
  const columns = freeOn(spots, foot, column)
  const { words, top } = checkBeside(spots, turn, !left.has('check'), stretch, columns)
  if (words.length > 0) left.delete('check')
  marks.push(...words)
  const free = freeOn(spots, Math.min(foot, top), column)
  const shelves = new Shelves()
  const place = (section: Section, cells: readonly Cell[]): void => {
    const found = shelves.put(section.block, cells)
    if (!found) return
    marks.push(...found)
    left.delete(section.id)
  }
  /** Rows through several columns, where no column holds them all; the first is kept with its label. */
  const flow = (section: Section, all: readonly Cell[]): void => {
    const widest = Math.max(...all.map((cell) => cell.width))
    // Rows are as wide as the narrowest of their columns: without narrow ones they are fewer.
    for (const cells of [all.filter((cell) => cell.width > 0.9 * widest), all]) {
      if (cells.length === 0) return
      const width = Math.min(...cells.map((cell) => cell.width))
      const rows = section.rows(width)
      const whole = [stack(rows.slice(0, 2), ROW_GAP), ...rows.slice(2)]
      const found = shelves.evenly(whole, cells, ROW_GAP, section.again?.(width) ?? null)
      if (!found) continue
      marks.push(...found)
      left.delete(section.id)
      return
    }
  }
  const inOrder = asRead(free)
  for (const type of types)
    for (const section of waiting(type).filter(({ id }) => left.has(id) && id !== 'check')) {
      place(section, free)
      // Steps are rather parted than made small.
      const mayPart = section.id === 'steps' || type !== fittings.roomy
      if (mayPart && left.has(section.id) && PARTED.has(section.id)) flow(section, inOrder)
    }
  return marks
}

/** A piece that leaves no room beside others: on a page to itself, with what words find room there. */
function alone(
  { design, lines: asked, care, ends }: Job,
  piece: Piece,
  paper: Paper,
  waiting: (type: Fitting) => readonly Section[],
): { readonly page: PiecePage; readonly left: readonly Section[] } {
  const isCover = piece.id === 'cover'
  const lines = printedAs(piece.id, asked)
  const head = (width: number) => pieceHeader(design, lines, width, { isCover })
  const name: readonly Run[] = isCover
    ? [{ text: sides.coverEdge }]
    : nameOfPiece(piece, ends(piece.id), lines)
  const named = (trim: Trim): readonly Run[] => {
    const trimming = trimStep(trim, steps.ofThis)
    return trimming === null ? name : [...name, { text: `. ${trimming}` }]
  }
  const { bed, marks, left } = bedPage(
    {
      piece,
      joints: placesOn(design, piece.id, faceOf(lines)),
      lines,
      care,
      head,
      sections: (type) => {
        const wanted = waiting(type)
        const check = wanted.find(({ id }) => id === 'check') ?? rulersAlone
        return [pieceHead(head), check, ...wanted.filter(({ id }) => id !== 'check')]
      },
      notes: (trim) => ({
        below: named(trim),
        beside: isCover ? [{ text: says.alongCover }, ...trimmedAlong(trim)] : named(trim),
        on: [named(trim)],
      }),
    },
    paper,
  )
  const page: PiecePage = { turn: bed.turn, marks, placed: [{ piece: piece.id, place: bed.place }] }
  return { page, left }
}

/** Pieces on pages of one turn, and what paper they leave free there. */
interface Way {
  readonly turn: Turned
  readonly pages: readonly (readonly Spot[])[]
  readonly large: readonly Piece[]
  /** So many main folds lie across the grain. */
  readonly across: number
  /** How much paper the pieces take from the first to the last of each page, mm²; more where they are harder to read. */
  readonly taken: number
  freeOn(spots: readonly Spot[], foot: number, column: number): readonly Cell[]
}

const QUARTERS = [0, Math.PI / 2, -Math.PI / 2, Math.PI]

/** Rows are easier to look through: they may take so many times as much paper, if no more pages. */
const TIDY = 1.2

/** So many times as much paper is as good as pieces that stand on their heads. */
const UPSIDE_DOWN = 1.02

/** About so wide is a column of words, mm, and so much of the paper that pieces leave can hold them. */
const COLUMN = 75

const USABLE = 0.6

/** More of the paper than this pieces do not fill, however close their names. */
const FULLEST = 0.6

/** The same turn between half a turn back and half a turn on. */
const least = (turn: number): number => Math.atan2(Math.sin(turn), Math.cos(turn))

/** The grain of printing paper runs along its long side, nearly always. Common practice, no source. */
const grainOf = ({ width, height }: Turned): number => (width > height ? 0 : Math.PI / 2)

/** The turns that lay the main fold of a piece along the grain of its page, the least one first; without a fold two will do. */
function turnsAlong(piece: Piece, turn: Turned): readonly number[] {
  const fold = mainFold(piece)
  if (fold === null) return QUARTERS.slice(0, 2)
  const along = [grainOf(turn) - fold, grainOf(turn) - fold + Math.PI].map(least)
  // A quarter turn is one, whatever sums of fractions say.
  const exact = along.map((one) => QUARTERS.find((quarter) => Math.abs(least(quarter - one)) < 1e-9) ?? one)
  return exact.sort((a, b) => Math.abs(a) - Math.abs(b))
}

/** A piece in the ways in which it may lie on a page: with its main fold along the grain, else any quarter turn. */
interface Lying {
  readonly piece: Piece
  /** In its least turn. */
  readonly upright: Cuts
  /** In all turns. */
  readonly turned: readonly Cut[]
  readonly isAcross: boolean
}

/** Pieces that were drawn and laid side by side for the same sheet with other words: they are the same. */
export interface Tried {
  readonly cuts: Map<string, Cuts>
  readonly drawn: Map<string, Drawn>
  readonly nests: ReturnType<typeof nothingKnown>
}

export const nothingTried = (): Tried => ({
  cuts: new Map(),
  drawn: new Map(),
  nests: nothingKnown(),
})

/** A piece as it is drawn in one of its turns, once for a sheet. */
export function drawnBy(
  job: Pick<Job, 'design' | 'lines' | 'care'>,
  { drawn }: Pick<Tried, 'drawn'>,
  piece: Piece,
  turn: number,
): Drawn {
  const key = `${piece.id} ${turn}`
  const found = drawn.get(key) ?? drawnIn(job, piece, turn)
  drawn.set(key, found)
  return found
}

/**
 * Pieces that are glued on, each at true size and with its name, side by side on as few pages as they take; those that
 * leave no room for words have a page to themselves, and so has the cover, which comes last. They lie by their true
 * outlines, or in rows where those leave better room for words. Words that found no room beside the card stand on free
 * paper.
 * @param waiting these words, in a type
 * @param isPlain whether a piece carries its name
 * @param further how many pages of words alone some of them would take
 */
export function piecePages(
  design: Design,
  flat: readonly Piece[],
  paper: Paper,
  lines: SheetLines,
  care: readonly Tight[],
  waiting: (type: Fitting) => readonly Section[],
  further: (left: ReadonlySet<Section['id']>) => number,
  isPlain: Job['isPlain'],
  tried: Tried,
): PiecePages {
  const { cuts: known, nests } = tried
  const hasCards = flat.some(({ id }) => id === 'card')
  const room = (turn: Turned) => {
    const head = pieceHeader(design, lines, turn.width - 2 * MARGIN, { hasCards })
    const top = MARGIN + head.height + 5
    const foot = rulers().height + APART
    return { head, top, width: turn.width - 2 * MARGIN, height: turn.height - MARGIN - top - foot }
  }
  const job = { design, lines, care, ends: readersEnds(design, faceOf(lines)), isPlain }
  const jobs: Readonly<Record<keyof typeof ROOMS, Job>> = {
    easy: { ...job, room: ROOMS.easy },
    close: { ...job, room: ROOMS.close },
  }
  const cuts = (piece: Piece, turn: number, isAcross: boolean, names: keyof typeof ROOMS): Cuts => {
    const key = `${piece.id} ${turn} ${isAcross} ${names}`
    const found = known.get(key) ?? cutsOf(jobs[names], drawnBy(job, tried, piece, turn), turn, isAcross)
    known.set(key, found)
    return found
  }
  const lyingOn = (piece: Piece, turn: Turned, names: keyof typeof ROOMS): Lying | null => {
    const { width, height } = room(turn)
    // The ground that its letters keep for themselves has to go on the paper too.
    const fits = ({ areas, ...cut }: Cut): boolean =>
      [width, height].every((room, k) => {
        const at = areas.flatMap((area) => area.map((point) => point[k] as number))
        return (k === 0 ? cut.width : cut.height) <= room && Math.max(...at) - Math.min(...at) <= room
      })
    const fitting = (by: readonly number[], isAcross: boolean): readonly Cuts[] =>
      by
        .map((one) => cuts(piece, one, isAcross, names))
        .filter(({ below }) => fits(below))
        .map(({ below, close }) => ({ below, close: close.filter(fits) }))
    if (piece.id === 'cover') return null
    const along = fitting(turnsAlong(piece, turn), false)
    const found = along.length > 0 ? along : fitting(QUARTERS, true)
    const [upright] = found
    return upright
      ? { piece, upright, turned: found.flatMap(({ close }) => close), isAcross: along.length === 0 }
      : null
  }
  const waysOn = (turn: Turned, names: keyof typeof ROOMS): readonly Way[] => {
    const { width, height, top } = room(turn)
    const once = new Map([...new Set(flat)].map((piece) => [piece, lyingOn(piece, turn, names)]))
    const small = flat.flatMap((piece) => once.get(piece) ?? [])
    const large = flat.filter((piece) => !once.get(piece))
    const across = small.filter(({ isAcross }) => isAcross).length
    const onPage = (pages: readonly (readonly Spot[])[]): readonly (readonly Spot[])[] =>
      pages.map((spots) => spots.map((spot) => ({ ...spot, x: spot.x + MARGIN, y: spot.y + top })))
    const takenOn = (pages: Way['pages']): number =>
      pages.reduce(
        (sum, spots) => sum + width * (Math.max(...spots.map(({ cut, y }) => y + cut.height)) - top),
        0,
      )
    const nested = (all: readonly (readonly Cut[])[], times = 1): Way => {
      const free = new Map<string, readonly Rectangle[]>()
      const pages = onPage(nestedIn(all, width, height, nests))
      return {
        ...{ turn, large, across, pages, taken: times * takenOn(pages) },
        freeOn: (spots, foot, column) => {
          const key = `${pages.indexOf(spots)} ${foot}`
          const found = free.get(key) ?? roundNested(spots, turn, top, foot - APART)
          free.set(key, found)
          return found.flatMap((one) => columnsIn(one, column))
        },
      }
    }
    const upright = nested(small.map((one) => one.upright.close))
    const first = small.map((one) => one.upright.below)
    const inRows = onPage(shelved(first, width, height))
    const rows: Way = {
      ...{ turn, large, across, pages: inRows, taken: takenOn(inRows) / TIDY },
      freeOn: (spots, foot, column) => besideRows(spots, turn, foot, column),
    }
    return [
      upright,
      // Upside down they are harder to read: only where that saves a good piece of paper.
      ...(small.length > 1
        ? [
            nested(
              small.map((one) => one.turned),
              UPSIDE_DOWN,
            ),
          ]
        : []),
      rows,
    ]
  }
  const count = ({ pages, large }: Way): number => pages.length + large.length
  const pagesAlone = new Map<string, ReturnType<typeof alone>>()
  const filled = (way: Way, manner: Manner): PiecePages => {
    const { turn, pages, large } = way
    const { head } = room(turn)
    const left = new Set(waiting(fittings.roomy).map(({ id }) => id))
    const full = pages.map((spots): PiecePage => {
      const over = head.marks.map((mark) => moved(mark, MARGIN, MARGIN))
      const page = drawn(spots, turn)
      return {
        ...page,
        marks: [...page.marks, ...wordsOn(spots, way, over, waiting, left, manner, paper.stretch)],
      }
    })
    const single = large.map((piece): PiecePage => {
      const key = [piece.id, ...left].join(' ')
      const made =
        pagesAlone.get(key) ??
        alone(jobs.easy, piece, paper, (type) => waiting(type).filter(({ id }) => left.has(id)))
      pagesAlone.set(key, made)
      const rest = new Set(made.left.map(({ id }) => id))
      for (const id of [...left]) if (!rest.has(id)) left.delete(id)
      return made.page
    })
    return { pages: [...full, ...single], left }
  }
  const all = waiting(fittings.least).reduce(
    (sum, { block }) => sum + COLUMN * (block(COLUMN)?.height ?? 0),
    0,
  )
  /** Whether words would go on the free paper of a way at all, before they are tried there. */
  const mayHold = ({ turn, pages, large }: Way): boolean => {
    const { width, height } = room(turn)
    const pieceArea = pages.flat().reduce((sum, { cut }) => sum + Math.abs(signedArea(cut.piece.outline)), 0)
    return large.length > 0 || all < USABLE * (pages.length * width * height - pieceArea)
  }
  const covers = flat.filter(({ id }) => id === 'cover').length
  /** Whether all pieces but the cover might lie on so many pages, for all their names. */
  const mayLieOn = (count: number): boolean => {
    const { width, height } = room(turns(paper)[1])
    const pieceArea = flat.reduce(
      (sum, { id, outline }) => sum + (id === 'cover' ? 0 : Math.abs(signedArea(outline))),
      0,
    )
    return count > 0 && pieceArea < FULLEST * count * width * height
  }
  let best: { readonly pages: PiecePages; readonly total: number; readonly hard: number } | undefined
  const seek = (ways: readonly Way[]): void => {
    const fewest = Math.min(...ways.map(count))
    const order = [...ways].sort((a, b) => count(a) - count(b) || a.across - b.across || a.taken - b.taken)
    const hopeful = fewest + (order.some((way) => count(way) === fewest && mayHold(way)) ? 0 : 1)
    for (const manner of manners)
      for (const way of order) {
        // In small type nothing is found any more that would be much easier to read.
        if (best && best.total <= hopeful && (best.hard < HARD || manner.isSmall)) return
        // As many pages as there are in all would have to do without a single page of words.
        const most =
          best && best.pages.pages.length === best.total && best.hard >= HARD ? best.total + 1 : best?.total
        if (most !== undefined && count(way) >= most) continue
        const pages = filled(way, manner)
        const total = pages.pages.length + further(pages.left)
        const hard = hardship(pages.pages)
        if (!best || total < best.total || (total === best.total && hard < best.hard))
          best = { pages, total, hard }
      }
  }
  const [lying, standing] = turns(paper)
  const waysWith = (names: keyof typeof ROOMS): readonly Way[] => [
    ...waysOn(standing, names),
    ...waysOn(lying, names),
  ]
  seek(waysWith('easy'))
  // Of several pages of pieces one may be spared by names with less room round them.
  const { pages: found } = best as unknown as { readonly pages: PiecePages }
  if (mayLieOn(found.pages.length - covers - 1)) seek(waysWith('close'))
  return (best as unknown as { readonly pages: PiecePages }).pages
}
