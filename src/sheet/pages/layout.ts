/**
 * A sheet: the pieces of a design at true size on paper, and round them the words that a reader needs at
 * the table. A page looks like a page of the exercise book: a margin of words down the left, the card
 * beside it, the rest in the strip below.
 *
 *   +--------+------------------+
 *   | margin | card             |
 *   | title  |                  |
 *   | steps  +------------------+
 *   | sizes  | rulers |  lines  |
 *   +--------+------------------+
 *
 * Where the card leaves no room for a section, a further page of words takes it.
 */
import * as says from '../../../content/words/sheet/pages.ts'
import * as sides from '../../../content/words/sheet/sides.ts'
import * as steps from '../../../content/words/sheet/steps.ts'
import { artColours } from '../../drawing/art/colours.ts'
import { artOutlines } from '../../drawing/art/outlines.ts'
import type { Drawing, PathMark, Point } from '../../drawing/pen/marks.ts'
import { scored } from '../../making/spine.ts'
import type { Design, Piece, Tight } from '../../paper/index.ts'
import { COVER_RIM, nameOf, pieces, plainText, tightest } from '../../paper/index.ts'
import { careOf } from '../marks/care-marks.ts'
import type { Rectangle } from '../marks/clip.ts'
import { beside, EVERYWHERE } from '../marks/clip.ts'
import type { SheetArt, SheetFace, SheetLines, Trim } from '../marks/instructions.ts'
import { faceOf, pieceName, printedAs, trimStep } from '../marks/instructions.ts'
import { placesOn } from '../marks/joint-places.ts'
import type { Placed } from '../marks/lying.ts'
import { lyingOn } from '../marks/lying.ts'
import { offLines } from '../marks/off-lines.ts'
import { drawnOnce } from '../marks/once.ts'
import type { Painting } from '../marks/painting.ts'
import { edgesOnFolds, paintingOf } from '../marks/painting.ts'
import { foldsAndCuts, onPage, pieceMarks } from '../marks/piece-marks.ts'
import { RULER_WIDTH } from '../marks/rulers.ts'
import type { Run, SheetMark } from '../marks/setting.ts'
import { extent, stack } from '../marks/setting.ts'
import { far, stretchesOf } from '../marks/stretches.ts'
import { leftOf } from '../marks/strips.ts'
import type { Cell } from './bed.ts'
import { MARGIN, placeAt, Shelves } from './bed.ts'
import { bedPage, READABLE, trimmedAlong } from './bed-page.ts'
import type { Fit, Turned } from './fit.ts'
import { boxOf, fitOn, isTooLarge, TooLargeError, turns } from './fit.ts'
import { HARD, hardship } from './hardship.ts'
import { hasLettersBeside, mayHaveLettersBeside } from './letters-beside.ts'
import { pageNumber } from './page-number.ts'
import type { Paper, PaperName } from './paper-sizes.ts'
import { paperOf, stretched, stretchFor, UnprintableError } from './paper-sizes.ts'
import type { Tried } from './piece-pages.ts'
import { drawnBy, nothingTried, piecePages } from './piece-pages.ts'
import type { Fitting, Section } from './sections.ts'
import {
  fittings,
  header,
  largeHead,
  nameSection,
  sectionsFor,
  sectionsLeft,
  withPagesTold,
} from './sections.ts'
import { tilesOf, tilingOf } from './tiles.ts'

export interface SheetOptions {
  readonly paper: PaperName | Paper
  /** How much is printed on the face that will be seen; every line unless said. */
  readonly lines?: SheetLines
  /** What is drawn on the design; not printed at all unless said. */
  readonly art?: SheetArt
  /** How long the 100 mm check line came out on paper, mm: what is printed makes up for it; 100 unless said. */
  readonly measured?: number
  /** What is larger than the paper is printed on several sheets that are joined; else it is refused. */
  readonly tiled?: boolean
  /** So many of each piece, sheets filled up; one unless said. */
  readonly copies?: number
  /** `few`: title, maker's line and check lines alone, in large print, where all else is said on other paper. */
  readonly words?: 'all' | 'few'
  /** The sizes that ask for more care than others, where they are known already: finding them is most of the work. */
  readonly care?: readonly Tight[]
  /** What does not work yet, in a sentence (`faultSays`); it stands under the title. */
  readonly fault?: string
}

