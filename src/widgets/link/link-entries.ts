import type { Design, Field, Flat, Mechanism } from '../../paper/index.ts'
import { kindOf } from '../../paper/index.ts'
import type { BenchState } from '../state/state.ts'

/** A number in a link that belongs to the bench and not to a mechanism. */
export interface PlainEntry {
  readonly key: 'opening' | 'turn' | 'tilt' | 'section' | 'point.across' | 'point.along'
  readonly min: number
  readonly max: number
  readonly unit: 'mm' | 'deg'
  get(state: BenchState): number | null
  set(state: BenchState, value: number): BenchState
}

/** What a link may say beside the fields of mechanisms. */
export const plainEntries = ({ card: { width, height } }: Design): readonly PlainEntry[] => [
  {
    key: 'opening',
    min: 0,
    max: 180,
    unit: 'deg',
    get: (state) => state.opening,
    set: (state, opening) => ({ ...state, opening }),
  },
  {
    key: 'turn',
    min: -180,
    max: 180,
    unit: 'deg',
    get: (state) => state.camera.turn,
    set: (state, turn) => ({ ...state, camera: { ...state.camera, turn } }),
  },
  {
    key: 'tilt',
    min: 0,
    max: 90,
    unit: 'deg',
    get: (state) => state.camera.tilt,
    set: (state, tilt) => ({ ...state, camera: { ...state.camera, tilt } }),
  },
  {
    key: 'section',
    min: 0,
    max: height,
    unit: 'mm',
    get: (state) => state.station,
    set: (state, station) => ({ ...state, station }),
  },
  ...(['across', 'along'] as const).map(
    (which, index): PlainEntry => ({
      key: `point.${which}`,
      min: 0,
      max: index === 0 ? width : height,
      unit: 'mm',
      get: (state) => state.point?.[index] ?? null,
      set(state, value) {
        const point: Flat = [
          index === 0 ? value : (state.point?.[0] ?? 0),
          index === 1 ? value : (state.point?.[1] ?? 0),
        ]
        return { ...state, point }
      },
    }),
  ),
]

/** The fields of a mechanism that a link may set. */
export const owned = (m: Mechanism): readonly Field[] => kindOf(m).fields.filter((field) => !field.shorthand)

/**
 * The same field with the range that a card leaves it: no cut from the gutter goes past the card's edge, and
 * nothing on a card is longer than its two sides together.
 */
export function onCard(field: Field, m: Mechanism, { card: { width, height } }: Design): Field {
  if (field.unit !== 'mm') return field
  const across = m.on === 'gutter' && kindOf(m).handles.some((handle) => handle.across === field.name)
  const far = across ? width : width + height
  return { ...field, min: Math.max(field.min, -far), max: Math.min(field.max, far) }
}
