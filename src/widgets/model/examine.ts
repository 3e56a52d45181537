import { effect } from '@preact/signals'
import * as says from '../../../content/words/examine.ts'
import type { Check, Design } from '../../paper/index.ts'
import type { Bench } from './bench-model.ts'
import { notLoaded } from './loading.ts'
import type { Checker } from './verdicts.ts'

/** The hands have rested when nothing has changed for so long, ms. */
const REST = 150

/** While they do not rest, verdicts are taken between frames, and not more often than this, ms. */
const APART = 120

/** A browser that never has time between frames is asked no later than this, ms. */
const LATEST = 100

let coming: Promise<Checker> | null = null

/** Fetches the kernel's checks, once: when a hand comes near a bench. */
function fetchChecker(): Promise<Checker> {
  coming ??= import('./checker.ts').then(
    ({ check }) => check,
    (error: unknown) => {
      coming = null
      throw error
    },
  )
  return coming
}

/** The same ahead of time: if it fails, whoever needs them will say so. */
export const prepareChecker = (): void => void fetchChecker().catch(() => {})

/** Runs something a little later, when the browser has time; returns what calls it off. */
function whenIdle(run: () => void): () => void {
  let ticket: number | null = null
  const wait = setTimeout(() => {
    if (typeof requestIdleCallback === 'undefined') run()
    else ticket = requestIdleCallback(run, { timeout: LATEST })
  }, APART)
  return () => {
    clearTimeout(wait)
    if (ticket !== null) cancelIdleCallback(ticket)
  }
}

/**
 * Keeps the verdicts of a bench up to date: quick ones while the design moves, so that no frame waits for
 * them, and those with repairs once the hands rest, worked out beside the page. Returns what ends it.
 */
export function keepExamined(bench: Bench): () => void {
  let callOff: (() => void) | null = null
  let rest: ReturnType<typeof setTimeout> | undefined
  let asleep = false
  let desk: Worker | null = null
  /** The design whose repairs are being looked for. */
  let asked: Design | null = null
  const seek = () => {
    const design = bench.design.peek()
    if (asked === design || bench.knows(true)) return
    // Nobody waits for what would mend another card.
    if (asked) desk?.terminate()
    if (asked || !desk) desk = new Worker(new URL('./repairer.ts', import.meta.url), { type: 'module' })
    asked = design
    desk.onmessage = ({ data }: MessageEvent<readonly Check[]>) => {
      asked = null
      if (bench.design.peek() === design) bench.examine(() => data, true)
    }
    desk.onerror = () => void take(true)
    desk.postMessage(design)
  }
  const take = async (repairs: boolean) => {
    let checker: Checker
    try {
      checker = await fetchChecker()
    } catch (error) {
      bench.trouble.value = notLoaded(says.whatChecksCard, error)
      return
    }
    bench.trouble.value = ''
    if (!asleep) bench.examine(checker, repairs)
  }
  const stop = effect(() => {
    const moved = bench.design.value !== bench.start.design || bench.checks.peek() === null
    const busy = bench.held.value !== null
    clearTimeout(rest)
    if (!moved && coming === null) return
    callOff ??= whenIdle(() => {
      callOff = null
      void take(false)
    })
    if (!busy) rest = setTimeout(seek, REST)
  })
  return () => {
    asleep = true
    stop()
    desk?.terminate()
    callOff?.()
    clearTimeout(rest)
  }
}
