import './fields.css'
import type { JSX } from 'preact'
import { useId, useState } from 'preact/hooks'
import type { LengthUnit, ValueUnit } from '../state/format.ts'
import { digits, typed, unitSign } from '../state/format.ts'

interface NumberFieldProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  readonly unit: ValueUnit
  readonly length: LengthUnit
  /** What to say of a value that is not in the range. */
  readonly refusal: string
  readonly onSet: (value: number) => void
  readonly onRest: () => void
}

/** What stands in the field and is not the bench's number. */
interface Draft {
  readonly text: string
  /** The bench's number when the field was left; null while it is typed in. */
  readonly left: number | null
}

/**
 * A number typed by hand. It is taken as soon as it is a number within the range. What is not leaves the bench
 * alone, stays in the field to be mended, and is told in a sentence, until it is mended, put away with Escape,
 * or the number is set in another way.
 */
export function NumberField(props: NumberFieldProps): JSX.Element {
  const { label, value, min, max, unit, length, refusal, onSet, onRest } = props
  const id = useId()
  const [kept, setDraft] = useState<Draft | null>(null)
  const draft = kept && (kept.left === null || kept.left === value) ? kept : null
  /** The number that a text stands for, if the bench can take it. What is shown is rounded: the end of a range may lie a hair outside. */
  const taken = (text: string): number | null => {
    const number = typed(text, unit, length)
    return number !== null && number >= min - 0.02 && number <= max + 0.02 ? number : null
  }
  /** Whether a text may become a number within the range when more is typed. */
  const begins = (text: string): boolean => {
    const number = typed(text, unit, length)
    return number === null ? /^[+\-−]?[.,]?$/.test(text.trim()) : number >= 0 && number < min
  }
  const fits = !draft || taken(draft.text) !== null || (draft.left === null && begins(draft.text))
  const leave = () => {
    const text = draft?.text ?? ''
    setDraft(text.trim() === '' || taken(text) !== null ? null : { text, left: value })
    onRest()
  }
  return (
    <span class="number-field">
      <input
        type="text"
        class="number-input"
        inputMode="decimal"
        autocomplete="off"
        aria-label={label}
        aria-invalid={!fits}
        aria-describedby={fits ? undefined : id}
        value={draft?.text ?? digits(value, unit, length)}
        onInput={(event) => {
          const text = event.currentTarget.value
          setDraft({ text, left: null })
          const wanted = taken(text)
          if (wanted !== null) onSet(wanted)
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave()
          if (event.key === 'Escape') setDraft(null)
        }}
        onBlur={leave}
      />
      <span class="unit" aria-hidden="true">
        {unitSign(unit, length)}
      </span>
      {fits ? null : (
        <span class="refusal" id={id} role="alert">
          {refusal}
        </span>
      )}
    </span>
  )
}
