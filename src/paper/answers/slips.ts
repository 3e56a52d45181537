import { change, fieldsFor, isSetTo, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { measure } from '../measure/measure.ts'
import { pagePoint } from '../measure/page-point.ts'
import { kindOf } from '../mechanisms/registry.ts'
import type { Flat } from '../plane/lay.ts'

/** One slip of the hand that would explain a ruler's reading. */
export interface Slip {
  /** The mechanism, or `card` for the opening, or `point` for a point of a page. */
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  /** As designed, and as it would have to be for this reading. */
  readonly from: number
  readonly to: number
  /** How far off, mm or degrees: positive where the length is too long or the opening too wide. */
  readonly slip: number
}

/** Larger slips than this are no slips of the hand, mm or degrees. */
const LARGEST = 15

/** Steps in which the nearest crossing is looked for; a slip smaller than a step is still found. */
const STEP = 0.5

/** A slip too small to see explains nothing, mm or degrees. */
const SMALLEST = 0.05

/**
 * The change of `x` nearest to nought, at most `LARGEST` either way, at which `f` is nought.
 * Null if there is none. Found by steps outward, then by bisection.
 */
function nearestRoot(f: (x: number) => number): number | null {
  const here = f(0)
  let best: number | null = null
  for (const way of [1, -1]) {
    let before = here
    for (let x = STEP; x <= LARGEST; x += STEP) {
      if (best !== null && x - STEP > Math.abs(best)) break
      const value = f(way * x)
      if (!Number.isFinite(value)) break
      if (before * value <= 0 && before !== value) {
        const root = bisect(f, way * (x - STEP), way * x, before)
        if (best === null || Math.abs(root) < Math.abs(best)) best = root
        break
      }
      before = value
    }
  }
  return best
}

function bisect(f: (x: number) => number, from: number, to: number, atFrom: number): number {
  let [low, high, lowValue] = [from, to, atFrom]
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2
    const value = f(middle)
    if (lowValue * value <= 0) high = middle
    else [low, lowValue] = [middle, value]
  }
  return (low + high) / 2
}

/** A length that points backwards grows when it gets more negative. */
const outward = (from: number): 1 | -1 => (from < 0 ? -1 : 1)

const ranked = (slips: readonly Slip[]): readonly Slip[] =>
  slips.filter(({ slip }) => Math.abs(slip) >= SMALLEST).sort((a, b) => Math.abs(a.slip) - Math.abs(b.slip))

function openingSlip(opening: number, error: (opening: number) => number): Slip[] {
  const root = nearestRoot((x) => (opening + x < 0 || opening + x > 180 ? Number.NaN : error(opening + x)))
  if (root === null) return []
  const to = opening + root
  return [{ id: 'card', field: 'opening', label: 'Opening', unit: 'deg', from: opening, to, slip: root }]
}

/** The mechanism and those it stands on, nearest first. */
function lineage(design: Design, id: string): readonly string[] {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  const host = m.on.split('/')[0] as string
  return m.on === 'gutter' ? [id] : [id, ...lineage(design, host)]
}

/**
 * What may have gone wrong when a ruler reads `reading` mm for the rise of a mechanism's tip at
 * `opening` degrees: for each field, and for the opening, the one change that would explain it,
 * smallest first (a millimetre counts as much as a degree); two equal sides are one field. Empty if the reading is right, or if no
 * single slip up to 15 mm or degrees explains it. Throws a RangeError for an unknown mechanism.
 */
export function likelySlips(design: Design, id: string, opening: number, reading: number): readonly Slip[] {
  const rise = (d: Design, at: number): number => (measure(d, at).tips[id]?.rise ?? Number.NaN) - reading
  const slips = lineage(design, id).flatMap((owner): Slip[] => {
    const m = design.mechanisms.find((one) => one.id === owner)
    if (!m) return []
    const kind = kindOf(m)
    // Two equal sides are drawn and cut as one, so they slip together too.
    const together = kind.derived.filter((derived) => {
      const parts = Object.entries(derived.set(m, derived.get(m)))
      return parts.length > 1 && parts.every(([name, value]) => settingOf(m, name) === value)
    })
    const made = [...kind.fields.filter(({ name, shorthand }) => !shorthand && name !== 'tab'), ...together]
    const found = made.flatMap((field): Slip[] => {
      const from = settingOf(m, field.name)
      const root = nearestRoot((x) => {
        const to = from + x
        // Past its range, or past nought, a length turns into another design.
        if (to < field.min || to > field.max || from * to < 0) return Number.NaN
        const changed = change(design, owner, fieldsFor(m, field.name, to))
        const made = changed.mechanisms.find((one) => one.id === owner)
        return !made ||
          !isSetTo(made, field.name, to) ||
          changed.mechanisms.some((one) => kindOf(one).limits?.(one))
          ? Number.NaN
          : rise(changed, opening)
      })
      if (root === null) return []
      const { name, label, unit } = field
      return [{ id: owner, field: name, label, unit, from, to: from + root, slip: outward(from) * root }]
    })
    // A slip of both sides is not told again as one of the left or of the right.
    const told = together
      .filter(({ name }) => found.some(({ field }) => field === name))
      .flatMap((derived) => Object.keys(derived.set(m, derived.get(m))))
    return found.filter(({ field }) => !told.includes(field))
  })
  return ranked([...slips, ...openingSlip(opening, (at) => rise(design, at))])
}

/** The same for the gape between a point of a bare card's page and its twin. */
export function likelyPointSlips(point: Flat, opening: number, reading: number): readonly Slip[] {
  const gape = (across: number, at: number): number => pagePoint([across, point[1]], at).gape - reading
  const root = nearestRoot((x) => (point[0] + x < 0 ? Number.NaN : gape(point[0] + x, opening)))
  const across: Slip[] =
    root === null
      ? []
      : [
          {
            id: 'point',
            field: 'across',
            label: 'Distance to the gutter',
            unit: 'mm',
            from: point[0],
            to: point[0] + root,
            slip: root,
          },
        ]
  return ranked([...across, ...openingSlip(opening, (at) => gape(point[0], at))])
}