/** A part of a piece that is larger than the paper: what of it is seen, and all of it, in its place. */
export interface SheetPart {
  readonly clip: Rectangle
  readonly marks: readonly SheetMark[]
  readonly painting: Painting | null
}

/** One page to print; the box is the whole paper, in mm. */
export interface SheetPage extends Drawing {
  readonly unit: 'mm'
  readonly marks: readonly SheetMark[]
  /** Under all marks, where the pieces are printed in colour. */
  readonly painting: Painting | null
  /** Under its marks, of a piece that takes several sheets. */
  readonly part?: SheetPart
  readonly paper: Paper
  /** The pieces on this page and where they lie; a page of words has none. */
  readonly placed: readonly Placed[]
}

/** Between the rows of a section that the end of a column parts, mm. */
const ROW_GAP = 1.2

/** How many columns of words a page has: one or two. */
const columnsOn = ({ width }: Turned): number => (width - 4 * MARGIN >= 2 * RULER_WIDTH ? 2 : 1)

/** Pages of words alone, in one or two columns: sections whole where they fit, else parted between rows. */
function wordPages(sections: readonly Section[], turn: Turned): SheetMark[][] {
  // No column is narrower than the check lines are long.
  const count = columnsOn(turn)
  const width = (turn.width - 2 * MARGIN * count) / count
  const columns = Array.from({ length: count }, (_, k): Cell => {
    return { x: MARGIN + k * (width + 2 * MARGIN), y: MARGIN, width, bottom: turn.height - MARGIN }
  })
  const pages: SheetMark[][] = []
  let shelves = new Shelves()
  let column = columns.length
  const put = (block: Section['block'], gap?: number): boolean => {
    const cell = columns[column]
    const found = cell ? shelves.put(block, [cell], gap) : null
    if (found) pages.at(-1)?.push(...found)
    return found !== null
  }
  const next = (): void => {
    column += 1
    if (column < columns.length) return
    shelves = new Shelves()
    column = 0
    pages.push([])
  }
  for (const section of sections) {
    if (put(section.block)) continue
    if ((section.block(width)?.height ?? 0) <= turn.height - 2 * MARGIN) {
      next()
      if (put(section.block)) continue
    }
    const again = section.again?.(width)
    for (const [k, row] of section.rows(width).entries())
      if (!put(() => row, ROW_GAP)) {
        next()
        put(() => (again && k > 0 ? stack([again, row], ROW_GAP) : row), ROW_GAP)
      }
  }
  return pages
}

/** What a page shows, for those who do not see it. */
function sayOf(page: Pick<SheetPage, 'placed'>, lines: SheetLines): string {
  if (page.placed.length === 0) return says.words
  const names = page.placed.map(({ piece }) => nameOf(piece.split('/')[0] ?? piece))
  const [{ piece = '' } = {}] = page.placed
  const isCard = piece === 'card'
  const side =
    printedAs(piece, lines) === 'back' ? (isCard ? 'outside' : 'back') : isCard ? 'inside' : 'front'
  return says.pieces(names, side)
}

const unadorned = ({ art: _, ...design }: Design): Design => design

/** The same without its cover, and without what is drawn on that. */
export const uncovered = ({ card: { cover: _, ...card }, art, papers, ...design }: Design): Design => {
  const isLeft = (panel: string): boolean => !panel.startsWith('cover')
  return {
    ...design,
    card,
    ...(art ? { art: art.filter(({ on }) => isLeft(on)) } : {}),
    ...(papers
      ? { papers: Object.fromEntries(Object.entries(papers).filter(([panel]) => isLeft(panel))) }
      : {}),
  }
}

