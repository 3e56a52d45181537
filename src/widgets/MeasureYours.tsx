import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks'
import type { Design, Flat } from '../paper/index.ts'
import type { BenchConfig } from './config.ts'
import { shown, typed, unitSign } from './format.ts'
import { benchOf, lengthUnit } from './page.ts'
import { leadOf } from './state.ts'

interface MeasureYoursProps {
  readonly slug: string
  /** The design with which the page begins: the one of the printed template, until the bench says otherwise. */
  readonly design: Design
  readonly config: BenchConfig
  /** The mechanism whose rise is read; the bench's lead if left out. */
  readonly id?: string
  /** The opening at which the reader measures, degrees; 90 if left out. */
  readonly at?: number
}

/** Longer than any card, mm. */
const LONGEST = 1000

/** Loaded when a reader comes to the field: what compares, and finds slips. */
type Tools = typeof import('./compare.ts')

interface Rested {
  readonly made: Design
  readonly point: Flat | null
}

/** What the bench shows whenever the hands rest: finding slips is too slow for every frame of a drag. */
function useRested(slug: string, design: Design, config: BenchConfig): Rested {
  const [rested, setRested] = useState<Rested>({ made: design, point: config.point ?? null })
  useEffect(
    () =>
      effect(() => {
        const bench = benchOf(slug).value
        if (!bench || bench.held.value !== null) return
        const { design: made, point } = bench.state.value
        setRested((before) => (before.made === made && before.point === point ? before : { made, point }))
      }),
    [slug],
  )
  return rested
}

/** The reader's ruler against the model, and what the hand may have done. */
export function MeasureYours({ slug, design, config, id, at = 90 }: MeasureYoursProps): JSX.Element {
  const field = useId()
  const [text, setText] = useState('')
  const [tools, setTools] = useState<Tools | null>(null)
  const input = useRef<HTMLInputElement>(null)
  const fetchTools = () => void import('./compare.ts').then(setTools, () => {})
  useEffect(() => {
    // What was typed before the page woke counts too.
    if (!input.current?.value) return
    setText(input.current.value)
    fetchTools()
  }, [])
  const length = lengthUnit.value
  const { made, point } = useRested(slug, design, config)
  const where = useMemo(() => ({ id, opening: at }), [id, at])
  const reading = typed(text, 'mm', length)
  const fits = text.trim() === '' || (reading !== null && reading >= 0 && reading <= LONGEST)
  const found = useMemo(
    () => (!tools || reading === null || !fits ? null : tools.compare(made, config, point, where, reading)),
    [tools, reading, fits, made, config, point, where],
  )
  return (
    <div class="measure-yours">
      <p class="measure-ask">
        <label for={field}>My ruler says</label>
        <input
          ref={input}
          id={field}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={text}
          aria-invalid={!fits}
          aria-describedby={`${field}-says`}
          onFocus={fetchTools}
          onInput={(event) => {
            fetchTools()
            setText(event.currentTarget.value)
          }}
        />
        <span class="unit">{unitSign('mm', length)}</span>
      </p>
      <div class="measure-says" id={`${field}-says`} role="status">
        {fits ? null : <p>{`Type a number from 0 to ${shown(LONGEST, 'mm', length)}.`}</p>}
        {found ? (
          <p>
            At {at}° the model says <strong>{shown(found.model, 'mm', length)}</strong>.{' '}
            {tools?.comparisonSays(found, length, leadOf(made, config)?.id).join(' ')}
          </p>
        ) : null}
      </div>
    </div>
  )
}
