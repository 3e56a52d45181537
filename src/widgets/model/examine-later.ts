import { effect } from '@preact/signals'
import * as says from '../../../content/words/bench.ts'
import type { Bench } from './bench-model.ts'
import { notLoaded } from './loading.ts'
import { afterPaint, atRest } from './spare.ts'

const isMoved = (bench: Bench): boolean => bench.design.value !== bench.start.design

const isFaulty = (bench: Bench): boolean => !bench.checks.peek()?.every(({ ok }) => ok)

/**
 * Keeps the verdicts of a bench up to date from its first change on, and looks for repairs where the page came with
 * faults. No frame waits for what does so: it is fetched when the first one has been painted. Returns what ends it.
 */
export function examineLater(bench: Bench): () => void {
  let end: (() => void) | null = null
  let asked = false
  let asleep = false
  const fetchExaminer = async () => {
    try {
      const { keepExamined, prepareChecker } = await import('./examine.ts')
      prepareChecker()
      if (!asleep) end = keepExamined(bench)
    } catch (error) {
      // The next change asks again.
      asked = false
      bench.trouble.value = notLoaded(says.whatChecksCard, error)
    }
  }
  const ask = () => {
    if (asked || asleep) return
    asked = true
    afterPaint(() => void fetchExaminer())
  }
  const stop = effect(() => {
    if (isMoved(bench)) ask()
  })
  const forget = isFaulty(bench) ? atRest(bench, ask) : undefined
  return () => {
    asleep = true
    forget?.()
    stop()
    end?.()
  }
}
