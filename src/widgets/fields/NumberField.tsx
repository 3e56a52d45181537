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

/**
 * A number typed by hand. It is taken when it can be; a number out of range leaves the bench alone, stays
 * in the field to be mended, and is told in a sentence.
 */
export function NumberField(props: NumberFieldProps): JSX.Element {
  const { label, value, min, max, unit, length, refusal, onSet, onRest } = props
  const id = useId()
  const [draft, setDraft] = useState<string | null>(null)
  const number = draft === null ? null : typed(draft, unit, length)
  // What is shown is rounded: the end of a range in inches may lie a hair outside.
  const fits = draft === null || (number !== null && number >= min - 0.02 && number <= max + 0.02)
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
        value={draft ?? digits(value, unit, length)}
        onInput={(event) => {
          const text = event.currentTarget.value
          setDraft(text)
          const wanted = typed(text, unit, length)
          if (wanted !== null && wanted >= min - 0.02 && wanted <= max + 0.02) onSet(wanted)
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter' || event.key === 'Escape') setDraft(null)
        }}
        onBlur={() => {
          setDraft(null)
          onRest()
        }}
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
