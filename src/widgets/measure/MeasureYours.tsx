import '../fields/fields.css'
import './measure.css'
import type { JSX } from 'preact'
import { useEffect, useId, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/measure/field.ts'
import type { DesignSource } from '../model/brought.ts'
import { designFrom } from '../model/brought.ts'
import { notLoaded } from '../model/loading.ts'
import { lengthUnit } from '../model/page.ts'
import { unitSign } from '../state/format.ts'
import { leadOf } from '../state/state.ts'
import type { MeasureYoursProps, Texts } from './reading.ts'

/** Loaded when a reader comes to the field: what compares, finds slips, and asks for further readings. */
type Tools = typeof import('./MeasureTools.tsx')

/** The reader's ruler against the model, and what the hand may have done. */
export function MeasureYours({
  design: source,
  ...props
}: Omit<MeasureYoursProps, 'design'> & { readonly design: DesignSource }): JSX.Element {
  const { config } = props
  const design = designFrom(source)
  const field = useId()
  const [texts, setTexts] = useState<Texts>({})
  const [tools, setTools] = useState<Tools | null>(null)
  const root = useRef<HTMLDivElement>(null)
  const [trouble, setTrouble] = useState('')
  const fetchTools = () =>
    void import('./MeasureTools.tsx').then(
      (found) => {
        setTools(found)
        setTrouble('')
      },
      (error: unknown) => setTrouble(notLoaded(says.comparer, error)),
    )
  const type = (what: string, text: string) => {
    fetchTools()
    setTexts((before) => ({ ...before, [what]: text }))
  }
  useEffect(() => {
    // What was typed before the page woke counts too.
    const early = root.current?.querySelector('input')?.value
    if (early) type('rise', early)
  }, [])
  const length = lengthUnit.value
  const all = { ...props, design, field, texts, onType: type }
  return (
    <div class="measure-yours" ref={root}>
      <p class="measure-ask">
        <label for={field}>{says.myRuler}</label>
        <input
          id={field}
          type="text"
          class="number-input"
          inputMode="decimal"
          autocomplete="off"
          value={texts.rise ?? ''}
          aria-invalid={tools?.isWrong('rise', texts, length) ?? false}
          aria-describedby={`${field}-says`}
          onFocus={fetchTools}
          onInput={(event) => type('rise', event.currentTarget.value)}
        />
        <span class="unit">{unitSign('mm', length)}</span>
      </p>
      {leadOf(design, config) ? (
        <details class="measure-more" onToggle={fetchTools}>
          <summary>{says.secondReading}</summary>
          {tools ? <tools.Further {...all} /> : null}
        </details>
      ) : null}
      <div class="measure-says" id={`${field}-says`} role="status">
        {tools ? <tools.Says {...all} /> : trouble === '' ? null : <p>{trouble}</p>}
      </div>
    </div>
  )
}
