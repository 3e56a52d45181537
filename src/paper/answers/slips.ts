import type { Design } from '../design/design.ts'
import { ownerOf } from '../design/name.ts'
import { pagePoint } from '../measure/page-point.ts'
import type { Said } from '../mechanisms/kind.ts'
import type { Flat } from '../plane/lay.ts'
import { lastGood } from '../plane/search.ts'
import { toGutter } from '../words/answers.ts'
import type { Reading, Trial } from './trials.ts'
import {
  concerned,
  heldWrongly,
  LARGEST,
  openingTrial,
  settingTrial,
  settingTrials,
  together,
} from './trials.ts'

/** One slip of the hand that would explain a ruler's reading. */
export interface Slip {
  /** The mechanism, or `card` for the opening, or `point` for a point of a page. */
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly said?: Said
  /** As designed, and as it would have to be for this reading. */
  readonly from: number
  readonly to: number
  /** How far off, mm or degrees: positive where the length is too long or the opening too wide. */
  readonly slip: number
}

/** Steps in which the nearest crossing is looked for; a slip smaller than a step is still found. */
const STEP = 0.5

/** To which a crossing is found. */
const EXACT = 1e-12

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
        const sameSide = (at: number): boolean => before * f(at) > 0
        const [near, far] = lastGood(sameSide, way * (x - STEP), way * x, EXACT)
        const root = (near + far) / 2
        if (best === null || Math.abs(root) < Math.abs(best)) best = root
        break
      }
      before = value
    }
  }
  return best
}

/** A length that points backwards grows when it gets more negative. */
const outward = (from: number): 1 | -1 => (from < 0 ? -1 : 1)

const ranked = (slips: readonly Slip[]): readonly Slip[] =>
  slips.filter(({ slip }) => Math.abs(slip) >= SMALLEST).sort((a, b) => Math.abs(a.slip) - Math.abs(b.slip))

/** The least slip of each trial that gives exactly what was read. */
const exactly = (trials: readonly Trial[]): readonly Slip[] =>
  trials.flatMap((trial): Slip[] => {
    const root = nearestRoot((by) => trial.errors(by)?.[0] ?? Number.NaN)
    if (root === null) return []
    const { id, field, label, unit, said, from } = trial
    const slip = outward(from) * root
    return [{ id, field, label, unit, from, to: from + root, slip, ...(said ? { said } : {}) }]
  })

/** The mechanism and those it stands on, nearest first. */
function lineage(design: Design, id: string): readonly string[] {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  return m.on === 'gutter' ? [id] : [id, ...lineage(design, ownerOf(m.on))]
}

/**
 * What may have gone wrong when a ruler reads `reading` mm for the rise of a mechanism's tip at
 * `opening` degrees: for each field, and for the opening, the one change that would explain it,
 * smallest first (a millimetre counts as much as a degree); two equal sides are one field. Empty if the reading is right, or if no
 * single slip up to 15 mm or degrees explains it. Throws a RangeError for an unknown mechanism.
 */
export function likelySlips(design: Design, id: string, opening: number, reading: number): readonly Slip[] {
  const readings: readonly Reading[] = [{ what: 'rise', id, opening, value: reading }]
  const own = concerned(design, readings)
  const slips = lineage(own, id).flatMap((owner): readonly Slip[] => {
    const m = own.mechanisms.find((one) => one.id === owner)
    if (!m) return []
    const both = together(m)
    const found = exactly([
      ...settingTrials(own, m, readings),
      ...both.map((derived) => settingTrial(own, m, derived, readings)),
    ])
    // A slip of both sides is not told again as one of the left or of the right.
    const told = both
      .filter(({ name }) => found.some(({ field }) => field === name))
      .flatMap((derived) => Object.keys(derived.set(m, derived.get(m))))
    return found.filter(({ field }) => !told.includes(field))
  })
  return ranked([...slips, ...exactly(heldWrongly(own, readings))])
}

/** The same for the gape between a point of a bare card's page and its twin. */
export function likelyPointSlips([from, along]: Flat, opening: number, reading: number): readonly Slip[] {
  const gape = (across: number, at: number): number[] => [pagePoint([across, along], at).gape - reading]
  const across: Trial = {
    ...{ id: 'point', field: 'across', label: toGutter, unit: 'mm', from, hand: 1 },
    errors: (by) => (from + by < 0 ? null : gape(from + by, opening)),
  }
  return ranked(exactly([across, openingTrial(opening, (at) => gape(from, at))]))
}
