import './notes.css'
import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import * as says from '../../../content/words/beside.ts'
import type { Bench } from '../model/bench-model.ts'
import { notLoaded } from '../model/loading.ts'
import { afterPaint } from '../model/spare.ts'

interface WayNoteProps {
  readonly bench: Bench
  /** What is said of the design with which the page begins: one sentence for each of `config.ways`. */
  readonly says: readonly string[]
  /** They answer the chapter's guess. */
  readonly answers: boolean
}

/**
 * Which way the mechanisms named by the chapter go as the card opens. What finds it comes with the checks,
 * once the card is changed.
 */
export function WayNote({ bench, says: sentences, answers }: WayNoteProps): JSX.Element | null {
  const [now, setNow] = useState(sentences)
  useEffect(
    () =>
      effect(() => {
        const design = bench.design.value
        if (design === bench.start.design) return setNow(sentences)
        const ids = bench.config.ways ?? []
        const tell = () =>
          import('../model/checker.ts').then(
            ({ wayOf }) => {
              if (bench.design.peek() === design) setNow(ids.map((id) => wayOf(design, id).sentence))
            },
            (error: unknown) => setNow([notLoaded(says.whatTellsWay, error)]),
          )
        // No frame of a drag waits for it.
        afterPaint(() => void tell())
      }),
    [bench, sentences],
  )
  if (now.length === 0) return null
  return (
    <div class="way-note" data-answers={answers}>
      {now.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  )
}
