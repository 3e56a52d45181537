import type { Design } from '../../../paper/index.ts'
import type { History } from '../../keeping/history.ts'
import { done, redone, undone } from '../../keeping/history.ts'
import type { Past } from '../../state/past.ts'
import type { BenchState } from '../../state/state.ts'

/** How many steps lie before and after the state shown. */
export interface Depths {
  readonly before: number
  readonly after: number
}

export const depthsOf = ({ before, after }: Past): Depths => ({ before: before.length, after: after.length })

/**
 * The history that is kept, brought up to what a bench has done: a step further, a step back or forward again, or the
 * same step going on. Steps of one drag, or of keys in a row, are one step for the bench, and so for the history.
 */
export function followed(history: History, was: Depths, now: Depths, design: Design): History {
  if (history.steps[history.at]?.design === design) return history
  if (now.before === was.before - 1 && now.after === was.after + 1) return undone(history)
  const next = history.steps[history.at + 1]?.design
  if (now.before === was.before + 1 && now.after === was.after - 1 && next === design) return redone(history)
  return done(history, design, { gesture: String(now.before) })
}

/** What a bench can undo and redo of a history that was kept: its designs, seen from where the maker looks now. */
export const pastOf = ({ steps, at }: History, now: BenchState): Past => ({
  before: steps.slice(0, at).map(({ design }) => ({ ...now, design })),
  after: steps.slice(at + 1).map(({ design }) => ({ ...now, design })),
})
