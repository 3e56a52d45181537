/**
 * What was done, step by step: an immutable list of designs, which share all parts that did not change. Past 64 MB
 * of what is new in its steps the oldest go: a step of a hand is some hundred bytes, so that is beyond what a person does.
 */
import * as stepSays from '../../../content/words/keeping/steps.ts'
import type { Design } from '../../paper/index.ts'
import type { Aside } from '../state/state.ts'
import { sameAside } from './aside.ts'
import { asideWords, stepWords } from './words.ts'

export interface Step {
  readonly design: Design
  /** What is hidden, locked and kept beside it; left out: nothing. */
  readonly aside?: Aside | undefined
  /** What was done to come here: `wing: slit 38 to 41`. */
  readonly label: string
  /** Of one drag, say: steps of one gesture that follow one another are one step. */
  readonly gesture?: string
  /** What of it is not in the step before, bytes of JSON or a little less. */
  readonly weight: number
}

export interface History {
  /** Oldest first; never empty. */
  readonly steps: readonly Step[]
  /** Which step is shown. */
  readonly at: number
  /** How many older steps were forgotten: the first of `steps` is the step of this number. */
  readonly dropped: number
}

export const MOST_BYTES = 64 * 1024 * 1024

/** A step is never lighter than this, however little it changes: its lists weigh too. */
const LEAST_WEIGHT = 64

/** A part's weight, remembered: parts never change. */
const weights = new WeakMap<object, number>()

function weightOf(part: object): number {
  const known = weights.get(part)
  if (known !== undefined) return known
  const weight = JSON.stringify(part).length
  weights.set(part, weight)
  return weight
}

/** Bytes of what is in the second design and not, as the very same object, in the first. */
function newIn(before: Design | null, after: Design): number {
  const list = <T extends object>(now: readonly T[] = [], was: readonly T[] = []): number => {
    if (now === was) return 0
    const old = new Set<object>(was)
    return now.reduce((sum, one) => sum + 4 + (old.has(one) ? 0 : weightOf(one)), 0)
  }
  return (
    LEAST_WEIGHT +
    list(after.mechanisms, before?.mechanisms) +
    (after.art ? list(after.art, before?.art ?? []) : 0)
  )
}

interface More {
  readonly gesture?: string | undefined
  readonly aside?: Aside | undefined
}

const stepTo = (
  before: Design | null,
  design: Design,
  label: string,
  { gesture, aside }: More = {},
): Step => ({
  design,
  ...(aside === undefined ? {} : { aside }),
  label,
  ...(gesture === undefined ? {} : { gesture }),
  weight: newIn(before, design),
})

/** A history that begins with this design. */
export const begun = (design: Design, label: string = stepSays.begun, aside?: Aside): History => ({
  steps: [stepTo(null, design, label, { aside })],
  at: 0,
  dropped: 0,
})

/** The step that is shown. */
export const present = ({ steps, at }: History): Step => steps[at] as Step

/** Without its oldest steps, as many as are too heavy. The one that is shown stays. */
function lightened(history: History, most: number): History {
  let weight = history.steps.reduce((sum, step) => sum + step.weight, 0)
  let gone = 0
  while (weight > most && gone < history.at) {
    weight -= history.steps[gone]?.weight ?? 0
    gone++
  }
  if (gone === 0) return history
  return { steps: history.steps.slice(gone), at: history.at - gone, dropped: history.dropped + gone }
}

/** Weighs a history only so often: most steps are far too light for it to matter. */
const WEIGHED_EVERY = 64

/**
 * A step further; what could be redone is gone. Steps of one gesture are one step, said from its beginning, and
 * a gesture that comes back to where it began leaves none.
 * @param says what was done, where the caller knows it better than the two designs tell
 * @param aside what is hidden, locked and kept beside the design; as it was if left out
 */
export function done(
  history: History,
  design: Design,
  {
    says,
    gesture,
    most = MOST_BYTES,
    aside = present(history).aside,
  }: { says?: string; gesture?: string; most?: number; aside?: Aside | undefined } = {},
): History {
  const now = present(history)
  if (design === now.design && sameAside(aside, now.aside)) return history
  const goesOn = gesture !== undefined && now.gesture === gesture && history.at > 0
  const kept = history.steps.slice(0, goesOn ? history.at : history.at + 1)
  const before = kept.at(-1) as Step
  if (goesOn && design === before.design && sameAside(aside, before.aside))
    return { ...history, steps: kept, at: kept.length - 1 }
  const label =
    says ?? (design === before.design ? asideWords(before.aside, aside) : stepWords(before.design, design))
  const steps = [...kept, stepTo(before.design, design, label, { gesture, aside })]
  const next = { ...history, steps, at: steps.length - 1 }
  return most < MOST_BYTES || steps.length % WEIGHED_EVERY === 0 ? lightened(next, most) : next
}

/** Ends a gesture: what comes next under the same name is a step of its own. */
export function rested(history: History): History {
  const now = present(history)
  if (now.gesture === undefined) return history
  const { gesture: _gesture, ...step } = now
  return { ...history, steps: history.steps.map((one, k) => (k === history.at ? step : one)) }
}

export const canUndo = ({ at }: History): boolean => at > 0

export const canRedo = ({ at, steps }: History): boolean => at < steps.length - 1

/** One step back; the same history at its beginning. */
export const undone = (history: History): History =>
  canUndo(history) ? { ...rested(history), at: history.at - 1 } : history

/** One step forward again; the same history at its end. */
export const redone = (history: History): History =>
  canRedo(history) ? { ...rested(history), at: history.at + 1 } : history

/** To a step of the list, by its place in it. */
export const gone = (history: History, at: number): History => ({
  ...rested(history),
  at: Math.min(history.steps.length - 1, Math.max(0, Math.round(at) || 0)),
})

/** What one press of undo and redo would take back and do again; null if there is nothing. */
export const undoLabel = (history: History): string | null =>
  canUndo(history) ? present(history).label : null

export const redoLabel = ({ steps, at }: History): string | null => steps[at + 1]?.label ?? null
