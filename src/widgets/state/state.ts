import type { Design, Flat, Mechanism } from '../../paper/index.ts'
import type { BenchConfig, CameraChoice } from './config.ts'
import { DEFAULT_CAMERA, DEFAULT_OPENING } from './config.ts'

/** All that a reader can change on a bench. Never changed in place: a change makes a new one. */
export interface BenchState {
  readonly design: Design
  /** Degrees, 0 to 180. */
  readonly opening: number
  /** The point of the right page, mm; null if the bench has none. */
  readonly point: Flat | null
  readonly camera: CameraChoice
  /** Where the section is cut, mm along the gutter; null: through the tip. */
  readonly station: number | null
}

/** The state in which the page shows the bench before anyone touches it. */
export function startState(design: Design, config: BenchConfig): BenchState {
  return {
    design,
    opening: config.opening ?? DEFAULT_OPENING,
    point: config.point ?? null,
    camera: config.camera ?? DEFAULT_CAMERA,
    station: null,
  }
}

/** The mechanism whose rise is read; undefined on a bare card. */
export function leadOf(design: Design, config: BenchConfig): Mechanism | undefined {
  return config.lead === undefined
    ? design.mechanisms[0]
    : design.mechanisms.find((m) => m.id === config.lead)
}

/** To a thousandth: what a link carries, so that a link gives the very same state. */
export const kept = (value: number): number => Math.round(value * 1000) / 1000 + 0

export const within = (value: number, min: number, max: number): number => Math.min(max, Math.max(min, value))
