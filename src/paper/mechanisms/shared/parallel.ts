import type { Flat, Lay } from '../../plane/lay.ts'
import type { Fault, Field } from '../kind.ts'

/** What every kind shares whose parts run parallel to the host crease, from `start` to `end` along it. */
export interface Stretched {
  readonly start: number
  readonly end: number
}

/** The two fields, in mm. */
export const stretchFields: readonly Field[] = [
  { name: 'start', label: 'Start', unit: 'mm', min: 0, max: 2000, said: { as: 'place' } },
  { name: 'end', label: 'End', unit: 'mm', min: 0, max: 2000, said: { as: 'place' } },
]

export const endAfterStart = ({ start, end }: Stretched): Fault | null =>
  end >= start ? null : { field: 'end', sentence: `must not lie before the start, ${start}`, nearest: start }

/** A rectangle on a crease: its two corners on the crease, then the two `across` from it. */
export const rectangle = (across: number, from: number, to: number): readonly Flat[] => [
  [0, from],
  [0, to],
  [across, to],
  [across, from],
]

/** A lay that only shifts a crease sideways; `off` -1 where across runs back towards it. */
export const shifted = (across: number, along: number, off: 1 | -1): Lay => ({
  origin: [across, along],
  run: [0, 1],
  off: [off, 0],
})
