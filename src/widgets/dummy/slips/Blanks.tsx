import type { JSX } from 'preact'
import * as says from '../../../../content/words/dummy/slips.ts'
import { NumberField } from '../../fields/NumberField.tsx'
import { lengthUnit } from '../../model/page.ts'
import type { ValueUnit } from '../../state/format.ts'
import { shown } from '../../state/format.ts'

interface BlankProps {
  readonly label: string
  readonly value: number
  readonly unit: ValueUnit
  readonly min: number
  readonly max: number
  readonly onSet: (value: number) => void
}

/** A number in a sentence. */
export function Blank({ label, value, unit, min, max, onSet }: BlankProps): JSX.Element {
  const length = lengthUnit.value
  return (
    <span class="blank">
      <NumberField
        {...{ label, value, unit, min, max, length, onSet }}
        refusal={says.goesFrom(label, shown(min, unit, length), shown(max, unit, length))}
        onRest={() => {}}
      />
    </span>
  )
}

interface PickProps {
  readonly label: string
  readonly value: string
  readonly of: readonly { readonly value: string; readonly says: string }[]
  readonly onPick: (value: string) => void
}

/** A choice in a sentence. */
export const Pick = ({ label, value, of, onPick }: PickProps): JSX.Element => (
  <select
    class="blank"
    aria-label={label}
    value={value}
    onChange={({ currentTarget }) => onPick(currentTarget.value)}
  >
    {of.map((one) => (
      <option key={one.value} value={one.value}>
        {one.says}
      </option>
    ))}
  </select>
)
