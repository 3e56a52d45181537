import type { JSX } from 'preact'
import * as says from '../../../../content/words/dummy/card.ts'
import type { Card, Design } from '../../../paper/index.ts'
import { cardFields } from '../../../paper/index.ts'
import { NumberField } from '../../fields/NumberField.tsx'
import { setCard } from '../../keeping/edits.ts'
import { lengthUnit } from '../../model/page.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { take } from '../PartActions.tsx'
import { Slip } from './Slip.tsx'

interface Format {
  readonly name: string
  readonly width: number
  readonly height: number
}

const INCH = 25.4

/** One page, gutter to edge by gutter's length, mm. ISO 216; Letter by ANSI/ASME Y14.1, halved. */
export const FORMATS: readonly Format[] = [
  { name: says.a6Upright, width: 105, height: 148 },
  { name: says.a6Lying, width: 148, height: 105 },
  { name: says.a5Upright, width: 148, height: 210 },
  { name: says.a5Lying, width: 210, height: 148 },
  { name: says.a4Upright, width: 210, height: 297 },
  { name: says.halfLetter, width: 5.5 * INCH, height: 8.5 * INCH },
  { name: says.quarterLetter, width: 4.25 * INCH, height: 5.5 * INCH },
  { name: says.square, width: 140, height: 140 },
]

/**
 * Usual card by its weight, g/m², and thickness, mm: a rule of thumb for uncoated card, about 1.25 times the weight in
 * thousandths of a millimetre. Common practice, no source; a caliper tells more.
 */
export const WEIGHTS: readonly { readonly weight: number; readonly caliper: number }[] = [
  { weight: 120, caliper: 0.15 },
  { weight: 160, caliper: 0.2 },
  { weight: 200, caliper: 0.25 },
  { weight: 250, caliper: 0.31 },
  { weight: 300, caliper: 0.38 },
]

const close = (a: number, b: number): boolean => Math.abs(a - b) < 0.01

const formatOf = ({ width, height }: Card): Format | undefined =>
  FORMATS.find((one) => close(one.width, width) && close(one.height, height))

const mm = (value: number): string => String(Math.round(value * 10) / 10)

/** The card in a sentence: `Two A6 pages, 105 × 148 mm, card of about 200 g.` */
export function cardSays({ card }: Design): string {
  const weight = WEIGHTS.find(({ caliper }) => close(caliper, card.caliper))?.weight
  const thick = weight === undefined ? { caliper: mm(card.caliper) } : { weight }
  return says.cardIs(formatOf(card)?.name, mm(card.width), mm(card.height), thick, card.cover ?? false)
}

interface SizeProps {
  readonly name: 'width' | 'height' | 'caliper'
  readonly label: string
  readonly value: number
  readonly onSet: (value: number) => void
}

function Size({ name, label, value, onSet }: SizeProps): JSX.Element {
  const { min, max } = cardFields.find((field) => field.name === name) ?? { min: 0, max: 1000 }
  return (
    <div class="card-size">
      <span>{label}</span>
      <NumberField
        {...{ label, value, min, max, onSet }}
        unit="mm"
        length={lengthUnit.value}
        refusal={says.goesFrom(label, mm(min), mm(max))}
        onRest={() => {}}
      />
    </div>
  )
}

/** The card itself: its pages, which way the gutter runs, its thickness and its cover. */
export function CardSlip({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const design = dummy.bench.design.value
  const { card } = design
  const set = (part: Partial<Card>) => take(dummy, setCard(dummy.bench.design.peek(), part))
  const format = formatOf(card)
  const weight = WEIGHTS.find(({ caliper }) => close(caliper, card.caliper))
  return (
    <Slip dummy={dummy} title={says.title}>
      <label class="card-size">
        <span>{says.pages}</span>
        <select
          value={format?.name ?? ''}
          onChange={({ currentTarget }) => {
            const wanted = FORMATS.find(({ name }) => name === currentTarget.value)
            if (wanted) set({ width: wanted.width, height: wanted.height })
          }}
        >
          {format ? null : <option value="">{says.ofMyOwn}</option>}
          {FORMATS.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <Size name="width" label={says.width} value={card.width} onSet={(width) => set({ width })} />
      <Size name="height" label={says.height} value={card.height} onSet={(height) => set({ height })} />
      <label class="card-size">
        <span>{says.card}</span>
        <select
          value={weight ? String(weight.weight) : ''}
          onChange={({ currentTarget }) => {
            const wanted = WEIGHTS.find((one) => String(one.weight) === currentTarget.value)
            if (wanted) set({ caliper: wanted.caliper })
          }}
        >
          {weight ? null : <option value="">{says.ofMyOwn}</option>}
          {WEIGHTS.map((one) => (
            <option key={one.weight} value={String(one.weight)}>
              {says.aboutWeight(one.weight)}
            </option>
          ))}
        </select>
      </label>
      <Size
        name="caliper"
        label={says.thickness}
        value={card.caliper}
        onSet={(caliper) => set({ caliper })}
      />
      <label class="card-check">
        <input
          type="checkbox"
          checked={card.cover ?? false}
          onChange={({ currentTarget }) => set({ cover: currentTarget.checked })}
        />
        <span>{says.cover}</span>
      </label>
    </Slip>
  )
}
