import { effect } from '@preact/signals'
import type { Bench } from './bench-model.ts'
import { notLoaded } from './loading.ts'

/** Runs something when the next frame has been painted. */
const afterPaint = (run: () => void): void => void requestAnimationFrame(() => setTimeout(run))

/** Whether there is more to find out of a bench than the page came with. */
const asks = (bench: Bench): boolean =>
  bench.design.value !== bench.start.design || !bench.checks.peek()?.every(({ ok }) => ok)

/**
 * Keeps the verdicts of a bench up to date from its first change on. No frame waits for what does so: it is fetched
 * when the first one has been painted. Returns what ends it.
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
      bench.trouble.value = notLoaded('What checks the card', error)
    }
  }
  const stop = effect(() => {
    if (!asks(bench) || asked) return
    asked = true
    afterPaint(() => void fetchExaminer())
  })
  return () => {
    asleep = true
    stop()
    end?.()
  }
}
