import './readings.css'
import type { JSX } from 'preact'
import * as says from '../../../content/words/bench.ts'
import { Tip } from '../fields/Tip.tsx'
import { Mark } from '../guess/Cover.tsx'
import type { Bench } from '../model/bench-model.ts'
import { movedOn } from '../model/moved.ts'
import { lengthUnit } from '../model/page.ts'
import type { LengthUnit } from '../state/format.ts'
import { digits, unitSign } from '../state/format.ts'
import type { Said } from '../state/reading-help.ts'
import type { Reading } from '../state/readings.ts'

/** Read, never typed: with a true minus sign, as everywhere in print. */
const printed = (...of: Parameters<typeof digits>): string => digits(...of).replace('-', '−')

/** A change too small for the digits shown. */
const SEEN = 0.05

/** What the strip says of one reading, in front of the number. */
const lead = ({ name, value, unit }: Reading, length: LengthUnit, failing: readonly string[]): string => {
  if (name !== 'margin') return ''
  if (Number(digits(value, unit, length)) === 0) return value < 0 ? says.justSticksOut : says.justInside
  if (value < 0) return says.sticksOutBy
  return failing.includes('shuts-flat') ? says.wouldBeInsideBy : says.insideBy
}

interface CellProps {
  readonly reading: Reading
  readonly help: string | undefined
  readonly length: LengthUnit
  /** The checks that say no: then nothing is praised beside them. */
  readonly failing: readonly string[]
  /** It answers the chapter's guess. */
  readonly answers: boolean
  /** What was read before a phrase of the prose moved the card. */
  readonly was: number | undefined
}

function Cell({ reading, help, length, failing, answers, was }: CellProps): JSX.Element {
  const { name, label, value, unit } = reading
  const state = name !== 'margin' ? undefined : value < 0 ? 'fault' : failing[0] ? undefined : 'good'
  return (
    <div class="reading-cell" data-reading={name} data-state={state}>
      <dt>
        <Tip label={label}>{help}</Tip>
      </dt>
      <dd>
        {answers ? <Mark /> : null}
        <span data-answers={answers}>
          {lead(reading, length, failing)}
          <span class="reading-value">
            <span class="reading-number">
              {printed(name === 'margin' ? Math.abs(value) : value, unit, length)}
            </span>
            <span class="unit">{unitSign(unit, length)}</span>
          </span>
          {was !== undefined && Math.abs(was - value) >= SEEN ? (
            <span class="was">{`${says.wasBefore} ${printed(was, unit, length)}`}</span>
          ) : null}
        </span>
      </dd>
    </div>
  )
}

interface StripProps {
  readonly bench: Bench
  readonly slug: string
}

/** The strip of numbers under the figures; the first one is red, like its dimension in the picture. */
export function ReadingStrip({
  bench,
  slug,
  helps,
}: StripProps & { readonly helps: Partial<Record<Said, string>> }): JSX.Element {
  const length = lengthUnit.value
  const was = movedOn(slug).value?.was ?? {}
  const failing = (bench.checks.value ?? []).flatMap(({ ok, name }) => (ok ? [] : [name]))
  return (
    <dl class="readings">
      {bench.readings.value.map((reading) => (
        <Cell
          key={reading.name}
          {...{ reading, length, failing }}
          help={helps[reading.behind ? 'behind' : reading.name]}
          answers={bench.config.covers?.includes(reading.name) ?? false}
          was={was[reading.name]}
        />
      ))}
    </dl>
  )
}

/** The first reading once more, where it must stay in sight while the page scrolls. */
export function LeadReading({ bench, slug }: StripProps): JSX.Element | null {
  const [reading] = bench.readings.value
  const length = lengthUnit.value
  if (!reading) return null
  const { name, label, value, unit } = reading
  const answers = bench.config.covers?.includes(name) ?? false
  const was = movedOn(slug).value?.was[name]
  return (
    <p class="lead-reading" aria-hidden="true">
      <span>{label}</span>
      {answers ? <Mark /> : null}
      <span class="lead-number" data-answers={answers}>
        <span class="reading-number">{printed(value, unit, length)}</span>
        <span class="unit">{unitSign(unit, length)}</span>
        {was !== undefined && Math.abs(was - value) >= SEEN ? (
          <span class="was">{`${says.wasBefore} ${printed(was, unit, length)}`}</span>
        ) : null}
      </span>
    </p>
  )
}
