import './fields.css'
import type { JSX } from 'preact'
import * as says from '../../../content/words/fields.ts'
import type { Bench } from '../model/bench-model.ts'
import { offeredBy } from '../model/offered.ts'
import { chooseUnit, lengthUnit, sizeInHand } from '../model/page.ts'
import type { BenchChoice, BenchField } from '../state/fields.ts'
import { refusal } from '../state/fields.ts'
import type { LengthUnit } from '../state/format.ts'
import { stepOf } from '../state/format.ts'
import { slid } from '../state/keys.ts'
import { stepped } from '../state/stepped.ts'
import { NumberField } from './NumberField.tsx'
import { RangeField } from './RangeField.tsx'
import { Tip } from './Tip.tsx'

interface RowProps {
  readonly bench: Bench
  readonly field: BenchField
  readonly length: LengthUnit
}

/** One size: its name, a slider, a number. */
export function FieldRow({ bench, field, length }: RowProps): JSX.Element {
  const { key, label, from, unit, min, max } = field
  const value = field.get(bench.state.value)
  const set = (wanted: number) => bench.step(key, (now) => field.set(now, wanted))
  const press = (way: 1 | -1) => {
    const step = stepOf(unit, length)
    bench.step(key, (now) => field.set(now, Math.min(max, Math.max(min, stepped(field.get(now), step, way)))))
    bench.rest()
  }
  return (
    <div
      class="field-row"
      onFocusCapture={() => {
        sizeInHand.value = key
        bench.choose(key.slice(0, key.indexOf('.')))
      }}
      onBlurCapture={() => {
        sizeInHand.value = null
      }}
    >
      <span class="field-name">
        <Tip label={label}>{field.help}</Tip>
        {from === undefined ? null : <span class="field-from">{from}</span>}
      </span>
      <RangeField
        {...{ label, value, min, max, unit, length }}
        onSet={set}
        onKey={(press) => bench.step(key, (now) => field.set(now, slid(press, field.get(now), min, max)))}
        onRest={bench.rest}
      />
      <span class="field-number">
        <button type="button" class="press" aria-label={says.less(label)} onClick={() => press(-1)}>
          −
        </button>
        <NumberField
          {...{ label, value, min, max, unit, length }}
          refusal={refusal(field, length)}
          onSet={set}
          onRest={bench.rest}
        />
        <button type="button" class="press" aria-label={says.more(label)} onClick={() => press(1)}>
          +
        </button>
      </span>
    </div>
  )
}

/** A few states to choose from, each a button that says whether it is the one. */
export function ChoiceRow({
  bench,
  choice,
}: {
  readonly bench: Bench
  readonly choice: BenchChoice
}): JSX.Element {
  const { key, label, help, options } = choice
  const value = choice.get(bench.state.value)
  const choose = (wanted: string | number) => {
    bench.step(key, (now) => choice.set(now, wanted))
    bench.rest()
  }
  return (
    <div class="field-row field-choice">
      <Tip label={label}>{help}</Tip>
      <fieldset class="unit-choice" aria-label={label}>
        {options.map((option) => (
          <button
            key={option.value}
            type="button"
            class="press"
            aria-pressed={option.value === value}
            onClick={() => choose(option.value)}
          >
            {option.says}
          </button>
        ))}
      </fieldset>
    </div>
  )
}

const units: readonly { readonly unit: LengthUnit; readonly label: string }[] = [
  { unit: 'mm', label: says.mm },
  { unit: 'in', label: says.inch },
]

/** Whether lengths are shown in mm or in inches, on every widget of the page. */
export function UnitChoice(): JSX.Element {
  const length = lengthUnit.value
  return (
    <fieldset class="unit-choice" aria-label={says.unitOfLength}>
      {units.map(({ unit, label }) => (
        <button
          key={unit}
          type="button"
          class="press"
          aria-pressed={unit === length}
          onClick={() => chooseUnit(unit)}
        >
          {label}
        </button>
      ))}
    </fieldset>
  )
}

interface FieldPanelProps {
  readonly bench: Bench
  /** How many of the rows are seen at once; the others are folded away. */
  readonly first: number
}

/** Every number that can be set, each as a slider and as a number: the way to work a bench without dragging. */
export function FieldPanel({ bench, first }: FieldPanelProps): JSX.Element {
  const length = lengthUnit.value
  const { fields, choices } = offeredBy(bench)
  const rows = [
    ...choices.map((choice) => <ChoiceRow key={choice.key} {...{ bench, choice }} />),
    ...fields.map((field) => <FieldRow key={field.key} {...{ bench, field, length }} />),
  ]
  const more = rows.slice(first)
  return (
    <fieldset class="fields" aria-label={says.sizes}>
      {rows.slice(0, first)}
      <details class="fields-more">
        <summary>{more.length > 0 ? says.allSizes : says.unitOfLength}</summary>
        <div class="fields-rest">
          {more}
          <UnitChoice />
        </div>
      </details>
    </fieldset>
  )
}
