import { change, settable, settingOf, settled } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { fieldsFor } from '../design/setting.ts'
import { downTo } from '../design/tree.ts'
import { tipAt } from '../measure/measure.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { compile } from '../motion/pose.ts'
import { solution } from '../plane/descent.ts'
import type { Vec3 } from '../plane/vector.ts'
import { distance, dot, subtract } from '../plane/vector.ts'

/** A step for differences, mm or degrees. */
const STEP = 1e-3

/** Keeps a step finite where the tip hardly answers: of the square of mm per mm. */
const DAMPING = 1e-4

const MOST_STEPS = 12

/** A tip this near to where it is wanted is there, mm. */
const THERE = 0.02

/** To a tenth of a millimetre or degree: what a careful hand can cut. */
const tenth = (value: number): number => Math.round(value * 10) / 10

function tipOf(design: Design, opening: number): Vec3 {
  const poser = compile(design)
  poser(opening)
  return tipAt(poser, design.mechanisms.length - 1)
}

/**
 * The change of settings, of all that move the tip by `r`, whose squares are least: J' (J J' + damping)^-1 r. Damped,
 * the equations always have a solution.
 * (Levenberg 1944; the least-norm solution of a set with fewer equations than unknowns.)
 * @param columns how the tip moves with each setting, mm per mm or degree
 */
export function leastChange(columns: readonly Vec3[], r: Vec3): number[] {
  const square = r.map((_, i) =>
    r.map((_, j) =>
      columns.reduce(
        (all, column) => all + (column[i] as number) * (column[j] as number),
        i === j ? DAMPING : 0,
      ),
    ),
  )
  const along = solution(square, r) as Vec3
  return columns.map((column) => dot(column, along))
}

/**
 * The design with a mechanism's own sizes changed so that its tip comes to a point of space, or as near to it as a
 * few steps bring it: of several ways the least change. Sizes are rounded to 0.1. The design itself if nothing helps.
 * @param at mm, in the card's frame
 * @param kept fields that stay as they are
 * Throws a RangeError for an unknown mechanism, and for an opening that is none.
 */
export function tipTowards(
  design: Design,
  id: string,
  opening: number,
  at: Vec3,
  kept: readonly string[] = [],
): Design {
  const start = design.mechanisms.find((one) => one.id === id)
  if (!start) throw new RangeError(`there is no mechanism ${id}`)
  const { aims } = kindOf(start)
  const free = settable(start).filter(({ name }) => aims.includes(name) && !kept.includes(name))
  const set = (from: Design, values: readonly number[]): Design => {
    let next = from
    for (const [k, { name }] of free.entries()) {
      const m = next.mechanisms.find((one) => one.id === id)
      const value = values[k]
      if (m && value !== undefined && Math.abs(settingOf(m, name) - value) > 1e-9)
        next = change(next, id, fieldsFor(m, name, value))
    }
    return next
  }
  const valuesOf = ({ mechanisms }: Design): number[] => {
    const m = mechanisms.find((one) => one.id === id)
    return free.map(({ name }) => (m ? settingOf(m, name) : 0))
  }
  let now = downTo(design, id)
  let tip = tipOf(now, opening)
  for (let k = 0; k < MOST_STEPS && distance(tip, at) > THERE; k++) {
    const values = valuesOf(now)
    const columns = values.map((value, i): Vec3 => {
      const moved = tipOf(
        set(
          now,
          values.map((one, j) => (i === j ? value + STEP : one)),
        ),
        opening,
      )
      return [(moved[0] - tip[0]) / STEP, (moved[1] - tip[1]) / STEP, (moved[2] - tip[2]) / STEP]
    })
    const step = leastChange(columns, subtract(at, tip))
    let better: { readonly design: Design; readonly tip: Vec3 } | null = null
    for (let part = 1; part > 0.05 && !better; part /= 2) {
      const next = settled(
        set(
          now,
          values.map((value, i) => value + part * (step[i] ?? 0)),
        ),
      )
      const there = next && tipOf(next, opening)
      if (next && there && distance(there, at) < distance(tip, at)) better = { design: next, tip: there }
    }
    if (!better) break
    now = better.design
    tip = better.tip
  }
  return settled(set(design, valuesOf(now).map(tenth))) ?? design
}
