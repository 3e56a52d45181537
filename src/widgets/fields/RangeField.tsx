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
  /** What of the slider can be set; the rest is hatched. All of it if left out. */
  readonly reach?: readonly [least: number, most: number]
  /** The id of what says more about it. */
  readonly describedBy?: string
  readonly onSet: (value: number) => void
  /** A key; left out, it is worked out from the value shown. Keys may come faster than pictures. */
  readonly onKey?: (press: SliderKey) => void
  readonly onRest: () => void
}

/** A slider whose keys are those of every handle: arrows 1, shift 10, alt a tenth, home and end. */
export function RangeField(props: RangeFieldProps): JSX.Element {
  const { label, value, min, max, unit, length, reach, describedBy, onSet, onKey, onRest } = props
  const share = (at: number): string => `${(max > min ? ((at - min) / (max - min)) * 100 : 0).toFixed(2)}%`
  const ends = reach ? `;--least:${share(reach[0])};--most:${share(reach[1])}` : ''
  return (
    <input
      type="range"
      class={reach ? 'range stops' : 'range'}
      aria-label={label}
      aria-describedby={describedBy}
      aria-valuetext={spoken(value, unit, length)}
      min={min}
      max={max}
      step="0.1"
      value={value}
      style={`--part:${share(value)}${ends}`}
      onInput={(event) => {
        const field = event.currentTarget
        const wanted = Number(field.value)
        // The thumb goes no further than the card does.
        if (reach) field.value = String(Math.min(reach[1], Math.max(reach[0], wanted)))
        onSet(wanted)
      }}
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
