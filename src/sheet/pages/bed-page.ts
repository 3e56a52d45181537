import * as says from '../../../content/words/sheet/pages.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import type { Piece, Tight } from '../../paper/index.ts'
import type { Rectangle } from '../marks/clip.ts'
import { clipped } from '../marks/clip.ts'
import type { SheetLines, Trim } from '../marks/instructions.ts'
import { faceOf } from '../marks/instructions.ts'
import type { JointPlace } from '../marks/joint-places.ts'
import type { DrawnPiece } from '../marks/piece-marks.ts'
import { pieceMarks } from '../marks/piece-marks.ts'
import { RULER_WIDTH, rulers, upright } from '../marks/rulers.ts'
import type { Block, Run, SheetMark } from '../marks/setting.ts'
import { moved, paragraph } from '../marks/setting.ts'
import { shown } from '../marks/sizes.ts'
import { stretchesOf } from '../marks/stretches.ts'
import type { PlacedRulers } from './bare-rulers.ts'
import { bareRulers } from './bare-rulers.ts'
import type { Bed, Cell } from './bed.ts'
import { bedFor, MARGIN, Shelves } from './bed.ts'
import type { Turned } from './fit.ts'
import { bestTurn, boxOf, SAFE, turns } from './fit.ts'
import type { Paper } from './paper-sizes.ts'
import type { Fitting, Section } from './sections.ts'
import { elsewhere, elsewhereBlock, fittings } from './sections.ts'

/** What a function gives, worked out when it is first asked for. */
function once<T>(of: () => T): () => T {
  let known: { readonly it: T } | undefined
  return () => {
    known ??= { it: of() }
    return known.it
  }
}

/** Which face a piece shows and which of its ends is the reader's: for each place where that may stand. */
export interface Notes {
  readonly below: readonly Run[]
  readonly beside: readonly Run[]
  /** On the piece itself, the longest first; nothing on a face that will be seen. */
  readonly on: readonly (readonly Run[])[]
}

/** A piece that has a page to itself, and the words that would like to stand beside it. */
export interface Bedded {
  readonly piece: Piece
  readonly joints: readonly JointPlace[]
  readonly lines: SheetLines
  /** Sizes that are marked. */
  readonly care: readonly Tight[]
  /** Small shapes of its picture, in its own coordinates. */
  readonly small?: readonly (readonly Point[])[]
  /** What stands above the piece where no column can hold it. */
  readonly head: (width: number) => Block
  readonly sections: (type: Fitting, trim: Trim) => readonly Section[]
  readonly notes: (trim: Trim) => Notes
}

/** The piece on its page, with as many sections as found room beside it. */
export interface BedPage {
  readonly bed: Bed
  readonly marks: readonly SheetMark[]
  readonly left: readonly Section[]
  readonly trim: Trim
  /** Whether the check lines stand on this page. */
  readonly checked: boolean
}

/** What is to be trimmed off the paper where the card's edge is too near its edge to be printed, mm a side. */
export function trimOf({ card, printable, turn }: Pick<Bed, 'card' | 'printable' | 'turn'>): Trim {
  const wide = card[0] < printable[0]
  const high = card[1] < printable[1]
  return {
    ...(wide ? { sides: Math.max(0, card[0]) } : {}),
    ...(high ? { ends: Math.max(0, card[1]) } : {}),
    ...(turn.width > turn.height ? { acrossGrain: true } : {}),
  }
}

/** What is trimmed off, in a line that runs up beside a piece: turned to read it, upper and lower would mean other edges. */
export function trimmedAlong({ ends, acrossGrain = false }: Trim): readonly Run[] {
  if (ends === undefined) return []
  return [{ text: ` ${says.trimAlong(acrossGrain, ends < 0.05 ? null : shown(ends))}` }]
}

type Home = 'column' | 'strip'

/** Where the sections would like to stand. */
const usual: Readonly<Record<Section['id'], Home>> = {
  head: 'column',
  check: 'strip',
  legend: 'strip',
  steps: 'column',
  care: 'column',
  sizes: 'column',
  joints: 'column',
}

/** The usual homes, then every other choice, those nearest to the usual first. */
const choices: readonly (typeof usual)[] = Array.from({ length: 32 }, (_, bits) => {
  const other = (['care', 'sizes', 'legend', 'steps', 'joints'] as const).filter((_, k) => bits & (1 << k))
  const homes = { ...usual }
  for (const id of other) homes[id] = usual[id] === 'strip' ? 'column' : 'strip'
  return { homes, other: other.length }
})
  .sort((a, b) => a.other - b.other)
  .map(({ homes }) => homes)

