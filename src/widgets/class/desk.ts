/** Workers beside the page: each answers its last question alone. */
import * as says from '../../../content/words/class-page.ts'
import type { Answer, Ask } from './asked.ts'

export interface Desk {
  /** Hands over what is told on the way, and then the answer. A newer question calls the older off. */
  ask(question: Ask, take: (answer: Answer) => void): void
  callOff(): void
}

export function deskOf(start: () => Worker): Desk {
  let worker: Worker | null = null
  let busy = false
  const callOff = () => {
    if (!busy) return
    worker?.terminate()
    worker = null
    busy = false
  }
  return {
    callOff,
    ask(question, take) {
      callOff()
      worker ??= start()
      const mine = worker
      busy = true
      mine.onmessage = ({ data }: MessageEvent<Answer>) => {
        if (mine !== worker) return
        if (data.to !== 'told') busy = false
        take(data)
      }
      mine.onerror = () => {
        if (mine !== worker) return
        callOff()
        take({ to: 'fault', sentence: says.notWorkedOut })
      }
      mine.postMessage(question)
    },
  }
}

export const classDesk = (): Desk =>
  deskOf(() => new Worker(new URL('./class-worker.ts', import.meta.url), { type: 'module' }))

/** The PDF writer comes along with this one: started when a pack is asked for. */
export const packDesk = (): Desk =>
  deskOf(() => new Worker(new URL('./pack-worker.ts', import.meta.url), { type: 'module' }))
