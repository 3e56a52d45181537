import { effect } from '@preact/signals'
import * as says from '../../../../content/words/dummy/desk.ts'
import type { Check, Design } from '../../../paper/index.ts'
import type { Bench } from '../../model/bench-model.ts'
import { reasonOf } from '../../model/loading.ts'
import type { Examine } from './examiner.ts'
import { packed } from './parcel.ts'

/** The hands have rested when nothing has changed for so long, ms: then what mends a fault is looked for. */
const REST = 300

/**
 * Keeps the verdicts of a bench up to date, all of them worked out beside the page: at every moment one design is being
 * looked at, and the newest is taken next. Those with repairs come once the hands rest. Returns what ends it.
 */
export function keepExamining(bench: Bench): () => void {
  let desk: Worker | null = null
  let asked: Design | null = null
  /** What the worker knows: the design that it was sent last. */
  let sent: Design | null = null
  let repairer: Worker | null = null
  let seeking = false
  let rest: ReturnType<typeof setTimeout> | undefined
  const trouble = (event: ErrorEvent) => {
    bench.trouble.value = says.notChecked(reasonOf(new Error(event.message)))
  }
  /** A worker of its own for repairs: looking for them may take a second, and no drag waits for it. */
  const worker = (): Worker => {
    const made = new Worker(new URL('./examiner.ts', import.meta.url), { type: 'module' })
    made.onerror = trouble
    return made
  }
  const look = () => {
    const design = bench.design.peek()
    if (asked || sent === design) return
    if (!desk) {
      desk = worker()
      desk.onmessage = ({ data }: MessageEvent<readonly Check[]>) => {
        const looked = asked
        asked = null
        if (looked === bench.design.peek()) bench.examine(() => data, false)
        else {
          bench.glance(data)
          look()
        }
      }
    }
    asked = design
    desk.postMessage({ parcel: packed(design, sent), repairs: false } satisfies Examine)
    sent = design
  }
  const seek = () => {
    const design = bench.design.peek()
    if (bench.knows(true)) return
    // Nobody waits for what would mend another card.
    if (seeking) repairer?.terminate()
    if (seeking || !repairer) repairer = worker()
    seeking = true
    repairer.onmessage = ({ data }: MessageEvent<readonly Check[]>) => {
      seeking = false
      if (bench.design.peek() === design) bench.examine(() => data, true)
    }
    repairer.postMessage({ parcel: packed(design, null), repairs: true } satisfies Examine)
  }
  const stop = effect(() => {
    const bare = bench.design.value.mechanisms.length === 0
    const busy = bench.held.value !== null
    clearTimeout(rest)
    // A bare card works, and needs nobody to say so.
    if (bare) {
      bench.examine(() => [], true)
      return
    }
    look()
    const faulty = bench.checks.value?.some(({ ok }) => !ok) ?? false
    if (!busy && faulty) rest = setTimeout(seek, REST)
  })
  return () => {
    stop()
    clearTimeout(rest)
    desk?.terminate()
    repairer?.terminate()
  }
}
