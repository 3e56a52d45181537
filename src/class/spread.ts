/**
 * A size that differs from sheet to sheet, so that the readings of a whole class lie along one curve. Lengths in mm,
 * angles in degrees.
 */
import * as says from '../../content/words/class/spread.ts'
import type { CheckName, Design, Flat } from '../paper/index.ts'
import {
  broughtIn,
  change,
  check,
  compile,
  fieldsFor,
  isRead,
  kindOf,
  nameOf,
  pagePoint,
  riseOf,
  settable,
  settingOf,
  tipAt,
} from '../paper/index.ts'

/** What a class reads with a ruler, and the size that differs. */
export interface Measured {
  /** The mechanism whose tip is read; `point`: on a bare card, from a point of one page to its twin. */
  readonly id: string
  /** The size that differs from sheet to sheet: a field or derived number of it; `across` of a point. */
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly what: 'rise' | 'gap'
  /** The opening at which everybody reads, degrees. */
  readonly opening: number
  /** Of a point: how far it lies from the reader's end, mm. */
  readonly along?: number
}

/** One sheet's own card. */
export interface Copy {
  /** Null where all sheets are alike. */
  readonly size: number | null
  readonly design: Design
  /** What the model reads, mm. */
  readonly reads: number
}

export interface Spread {
  readonly copies: readonly Copy[]
  /** What is to be said of it, in whole sentences: that the range is narrower than it was asked for, and why. */
  readonly notes: readonly string[]
}

export const POINT = 'point'

/** The card is read with the corner of a book in it. */
const SQUARE = 90

/** Shares of a size between which it is spread, if the card lets it. */
const ASKED = { least: 0.5, most: 1.6 } as const

/** Whole steps by which neighbours may differ, the largest first: what a reader of a ruler finds easy. */
const STEPS = [5, 2, 1, 0.5, 0.2, 0.1] as const

/** A size that moves the reading by less than this over its range teaches nothing, mm. */
const LEAST_RISE = 3

/** The opening at which a design is read, degrees: 90, or as near as it goes. */
export const readAt = (design: Design): number => Math.round(broughtIn(design, SQUARE))

/** What the ruler reads on this card, mm. */
export function readingOf(design: Design, { id, what, opening, along = 0 }: Measured, size: number): number {
  if (what === 'gap') return pagePoint([size, along], opening).gape
  const poser = compile(design)
  poser(opening)
  const index = design.mechanisms.findIndex((m) => m.id === id)
  return riseOf(tipAt(poser, index), opening)
}

/** The design with this value of the size. */
export function sized(design: Design, { id, field, what }: Measured, size: number): Design {
  if (what === 'gap') return design
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  return change(design, id, fieldsFor(m, field, size))
}

/** The size as designed. */
export function sizeOf(design: Design, { id, field, what }: Measured, point?: Flat): number {
  if (what === 'gap') return point?.[0] ?? design.card.width / 2
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  return settingOf(m, field)
}

/** The advice from practice that a card goes against as it is: its copies may do so too. */
const cautionsOf = (design: Design): ReadonlySet<CheckName> =>
  new Set(
    check(design, { repairs: false }).flatMap(({ ok, caution, name }) => (!ok && caution ? [name] : [])),
  )

/** The first thing that does not hold, in the kernel's words, but for advice that is known; null if all holds. */
export const faultOf = (design: Design, known: ReadonlySet<CheckName> = new Set()): string | null =>
  check(design, { repairs: false }).find(({ ok, caution, name }) => !ok && !(caution && known.has(name)))
    ?.sentence ?? null

/**
 * The sizes of one mechanism that move its tip, those that move it most first; of a bare card the way of its point
 * from the gutter. Empty where nothing that is read can be set.
 */