/** A cover laid open, mm. */
const coverSize = ({ card: { width, height } }: Design): readonly [wide: number, high: number] => [
  2 * (width + COVER_RIM),
  height + 2 * COVER_RIM,
]

/** Free paper round words, mm. */
const CLEAR = 0.4

/** What is left of a run of points outside some rectangles. */
function outside(run: readonly Point[], boxes: readonly Rectangle[]): readonly (readonly Point[])[] {
  const left: Point[][] = []
  for (const [k, to] of run.entries()) {
    const from = run[k - 1]
    if (!from) continue
    for (const [a, b] of beside([from, to], boxes)) {
      const end = left.at(-1)?.at(-1)
      if (end && end[0] === a[0] && end[1] === a[1]) left.at(-1)?.push(b)
      else left.push([a, b])
    }
  }
  return left
}

/** A shape of the picture that spans no more, mm, would be gone under a name. */
const SMALL = 10

const smallShapes = (design: Design, piece: string, face: SheetFace): readonly (readonly Point[])[] =>
  artColours(design, piece, face === 'inside' ? 'front' : 'back')
    .flatMap(({ shapes }) => shapes.flatMap(({ runs }) => runs))
    .filter((run) =>
      [0, 1].every((k) => {
        const all = run.map((point) => point[k] as number)
        return Math.max(...all) - Math.min(...all) <= SMALL
      }),
    )

/** Shorter than this an edge along a fold is none to colour up to, mm. */
const EDGE = 3

/** What is drawn on the pieces of a page, under all their lines; it leaves room for the letters. */
function pictureMarks(
  design: Design,
  { placed, marks }: Pick<SheetPage, 'placed' | 'marks'>,
  lines: SheetLines,
): PathMark[] {
  const words = marks.flatMap((mark): Rectangle[] => {
    if (mark.mark !== 'word' && mark.role !== 'care' && mark.role !== 'grain') return []
    const [l, t, r, b] = extent(mark)
    return [[l - CLEAR, t - CLEAR, r + CLEAR, b + CLEAR]]
  })
  const all = pieces(design)
  const printed = marks.flatMap((mark) => (mark.mark === 'path' ? stretchesOf(mark) : []))
  return placed.flatMap(({ piece, place }): PathMark[] => {
    const found = artOutlines(design, piece, faceOf(printedAs(piece, lines)) === 'inside' ? 'front' : 'back')
    const flat = all.find(({ id }) => id === piece)
    if (found.length === 0 || !flat) return []
    const drawn = foldsAndCuts(flat, place)
    const off = drawnOnce(found).flatMap((run) =>
      offLines(
        run.map((p) => onPage(place, p)),
        drawn,
      ),
    )
    // A good copy has the ends of folds alone: where colours meet between them, dots say up to where each goes.
    const between = lines === 'ticks' ? edgesOnFolds(design, flat, place, lines) : []
    const edges = between.flatMap((edge) => leftOf(edge, printed)).filter(([a, b]) => far(a, b) >= EDGE)
    const runs = [...off, ...edges].flatMap((run) => outside(run, words))
    return runs.length === 0 ? [] : [{ mark: 'path', runs, closed: false, role: 'picture', of: piece }]
  })
}

/** The paper of a print: as much larger or smaller as makes up for the printer. Throws an `UnprintableError`. */
export const printedOn = ({ paper, measured }: Pick<SheetOptions, 'paper' | 'measured'>): Paper =>
  stretched(paperOf(paper), stretchFor(measured ?? 100))

/** So many of each piece at most: a class. */
const MOST_COPIES = 60

/** Throws an `UnprintableError` for a number of copies that no print has. */
export function checkCopies(copies: number): void {
  if (!(Number.isInteger(copies) && copies >= 1 && copies <= MOST_COPIES))
    throw new UnprintableError(says.copies(MOST_COPIES))
}

/**
 * The pages of a design on a paper, pieces at true size. Throws an `UnprintableError`, and a `TooLargeError` that says by how much a
 * design is too large and which paper would do.
 */
