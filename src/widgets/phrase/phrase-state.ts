import type { Design } from '../../paper/index.ts'
import { change, fieldsFor, kindOf, settable, settingOf, settled } from '../../paper/index.ts'
import type { PhraseMove, Settings } from '../model/moved.ts'
import { mechanismOf } from '../state/mechanism-of.ts'
import type { BenchState } from '../state/state.ts'

/** A mechanism set, one thing after another; null: no such design. Throws a RangeError if it has no such name. */
function withSettings(start: Design, id: string, set: Settings): Design | null {
  let design = start
  for (const [name, value] of Object.entries(set)) {
    const m = mechanismOf(design, id)
    const choice = kindOf(m).choices?.find((one) => one.name === name)
    if (choice?.values.includes(value)) design = change(design, id, { [name]: value })
    else if (typeof value === 'number' && settable(m).some((field) => field.name === name))
      design = change(design, id, fieldsFor(m, name, value))
    else throw new RangeError(`${id} has no ${name} that could be ${value}`)
  }
  return settled(design)
}

/**
 * The design a phrase speaks of; null: it changes none. It changes the chapter's own design, not the reader's,
 * so that what the sentence says of it is true. Throws a RangeError if it names what is not there.
 */
export function phraseDesign(start: Design, { id, set }: PhraseMove): Design | null {
  if (id === undefined || set === undefined) return null
  const design = withSettings(start, id, set)
  if (!design) throw new RangeError(`${id} cannot have these sizes together`)
  return design
}

/** The state that a phrase asks for. Throws as `phraseDesign`. */
export function phraseState(now: BenchState, start: BenchState, move: PhraseMove): BenchState {
  return {
    ...now,
    design: phraseDesign(start.design, move) ?? now.design,
    opening: move.opening ?? now.opening,
    point: move.across !== undefined && now.point ? [move.across, now.point[1]] : now.point,
  }
}

/** Whether what a phrase asked for still holds; once the reader changes it, the phrase lets go. */
export function phraseHolds(now: BenchState, reached: BenchState, move: PhraseMove): boolean {
  return (
    (move.set === undefined || now.design === reached.design) &&
    (move.opening === undefined || Math.abs(now.opening - reached.opening) < 0.05) &&
    (move.across === undefined || now.point?.[0] === reached.point?.[0])
  )
}

/** The way from one state to another, `part` from 0 to 1: openings and sizes go along it, all else jumps. */
export function onTheWay(
  from: BenchState,
  to: BenchState,
  start: BenchState,
  { id, set }: PhraseMove,
  part: number,
): BenchState {
  if (part >= 1) return to
  const opening = Math.round((from.opening + part * (to.opening - from.opening)) * 10) / 10
  const point =
    from.point && to.point
      ? ([from.point[0] + part * (to.point[0] - from.point[0]), to.point[1]] as const)
      : to.point
  if (id === undefined || !set || from.design !== start.design) return { ...to, opening, point }
  const m = mechanismOf(from.design, id)
  const between = Object.fromEntries(
    Object.entries(set).map(([name, value]) => {
      if (typeof value !== 'number' || kindOf(m).choices?.some((one) => one.name === name))
        return [name, value]
      const was = settingOf(m, name)
      return [name, was + part * (value - was)]
    }),
  )
  return { ...to, opening, point, design: withSettings(start.design, id, between) ?? to.design }
}