export function measuredOn(design: Design, id: string | null, point?: Flat): readonly Measured[] {
  const opening = readAt(design)
  if (design.mechanisms.length === 0)
    return [
      {
        id: POINT,
        field: 'across',
        label: says.fromGutter,
        unit: 'mm',
        what: 'gap',
        opening,
        along: point?.[1] ?? design.card.height / 2,
      },
    ]
  const index = design.mechanisms.findIndex((m, k) => (id === null || m.id === id) && isRead(design, k))
  const m = design.mechanisms[index]
  if (!m) return []
  // A number that moves both sides at once goes before those of one side: the card still shuts flat.
  const twins = new Set(kindOf(m).fields.flatMap(({ name, twin }) => (twin === undefined ? [] : [name])))
  return settable(m)
    .filter(({ name }) => !twins.has(name))
    .filter((field) => !('idle' in field && field.idle))
    .map(({ name, label, unit }): Measured => {
      return { id: m.id, field: name, label, unit, what: 'rise', opening }
    })
    .map((measured) => ({ measured, moves: movedBy(design, measured) }))
    .filter(({ moves }) => moves >= LEAST_RISE)
    .sort((a, b) => rank(a.measured) - rank(b.measured) || b.moves - a.moves)
    .map(({ measured }) => measured)
}

/** A slit that every hand cuts, and the angle that follows from it, go before all other sizes. */
const FIRST: readonly string[] = ['cut', 'wedge']

const rank = ({ field }: Measured): number => (FIRST.indexOf(field) + FIRST.length + 1) % (FIRST.length + 1)

/** How far apart the readings lie at the ends of the range that is asked for, mm: cheap, and unchecked. */
function movedBy(design: Design, measured: Measured): number {
  const at = sizeOf(design, measured)
  if (at === 0) return 0
  const reads = [ASKED.least, 1, ASKED.most].flatMap((share) => {
    const made = sized(design, measured, at * share)
    const m = made.mechanisms.find(({ id }) => id === measured.id)
    if (!m || Math.abs(settingOf(m, measured.field) - at * share) > 1e-6) return []
    const value = readingOf(made, measured, at * share)
    return Number.isFinite(value) ? [value] : []
  })
  return reads.length < 2 ? 0 : Math.max(...reads) - Math.min(...reads)
}

const unitSign = ({ unit }: Measured): string => (unit === 'mm' ? '\u00a0mm' : '°')

/** A size as it is said: `42.5 mm`, `38°`. */
export const sizeSays = (measured: Measured, size: number): string =>
  `${Number(size.toFixed(1))}${unitSign(measured)}`

/** The size in a sentence: `slit of the beak`. */
export const sizeName = ({ id, label }: Measured): string =>
  id === POINT ? says.wayFromGutter : says.sizeOf(label.toLowerCase(), nameOf(id))

/** Sizes from one end to the other in whole steps, so many, the ends among them where the step allows. */
function stepped(least: number, most: number, count: number): readonly number[] {
  for (const step of STEPS) {
    const [from, to] = [Math.ceil(least / step - 1e-9), Math.floor(most / step + 1e-9)]
    if (to - from < count - 1) continue
    return Array.from({ length: count }, (_, k) => {
      const share = count === 1 ? 0.5 : k / (count - 1)
      return Number(((from + Math.round(share * (to - from))) * step).toFixed(1))
    })
  }
  return []
}

/** How finely the end of the sound sizes is looked for: so many halvings. */
const HALVINGS = 6

/** The last sound size on the way from the designed one to another, and what fails beyond. */
function soundEnd(
  design: Design,
  measured: Measured,
  known: ReadonlySet<CheckName>,
  [from, to]: readonly [number, number],
): { readonly at: number; readonly why: string | null } {
  const fault = (size: number): string | null => {
    const made = sized(design, measured, size)
    const m = made.mechanisms.find(({ id }) => id === measured.id)
    const isHeld = measured.what === 'gap' || (m && Math.abs(settingOf(m, measured.field) - size) < 1e-6)
    return isHeld ? faultOf(made, known) : says.noFurther
  }
  let why = fault(to)
  if (why === null) return { at: to, why: null }
  let [good, bad] = [from, to]
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (good + bad) / 2
    const here = fault(middle)
    if (here === null) good = middle
    else {
      bad = middle
      why = here
    }
  }
  return { at: good, why }
}

