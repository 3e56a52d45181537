import type { JSX } from 'preact'
import type { LengthUnit, ValueUnit } from '../state/format.ts'
import { spoken } from '../state/format.ts'
import type { SliderKey } from '../state/keys.ts'
import { slid, sliderKey } from '../state/keys.ts'

interface RangeFieldProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  readonly unit: ValueUnit
  readonly length: LengthUnit
  readonly onSet: (value: number) => void
  /** A key; left out, it is worked out from the value shown. Keys may come faster than pictures. */
  readonly onKey?: (press: SliderKey) => void
  readonly onRest: () => void
}

/** A slider whose keys are those of every handle: arrows 1, shift 10, alt a tenth, home and end. */
export function RangeField(props: RangeFieldProps): JSX.Element {
  const { label, value, min, max, unit, length, onSet, onKey, onRest } = props
  const part = max > min ? ((value - min) / (max - min)) * 100 : 0
  return (
    <input
      type="range"
      class="range"
      aria-label={label}
      aria-valuetext={spoken(value, unit, length)}
      min={min}
      max={max}
      step="0.1"
      value={value}
      style={`--part:${part.toFixed(2)}%`}
      onInput={(event) => onSet(Number(event.currentTarget.value))}
      onKeyDown={(event) => {
        const press = sliderKey(event)
        if (!press) return
        event.preventDefault()
        if (onKey) onKey(press)
        else onSet(Math.min(max, Math.max(min, slid(press, value, min, max))))
      }}
      onPointerUp={onRest}
      onBlur={onRest}
    />
  )
}
