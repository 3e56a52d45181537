import './readings.css'
import type { JSX } from 'preact'
import { Tip } from '../fields/Tip.tsx'
import type { Bench } from '../model/bench-model.ts'
import { lengthUnit } from '../model/page.ts'
import type { LengthUnit } from '../state/format.ts'
import { digits, unitSign } from '../state/format.ts'
import type { Reading } from '../state/readings.ts'

/** Read, never typed: with a true minus sign, as everywhere in print. */
const printed = (...of: Parameters<typeof digits>): string => digits(...of).replace('-', '−')

/** What the strip says of one reading, in front of the number. */
const lead = ({ name, value, unit }: Reading, length: LengthUnit): string => {
  if (name !== 'margin') return ''
  if (Number(digits(value, unit, length)) === 0) return value < 0 ? 'just sticks out, ' : 'just inside, '
  return value < 0 ? 'sticks out by ' : 'inside by '
}

interface CellProps {
  readonly reading: Reading
  readonly length: LengthUnit
  /** Whether a check says no: then nothing is praised beside it. */
  readonly faulty: boolean
}

function Cell({ reading, length, faulty }: CellProps): JSX.Element {
  const { name, label, value, unit, help } = reading
  const state = name !== 'margin' ? undefined : value < 0 ? 'fault' : faulty ? undefined : 'good'
  return (
    <div class="reading-cell" data-reading={name} data-state={state}>
      <dt>
        <Tip label={label}>{help}</Tip>
      </dt>
      <dd>
        {lead(reading, length)}
        <span class="reading-value">
          <span class="reading-number">
            {printed(name === 'margin' ? Math.abs(value) : value, unit, length)}
          </span>
          <span class="unit">{unitSign(unit, length)}</span>
        </span>
      </dd>
    </div>
  )
}

/** The strip of numbers under the figures; the first one is red, like its dimension in the picture. */
export function ReadingStrip({ bench }: { readonly bench: Bench }): JSX.Element {
  const length = lengthUnit.value
  const faulty = bench.checks.value?.some(({ ok }) => !ok) ?? false
  return (
    <dl class="readings">
      {bench.readings.value.map((reading) => (
        <Cell key={reading.name} {...{ reading, length, faulty }} />
      ))}
    </dl>
  )
}

/** The first reading once more, where it must stay in sight while the page scrolls. */
export function LeadReading({ bench }: { readonly bench: Bench }): JSX.Element | null {
  const [reading] = bench.readings.value
  const length = lengthUnit.value
  if (!reading) return null
  const { label, value, unit } = reading
  return (
    <p class="lead-reading" aria-hidden="true">
      <span>{label}</span>
      <span class="reading-number">{printed(value, unit, length)}</span>
      <span class="unit">{unitSign(unit, length)}</span>
    </p>
  )
}
