/** The desk beside the page: what may take a while is worked out there, and no finger waits for it. */
import * as says from '../../../../content/words/dummy/desk.ts'
import type { Answer, Ask } from './desk-worker.ts'

export type { Ask } from './desk-worker.ts'

/** One question at a time: a newer one calls the older off. */
export interface Desk<Q extends Ask> {
  /** Hands over each answer as it comes. A search gives several. */
  ask(
    question: Q,
    take: (answer: Extract<Answer, { to: Q['what'] }>) => void,
    fail: (why: unknown) => void,
  ): void
  /** Nobody waits for an answer any longer. */
  callOff(): void
}

export function deskFor<Q extends Ask>(): Desk<Q> {
  let worker: Worker | null = null
  let busy = false
  let number = 0
  const callOff = () => {
    number++
    if (busy) {
      worker?.terminate()
      worker = null
    }
    busy = false
  }
  return {
    callOff,
    ask(question, take, fail) {
      callOff()
      worker ??= new Worker(new URL('./desk-worker.ts', import.meta.url), { type: 'module' })
      busy = true
      const mine = number
      worker.onmessage = ({ data }: MessageEvent<Answer>) => {
        if (mine !== number) return
        if (data.last) busy = false
        if (data.to === 'fault') fail(new Error(data.why))
        else take(data as Extract<Answer, { to: Q['what'] }>)
      }
      worker.onerror = (event) => {
        if (mine !== number) return
        callOff()
        fail(new Error(event.message || says.notLoaded))
      }
      worker.postMessage(question)
    },
  }
}