/** How much is lost where a section finds no room: hands need the steps beside the card more than its sizes. */
const WORTH: Readonly<Record<Section['id'], number>> = {
  head: 2,
  check: 1,
  legend: 2,
  steps: 3,
  care: 1,
  joints: 1.5,
  sizes: 1,
}

/** The last of them is hard to read: for words that would need a page more. */
const ALL_TYPES: readonly Fitting[] = [fittings.roomy, fittings.close, fittings.tight, fittings.least]
export const READABLE: readonly Fitting[] = [fittings.roomy, fittings.close]

interface Try {
  readonly bed: Bed
  readonly isCard: boolean
  readonly drawn: DrawnPiece
  /** The check lines where no cell holds them; looked for when that is known. */
  readonly bare: () => PlacedRulers | null
  readonly notes: Bedded['notes']
  readonly sections: readonly Section[]
  readonly homes: typeof usual
}

/** The cells that a section may stand in, the best first. The strip's first cell is for the check lines. */
function cellsFor(id: Section['id'], { column, top, strip }: Bed, homes: typeof usual): readonly Cell[] {
  const margin = column ? [column] : []
  const [first, ...rest] = strip
  if (id === 'check') return [...strip, ...(top ? [top[1]] : []), ...margin]
  const below = [...rest, ...(first ? [first] : [])]
  if (id === 'head') return [...(top ? [top[0]] : []), ...margin, ...below]
  return homes[id] === 'column' ? [...margin, ...below] : [...below, ...margin]
}

/** A page as it is tried: what is written at the piece is found when this one is taken. */
interface Arranged extends Omit<BedPage, 'marks'> {
  readonly marks: () => readonly SheetMark[]
}

function arrange({ bed, isCard, drawn, bare, notes, sections, homes }: Try): Arranged {
  const marks: SheetMark[] = [...drawn.lines, ...drawn.words]
  const shelves = new Shelves()
  const left: Section[] = []
  let room = bed
  let rulersAt: PlacedRulers | null = null
  let checked = false
  /** What is on another page, and nothing says yet on which. */
  const untold: Run[] = []
  for (const section of sections) {
    const cells = cellsFor(section.id, room, homes)
    const found = shelves.put(section.block, cells)
    if (found) marks.push(...found)
    else left.push(section)
    if (!found && section.id === 'steps') {
      const told = shelves.put(elsewhereBlock('steps'), cells)
      marks.push(...(told ?? []))
      if (told === null) untold.push(elsewhere('steps'))
    }
    if (section.id !== 'check') continue
    const alone = found ?? shelves.put((width) => (width >= RULER_WIDTH ? rulers() : null), cells)
    rulersAt = alone ? null : bare()
    checked = alone !== null || rulersAt !== null
    if (!found) marks.push(...(alone ?? rulersAt?.marks ?? []))
    // Rulers in the gap below the card leave no strip there.
    if (rulersAt && rulersAt.taken[1] > bed.card[3]) room = { ...bed, strip: [] }
  }
  // Steps send one to the list of joints.
  if (isCard && left.some(({ id }) => id === 'joints')) {
    const told = shelves.put(elsewhereBlock('joints'), cellsFor('joints', room, homes))
    marks.push(...(told ?? []))
    if (told === null) untold.push(elsewhere('joints'))
  }
  const taken = rulersAt?.taken
  const trim = trimOf(bed)
  const whole = () => {
    const { below, beside, on } = notes(trim)
    const more = untold.flatMap((run): readonly Run[] => [{ text: ' ' }, run])
    const said = { below: [...below, ...more], beside: [...beside, ...more], on }
    return [...marks, ...nameOf(bed, drawn, taken, said)]
  }
  return { bed, marks: whole, left, trim, checked }
}

/** Capitals of 2 mm can be read at arm's length: common practice, no source. The smaller one is for where there is less room. */
const NOTES = [
  { size: 3, leading: 3.3 },
  { size: 2.5, leading: 3 },
] as const

/** Along an edge of a piece that fills its page, mm. */
const WIDE = 190

/** A note in the free paper at a side of the piece, upright from its lower end; null if neither side has room. */
function besidePiece(
  { card, printable, column }: Bed,
  note: Block,
  taken: Rectangle | undefined,
): SheetMark[] | null {
  const { width, height, marks } = upright(note)
  const bottom = Math.min(card[3], printable[3]) - 2
  if (bottom - height < printable[1]) return null
  for (const x of [card[0] - 1.5 - width, card[2] + 1.5]) {
    const box: Rectangle = [x, bottom - height, x + width, bottom]
    const isFree = !taken || box[0] >= taken[2] || taken[0] >= box[2]
    if (isFree && !column && x >= printable[0] && x + width <= printable[2])
      return marks.map((mark) => moved(mark, x, bottom - height))
  }
  return null
}

