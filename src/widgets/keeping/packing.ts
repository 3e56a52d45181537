/** A history as plain data: each step is what it changed in the step before. */
import type { Art, Card, Design, Mechanism, Papers } from '../../paper/index.ts'
import { kindNamed, parseDesign } from '../../paper/index.ts'
import type { Aside } from '../state/state.ts'
import { readAside } from './aside.ts'
import type { History, Step } from './history.ts'
import { begun, done, gone } from './history.ts'

/** A list by another: parts that are new, and runs [from, count] of the other's. */
type Spliced<T> = readonly (T | readonly [from: number, count: number])[]

/** What differs from the step before; what is left out is as it was, null: none any more. */
export interface Delta {
  readonly title?: string
  readonly card?: Card
  readonly mechanisms?: Spliced<Mechanism>
  readonly papers?: Papers | null
  readonly art?: Spliced<Art> | null
}

/** One step, as it is stored. The first that is kept holds its whole design. */
export interface PackedStep {
  readonly label: string
  readonly whole?: Design
  readonly delta?: Delta
  /** What is hidden, locked and kept beside it; left out: nothing. */
  readonly aside?: Aside
}

/** What a site of today writes. A later one that changes what is stored counts on, and still reads this. */
export const PACKED = 1

export interface Packed {
  readonly v: typeof PACKED
  readonly at: number
  readonly dropped: number
  readonly steps: readonly PackedStep[]
}

/** A list told by another, by identity: runs of it, and new parts between them. */
function spliced<T extends object>(before: readonly T[], after: readonly T[]): Spliced<T> {
  const places = new Map(before.map((one, k) => [one, k]))
  const out: (T | [number, number])[] = []
  let run: [number, number] | null = null
  for (const one of after) {
    const place = places.get(one)
    if (place === undefined) {
      out.push(one)
      run = null
    } else if (run && place === run[0] + run[1]) run[1]++
    else {
      run = [place, 1]
      out.push(run)
    }
  }
  return out
}

const isRun = (one: unknown): one is readonly [number, number] => Array.isArray(one)

function joined<T>(before: readonly T[], parts: Spliced<T>): T[] {
  return parts.flatMap((one): readonly T[] =>
    isRun(one) ? before.slice(one[0], one[0] + one[1]) : [one as T],
  )
}

export const deltaOf = (before: Design, after: Design): Delta => ({
  ...(after.title === before.title ? {} : { title: after.title }),
  ...(after.card === before.card ? {} : { card: after.card }),
  ...(after.mechanisms === before.mechanisms
    ? {}
    : { mechanisms: spliced(before.mechanisms, after.mechanisms) }),
  ...(after.papers === before.papers ? {} : { papers: after.papers ?? null }),
  ...(after.art === before.art ? {} : { art: after.art ? spliced(before.art ?? [], after.art) : null }),
})

/** The step after another, by what it changed; equal parts are the very same ones. */
export function withDelta(before: Design, delta: Delta): Design {
  const papers = delta.papers === undefined ? before.papers : (delta.papers ?? undefined)
  const art =
    delta.art === undefined
      ? before.art
      : delta.art === null
        ? undefined
        : joined(before.art ?? [], delta.art)
  return {
    hingebook: 1,
    title: delta.title ?? before.title,
    card: delta.card ?? before.card,
    mechanisms: delta.mechanisms ? joined(before.mechanisms, delta.mechanisms) : before.mechanisms,
    ...(papers ? { papers } : {}),
    ...(art ? { art } : {}),
  }
}

/** A step as it is stored behind the one before it; the first is stored whole. */
export const packedStep = ({ label, design, aside }: Step, before: Step | undefined): PackedStep => ({
  label,
  ...(before ? { delta: deltaOf(before.design, design) } : { whole: design }),
  ...(aside === undefined ? {} : { aside }),
})

export const packed = ({ steps, at, dropped }: History): Packed => ({
  v: PACKED,
  at,
  dropped,
  steps: steps.map((step, k) => packedStep(step, steps[k - 1])),
})

function designsOf(steps: readonly PackedStep[]): Design[] {
  const designs: Design[] = []
  for (const { whole, delta } of steps) {
    const before = designs.at(-1)
    if (whole) designs.push(whole)
    else if (before && delta) designs.push(withDelta(before, delta))
    else throw new RangeError('a step has nothing to follow')
  }
  return designs
}

/** Whether all of a step is there. Only the step that is shown is read in full: a thousand would take seconds. */
const isWhole = ({ title, card, mechanisms }: Design): boolean =>
  typeof title === 'string' &&
  typeof card === 'object' &&
  Array.isArray(mechanisms) &&
  mechanisms.every((m) => typeof m === 'object' && m !== null && kindNamed(m.kind) !== undefined)

/** Whether a design is one, by the reader of files. */
function holds(design: Design): boolean {
  try {
    parseDesign(design)
    return true
  } catch {
    return false
  }
}

/** A history from what was stored. It never throws: null where it is not whole, or shows what is no design any more. */
export function unpacked(stored: unknown): History | null {
  try {
    const { v, at, dropped, steps } = stored as Packed
    if (v !== PACKED || !Array.isArray(steps) || steps.length === 0) return null
    const designs = designsOf(steps)
    const [first] = designs
    const shown = designs[at]
    if (!first || !shown || !designs.every(isWhole) || !holds(shown)) return null
    let history = begun(first, String(steps[0]?.label ?? ''), readAside(steps[0]?.aside))
    designs.slice(1).forEach((design, k) => {
      const step = steps[k + 1]
      history = appended(history, design, String(step?.label ?? ''), readAside(step?.aside))
    })
    return { ...gone(history, at), dropped: Number.isInteger(dropped) && dropped > 0 ? dropped : 0 }
  } catch {
    return null
  }
}

/** As `done`, but a step that changes nothing is a step too: as it was stored. */
const appended = (history: History, design: Design, says: string, aside?: Aside): History => {
  const next = done(history, design, { says, aside })
  return next === history ? done(history, { ...design }, { says, aside }) : next
}