export function layOut(drawn: Design, options: SheetOptions): SheetPage[] {
  const paper = printedOn(options)
  checkCopies(options.copies ?? 1)
  const fit = fitOn(drawn, paper)
  if (!fit.ok && !options.tiled) throw new TooLargeError(fit)
  // The key speaks of those sizes alone whose marks found free paper, and the steps of letters beside a piece where
  // there are some.
  let care = options.care ?? tightest(drawn)
  const isFew = options.words === 'few'
  let tried = nothingTried()
  const job = { design: drawn, lines: options.lines ?? 'front', care }
  let lettersBeside: Beside = {
    is: !isFew && mayHaveLettersBeside(drawn, (piece) => drawnBy(job, tried, piece, 0)),
    isSure: isFew,
  }
  for (;;) {
    const pages = laidOut(drawn, options, paper, fit, { care, hasLettersBeside: lettersBeside.is, tried })
    const marked = new Set(
      pages.flatMap(({ marks, part }) => [...marks, ...(part?.marks ?? [])].map(({ of }) => of)),
    )
    const left = care.filter((one) => marked.has(careOf(one)))
    const found = lettersBeside.isSure
      ? lettersBeside
      : besideNow(lettersBeside.is, hasLettersBeside(drawn, pages))
    if (left.length === care.length && found.is === lettersBeside.is) return pages
    if (left.length < care.length) tried = nothingTried()
    care = left
    lettersBeside = found
  }
}

/** Whether the steps speak of letters beside a piece, and whether that stays as it is. */
interface Beside {
  readonly is: boolean
  readonly isSure: boolean
}

/** Words more or less can turn the pieces: once letters were missed, they are spoken of whatever comes. */
const besideNow = (told: boolean, drawn: boolean): Beside => ({ is: drawn, isSure: drawn && !told })

type Part = Pick<SheetPart, 'clip' | 'marks'>

/** Where the card fills its sheet, what is trimmed off that says so. */
function trimmedOff(trim: Trim): readonly Run[] {
  const told = trimStep(trim, steps.ofThis)
  return told === null ? [] : [{ text: ` ${told}` }]
}

/** What a sheet of few words says. */
const FEW: ReadonlySet<Section['id']> = new Set(['head', 'check'])

/** What is found out about a sheet before it is laid out for good. */
interface Known {
  readonly care: readonly Tight[]
  readonly hasLettersBeside: boolean
  readonly tried: Tried
}

/**
 * The same with these sizes marked where there is room for it, and with steps for letters beside pieces or without. What
 * the card's page cannot hold in type that is easy to read goes on, unless that takes a page more; and so do steps that
 * would be small or narrow there, if that takes none.
 */
function laidOut(drawn: Design, options: SheetOptions, paper: Paper, fit: Fit, known: Known): SheetPage[] {
  const isAlone = pieces(drawn).length === 1
  const easy = laidOutIn(drawn, options, paper, fit, known, isAlone ? 'tight' : 'easy')
  if (isAlone) return easy.pages
  const tight = easy.isParted ? laidOutIn(drawn, options, paper, fit, known, 'tight').pages : easy.pages
  const pages = tight.length < easy.pages.length ? tight : easy.pages
  if (hardship(pages.slice(0, 1)) < HARD) return pages
  const { pages: away } = laidOutIn(drawn, options, paper, fit, known, 'away')
  return away.length <= pages.length && hardship(away) < hardship(pages) ? away : pages
}

/** What the card's page holds: what goes on in type that is easy to read, or whatever does, or all but the steps. */
type Held = 'easy' | 'tight' | 'away'

/** The same, to stand on another page. */
const onNoCard = (section: Section): Section =>
  section.id === 'steps' ? { ...section, block: () => null } : section