/**
 * Which face of the piece this is, and which end is the reader's: under that end, at a side, or on the piece just
 * above its end; as large as there is room for in the best of these places that has any.
 */
function nameOf(
  bed: Bed,
  drawn: DrawnPiece,
  taken: Rectangle | undefined,
  notes: Notes,
): readonly SheetMark[] {
  for (const place of [below, atSide, onPiece])
    for (const type of NOTES) {
      const set: Setting = (runs, width) => paragraph(runs, type, width, 'near-edge')
      const found = place({ bed, drawn, taken, notes, set })
      if (found) return found
    }
  return []
}

type Setting = (runs: readonly Run[], width: number) => Block

interface Noted {
  readonly bed: Bed
  readonly drawn: DrawnPiece
  /** By the check lines. */
  readonly taken: Rectangle | undefined
  readonly notes: Notes
  readonly set: Setting
}

function below({ bed: { card, printable, column }, taken, notes, set }: Noted): SheetMark[] | null {
  const note = set(notes.below, column ? 112 : WIDE)
  // A strip that is trimmed off may be narrow.
  const top = [1.5, 0.6].map((gap) => card[3] + gap).find((y) => y + note.height <= printable[3])
  if (top === undefined) return null
  const isBeside = taken !== undefined && taken[3] > top && taken[0] < card[0] + note.width
  const x = isBeside ? taken[2] + 4 : Math.max(card[0], MARGIN)
  return x + note.width <= printable[2] ? note.marks.map((mark) => moved(mark, x, top)) : null
}

const atSide = ({ bed, taken, notes, set }: Noted): SheetMark[] | null =>
  besidePiece(bed, set(notes.beside, WIDE), taken)

function onPiece({ bed: { card, printable }, drawn, taken, notes, set }: Noted): SheetMark[] | null {
  const left = Math.max(card[0], printable[0]) + 2
  const right = Math.min(card[2], printable[2]) - 2
  const top = Math.max(card[1], printable[1]) + 2
  const lines = drawn.lines.flatMap(stretchesOf)
  const busy = [...drawn.taken, ...(taken ? [taken] : [])]
  for (const { width, height, marks } of notes.on.map((runs, k) => set(runs, k === 0 ? 112 : 60)))
    for (let y = Math.min(card[3], printable[3]) - 2 - height; y >= top; y -= 2)
      for (let k = left; k + width <= right; k += 3) {
        const box: Rectangle = [k - 1, y - 1, k + width + 1, y + height + 1]
        const isFree =
          !lines.some(([a, b]) => clipped(a, b, box)) &&
          !busy.some((b) => box[0] < b[2] && b[0] < box[2] && box[1] < b[3] && b[1] < box[3])
        if (isFree) return marks.map((mark) => moved(mark, k, y))
      }
  return null
}

/**
 * A piece on a paper, arranged so that its own page holds as much as it can: first with roomy type and
 * everything in its usual place, then elsewhere, then with closer type.
 */
export function bedPage(
  { piece, joints, lines, care, small, head, sections: wanted, notes }: Bedded,
  paper: Paper,
  types: readonly Fitting[] = ALL_TYPES,
): BedPage {
  const box = boxOf(piece.outline)
  const whole = ({ width, height }: Turned): boolean =>
    box.right - box.left <= width - 2 * SAFE && box.bottom - box.top <= height - 2 * SAFE
  const fitting = turns(paper).filter(whole)
  const beds = (fitting.length > 0 ? fitting : [bestTurn(piece, paper).turn]).map((turn) => {
    const bed = bedFor(piece, turn, head, faceOf(lines))
    const drawn = pieceMarks(piece, joints, bed.place, lines, bed.printable, care, small)
    return { bed, drawn, bare: once(() => bareRulers(bed)) }
  })
  const cost = (page: Arranged): number =>
    page.left.reduce((sum, { id }) => sum + WORTH[id], 0) + (page.checked ? 0 : 10)
  const taken = (page: Arranged): BedPage => ({ ...page, marks: page.marks() })
  let best: Arranged | undefined
  for (const type of types) {
    for (const { bed, drawn, bare } of beds) {
      const sections = wanted(type, trimOf(bed))
      for (const homes of choices) {
        const page = arrange({ bed, isCard: piece.id === 'card', drawn, bare, notes, sections, homes })
        if (cost(page) === 0) return taken(page)
        if (!best || cost(page) < cost(best)) best = page
      }
    }
  }
  return taken(best as Arranged)
}
