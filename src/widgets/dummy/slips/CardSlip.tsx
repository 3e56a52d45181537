import type { JSX } from 'preact'
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
  { name: 'A6, gutter upright', width: 105, height: 148 },
  { name: 'A6, gutter lying', width: 148, height: 105 },
  { name: 'A5, gutter upright', width: 148, height: 210 },
  { name: 'A5, gutter lying', width: 210, height: 148 },
  { name: 'A4, gutter upright', width: 210, height: 297 },
  { name: 'Half a Letter, gutter upright', width: 5.5 * INCH, height: 8.5 * INCH },
  { name: 'Quarter of a Letter, gutter upright', width: 4.25 * INCH, height: 5.5 * INCH },
  { name: 'Square, 140 mm', width: 140, height: 140 },
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
  const name = formatOf(card)?.name.split(',')[0]
  const pages = name === undefined ? 'Two pages' : `Two pages, each ${name}`
  const weight = WEIGHTS.find(({ caliper }) => close(caliper, card.caliper))?.weight
  const thick = weight === undefined ? `${mm(card.caliper)} mm thick` : `card of about ${weight} g`
  return `${pages}, ${mm(card.width)} × ${mm(card.height)} mm, ${thick}${card.cover ? ', with a cover' : ''}.`
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
        refusal={`${label} goes from ${mm(min)} to ${mm(max)} mm.`}
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
    <Slip dummy={dummy} title="The card">
      <label class="card-size">
        <span>Pages</span>
        <select
          value={format?.name ?? ''}
          onChange={({ currentTarget }) => {
            const wanted = FORMATS.find(({ name }) => name === currentTarget.value)
            if (wanted) set({ width: wanted.width, height: wanted.height })
          }}
        >
          {format ? null : <option value="">of my own</option>}
          {FORMATS.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <Size name="width" label="Gutter to edge" value={card.width} onSet={(width) => set({ width })} />
      <Size name="height" label="Along the gutter" value={card.height} onSet={(height) => set({ height })} />
      <label class="card-size">
        <span>Card</span>
        <select
          value={weight ? String(weight.weight) : ''}
          onChange={({ currentTarget }) => {
            const wanted = WEIGHTS.find((one) => String(one.weight) === currentTarget.value)
            if (wanted) set({ caliper: wanted.caliper })
          }}
        >
          {weight ? null : <option value="">of my own</option>}
          {WEIGHTS.map((one) => (
            <option key={one.weight} value={String(one.weight)}>
              about {one.weight} g/m²
            </option>
          ))}
        </select>
      </label>
      <Size name="caliper" label="Thickness" value={card.caliper} onSet={(caliper) => set({ caliper })} />
      <label class="card-check">
        <input
          type="checkbox"
          checked={card.cover ?? false}
          onChange={({ currentTarget }) => set({ cover: currentTarget.checked })}
        />
        <span>With a cover behind it, which closes the holes of cuts</span>
      </label>
    </Slip>
  )
}