/** A bare card's points lie on the page, with room beside them, mm. */
const pointRange = ({ card }: Design): readonly [number, number] => [15, card.width - 10]

/** A sentence of the kernel as a clause. */
const clause = (sentence: string): string => sentence.replace(/\.$/, '')

/** What works it out says how far it is: so many of so many looks. */
export type Tell = (done: number, of: number) => void

/** All sheets alike. */
export function alike(design: Design, measured: Measured | null, count: number, point?: Flat): Spread {
  const size = measured ? sizeOf(design, measured, point) : 0
  const reads = measured ? readingOf(design, measured, size) : Number.NaN
  return { copies: Array.from({ length: count }, () => ({ size: null, design, reads })), notes: [] }
}

/**
 * So many sheets, each with a size of its own, every one of them sound by the kernel's checks. A range that leaves
 * what is sound is narrowed, and that is said; a card that is not sound itself is not changed at all.
 */
export function spreadOf(
  design: Design,
  measured: Measured,
  count: number,
  tell: Tell = () => {},
  point?: Flat,
): Spread {
  const known = cautionsOf(design)
  const own = faultOf(design, known)
  if (own !== null)
    return {
      ...alike(design, measured, count, point),
      notes: [says.mendFirst(own)],
    }
  const at = sizeOf(design, measured, point)
  const asked = measured.what === 'gap' ? pointRange(design) : ([at * ASKED.least, at * ASKED.most] as const)
  const low = soundEnd(design, measured, known, [at, asked[0]])
  tell(1, count + 2)
  const high = soundEnd(design, measured, known, [at, asked[1]])
  tell(2, count + 2)
  const why = [low.why, high.why].filter((one) => one !== null)
  let [least, most] = [Math.min(low.at, high.at), Math.max(low.at, high.at)]
  for (let turn = 0; turn < TURNS; turn++) {
    const values = stepped(least, most, count)
    if (values.length === 0) break
    const copies: Copy[] = []
    const broken = values.find((size, k) => {
      const made = sized(design, measured, size)
      const fault = measured.what === 'gap' ? null : faultOf(made, known)
      tell(k + 3, count + 2)
      if (fault === null) copies.push({ size, design: made, reads: readingOf(made, measured, size) })
      else why.push(fault)
      return fault !== null
    })
    if (broken === undefined) return { copies, notes: narrowed(measured, values, asked, why) }
    // Unsound between sound ends: what holds round the designed size is kept.
    if (broken < at) least = broken + LEAST_STEP
    else most = broken - LEAST_STEP
  }
  return {
    ...alike(design, measured, count, point),
    notes: [
      [
        says.noRoom(sizeSays(measured, least), sizeSays(measured, most), count, sizeName(measured)),
        ...why.slice(0, 1),
      ].join(' '),
    ],
  }
}

/** So often a range is made smaller before the sheets are left alike. */
const TURNS = 12

/** Sheets that differ by less than this do not differ, mm or degrees. */
const LEAST_STEP = 0.1

/** That the range is smaller than it was asked for, and what stands in the way. */
function narrowed(
  measured: Measured,
  values: readonly number[],
  asked: readonly [number, number],
  why: readonly string[],
): readonly string[] {
  if (why.length === 0) return []
  const [first = 0, last = 0] = [values[0], values.at(-1)]
  return [
    says.narrowed(
      sizeName(measured),
      sizeSays(measured, first),
      sizeSays(measured, last),
      sizeSays(measured, asked[0]),
      sizeSays(measured, asked[1]),
      [...new Set(why.map(clause))],
    ),
  ]
}