function laidOutIn(
  drawn: Design,
  options: SheetOptions,
  paper: Paper,
  fit: Fit,
  { care, hasLettersBeside, tried }: Known,
  held: Held,
): { readonly pages: SheetPage[]; readonly isParted: boolean } {
  const lines = options.lines ?? 'front'
  const leavesCover = fit.leavesCover && !options.tiled
  const adorned = leavesCover ? uncovered(drawn) : drawn
  const design = options.art === 'lines' ? adorned : unadorned(adorned)
  const byHand: Trim = {
    ...(leavesCover ? { cover: coverSize(drawn) } : {}),
    ...(paper.stretch === undefined ? {} : { stretch: paper.stretch }),
    ...(options.fault ? { fault: options.fault } : {}),
    ...(hasLettersBeside ? { hasLettersBeside } : {}),
  }
  const isFew = options.words === 'few'
  const said = (sections: readonly Section[]): readonly Section[] =>
    isFew
      ? sections
          .filter(({ id }) => FEW.has(id))
          .map((one) => (one.id === 'head' ? largeHead(design, lines) : one))
      : sections
  const all: readonly Piece[] = pieces(design).map((piece) => scored(design, piece))
  const large = all.filter((piece) => isTooLarge(piece, paper))
  const [card, ...others] = all as readonly [Piece, ...Piece[]]
  const face = faceOf(lines)
  const first = large.includes(card)
    ? null
    : bedPage(
        {
          piece: card,
          joints: placesOn(design, card.id, face),
          lines,
          care,
          small:
            options.art === 'colour' || options.art === 'lines' ? smallShapes(adorned, card.id, face) : [],
          head: (width) => header(design, lines, width, fittings.roomy.body, options.fault),
          sections: (type, trim) =>
            said(sectionsFor(design, lines, type, { ...trim, ...byHand }, care)).map((one) =>
              held === 'away' ? onNoCard(one) : one,
            ),
          notes: (trim) => ({
            below: [{ text: sides.nearEdge[face] }, ...trimmedOff(trim)],
            beside: [{ text: says.alongCard[face] }, ...trimmedAlong(trim)],
            // A good copy is seen: which end is which is said where the words are.
            on:
              lines === 'ticks'
                ? []
                : [[{ text: sides.besideCard[face] }], [{ text: sides.shortEdge[face] }]],
          }),
        },
        paper,
        held === 'tight' ? undefined : READABLE,
      )
  const trim = { ...first?.trim, ...byHand }
  // Of few words the card's head is the card's page's own: it would be wrong on a page of other pieces.
  const isPassedOn = ({ id }: Section): boolean => !(isFew && first && id === 'head')
  const words = new Map(
    Object.values(fittings).map((type) => {
      const wanted = first?.left ?? sectionsFor(design, lines, type, trim, care)
      const left = new Set(wanted.filter(isPassedOn).map(({ id }) => id))
      return [type, said(sectionsLeft(left, design, lines, type, trim, care, first !== null))] as const
    }),
  )
  const waiting = (type: Fitting): readonly Section[] => words.get(type) ?? []
  const copies = options.copies ?? 1
  const times = (piece: Piece, count: number): readonly Piece[] => Array<Piece>(count).fill(piece)
  const beside = [
    ...(first ? times(card, copies - 1) : []),
    ...others.filter((piece) => !large.includes(piece)).flatMap((piece) => times(piece, copies)),
  ]
  // What the check lines are for is said with the other words, wherever those are.
  const isEnough = isFew && (first?.checked || beside.length > 0)
  const wordsLeft = (left: ReadonlySet<Section['id']>): { turn: Turned; pages: SheetMark[][] } => {
    const [lying, standing] = turns(paper)
    const turn = columnsOn(lying) > 1 ? lying : standing
    if (isEnough) return { turn, pages: [] }
    const pagesIn = (type: Fitting): SheetMark[][] => {
      const rest = waiting(type).filter(({ id }) => left.has(id))
      return rest.length === 0 ? [] : wordPages([nameSection(design), ...rest], turn)
    }
    // In smaller type only where that spares a page: the last one would hold a few words alone.
    const pages = [fittings.roomy, fittings.close, fittings.tight, fittings.least].map(pagesIn)
    const fewest = Math.min(...pages.map(({ length }) => length))
    return { turn, pages: pages.find(({ length }) => length === fewest) ?? [] }
  }
  const printed = face === 'inside' ? 'front' : 'back'
  const isPlain = (id: string): boolean =>
    lines !== 'ticks' &&
    artOutlines(design, id, printed).length === 0 &&
    (options.art !== 'colour' || artColours(adorned, id, printed).length === 0)
  const further = piecePages(
    design,
    beside,
    paper,
    lines,
    care,
    waiting,
    (left) => wordsLeft(left).pages.length,
    isPlain,
    tried,
  )
  const page = (turn: Turned, marks: readonly SheetMark[], placed: SheetPage['placed'], part?: Part) =>
    ({
      box: [0, 0, turn.width, turn.height],
      unit: 'mm',
      // What no key names is not printed.
      marks: isFew ? marks.filter(({ role }) => role !== 'grain') : marks,
      paper,
      placed,
      ...(part ? { part } : {}),
    }) as const
  const joined = large.flatMap((piece) => {
    const own = printedAs(piece.id, lines)
    const face = faceOf(own)
    const tiling = tilingOf(piece, paper, face)
    const box = boxOf(piece.outline)
    return tilesOf(tiling, pieceName(piece.id)).map((tile) => {
      const place = placeAt(box, ...tile.corner, face)
      const drawn = pieceMarks(piece, placesOn(design, piece.id, face), place, own, EVERYWHERE, care)
      const marks = [...drawn.lines, ...drawn.words]
      return page(tiling.turn, tile.marks, [{ piece: piece.id, place }], { clip: tile.clip, marks })
    })
  })
  const pages = [
    ...(first ? [page(first.bed.turn, first.marks, [{ piece: card.id, place: first.bed.place }])] : []),
    ...times(card, copies).flatMap(() => joined),
    ...further.pages.map(({ turn, marks, placed }) => page(turn, marks, placed)),
  ]
  const { turn, pages: ofWords } = wordsLeft(further.left)
  pages.push(...ofWords.map((marks) => page(turn, marks, [])))
  const flat = new Map(all.map((piece) => [piece.id, piece]))
  const paint = (one: Pick<SheetPage, 'placed' | 'marks'>): Painting | null => {
    const placed = one.placed.flatMap(({ piece: id, place }) => {
      const piece = flat.get(id)
      return piece ? [{ piece, place }] : []
    })
    return options.art === 'colour' ? paintingOf(adorned, placed, one.marks, lines) : null
  }
  const shown = ({ placed, marks }: Pick<SheetPage, 'placed' | 'marks'>) => ({
    painting: paint({ placed, marks }),
    marks: [...pictureMarks(design, { placed, marks }, lines), ...marks],
  })
  const lying = lyingOn(design)
  const numberOf = ({ box: [, , width, height], marks, placed, part }: (typeof pages)[number], k: number) => {
    const outlines = lying(placed)
    const covered = { width, height, marks, outlines, taken: part ? [part.clip] : [] }
    return pageNumber(plainText(design.title), k + 1, pages.length, covered, Boolean(options.fault))
  }
  const numbered = withPagesTold(pages).map((one, k) => ({
    ...one,
    marks: [...one.marks, ...numberOf(one, k)],
  }))
  const whole = numbered.map(({ part, ...one }, k) => ({
    ...one,
    ...(part
      ? { painting: null, part: { clip: part.clip, ...shown({ placed: one.placed, marks: part.marks }) } }
      : shown(one)),
    says: says.page(plainText(design.title), k + 1, pages.length, paper.label, sayOf(one, lines)),
  }))
  // A page whose card fills it holds no words in whatever type.
  const hasRoom = first !== null && Boolean(first.bed.column ?? first.bed.top ?? first.bed.strip[0])
  return { pages: whole, isParted: hasRoom && ofWords.length > 0 }
}
