import { sameAside } from '../../keeping/aside.ts'
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
export function followed(
  history: History,
  was: Depths,
  now: Depths,
  { design, aside }: Pick<BenchState, 'design' | 'aside'>,
): History {
  const isAt = (k: number): boolean => {
    const step = history.steps[k]
    return step?.design === design && sameAside(step.aside, aside)
  }
  if (isAt(history.at)) return history
  if (now.before === was.before - 1 && now.after === was.after + 1) return undone(history)
  if (now.before === was.before + 1 && now.after === was.after - 1 && isAt(history.at + 1))
    return redone(history)
  return done(history, design, { aside, gesture: String(now.before) })
}

/** What a bench can undo and redo of a history that was kept: its designs, seen from where the maker looks now. */
export const pastOf = ({ steps, at }: History, now: BenchState): Past => ({
  before: steps.slice(0, at).map(({ design, aside }) => ({ ...now, design, aside })),
  after: steps.slice(at + 1).map(({ design, aside }) => ({ ...now, design, aside })),
})
