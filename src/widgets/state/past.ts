import type { BenchState } from './state.ts'

/** What can be undone and redone: whole states, oldest first. */
export interface Past {
  readonly before: readonly BenchState[]
  readonly after: readonly BenchState[]
}

export const NO_PAST: Past = { before: [], after: [] }

/** More steps back than this are forgotten. */
const MOST = 5000

/** Whether two states differ in what an undo brings back: looking from elsewhere is no change. */
export const differs = (a: BenchState, b: BenchState): boolean =>
  a.design !== b.design || a.opening !== b.opening || a.point !== b.point

/** Remembers a state that is about to be left. */
export const remember = (past: Past, state: BenchState): Past => ({
  before: [...past.before.slice(1 - MOST), state],
  after: [],
})

const looking = ({ camera, station }: BenchState): Pick<BenchState, 'camera' | 'station'> => ({
  camera,
  station,
})

/** One step back; null at the beginning. The reader's place to look from stays. */
export function back(past: Past, now: BenchState): { past: Past; state: BenchState } | null {
  const state = past.before.at(-1)
  if (!state) return null
  return {
    past: { before: past.before.slice(0, -1), after: [now, ...past.after] },
    state: { ...state, ...looking(now) },
  }
}

/** One step forward again; null at the end. */
export function forward(past: Past, now: BenchState): { past: Past; state: BenchState } | null {
  const [state, ...after] = past.after
  if (!state) return null
  return { past: { before: [...past.before, now], after }, state: { ...state, ...looking(now) } }
}
