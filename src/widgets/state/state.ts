import type { Design, Flat, Mechanism } from '../../paper/index.ts'
import type { BenchConfig, CameraChoice } from './config.ts'
import { DEFAULT_CAMERA, DEFAULT_OPENING } from './config.ts'

/**
 * What a maker sets of a card on the own table alone: parts out of sight, parts that nothing may change, sizes that a
 * mend leaves. It is kept beside the design, and the design file knows nothing of it.
 */
export interface Aside {
  /** Ids of mechanisms that no picture shows; what sits on them is not shown either. */
  readonly hidden: readonly string[]
  /** Ids of mechanisms that nothing changes. */
  readonly locked: readonly string[]
  /** Sizes that a mend leaves, `<id>.<field>`. */
  readonly kept: readonly string[]
}

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
  /** What is hidden, locked and kept on the maker's own table; a chapter's bench has none. */
  readonly aside?: Aside | undefined
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

/** The state at another opening, in degrees, to a tenth. The bench brings it into the card's range, and says so. */
export const opened = (state: BenchState, opening: number): BenchState => ({
  ...state,
  opening: Math.round(within(opening, 0, 180) * 10) / 10,
})

/** The state seen from elsewhere. The turn goes round, the tilt stops at the table and overhead. */
export const seenFrom = (state: BenchState, { turn, tilt }: CameraChoice): BenchState => ({
  ...state,
  camera: { turn: kept(((((turn + 180) % 360) + 360) % 360) - 180), tilt: kept(within(tilt, 0, 90)) },
})

/** The section cut elsewhere, mm along the gutter; null: through the tip. */
export const cutAt = (state: BenchState, station: number | null): BenchState => ({
  ...state,
  station: station === null ? null : kept(within(Math.round(station * 10) / 10, 0, state.design.card.height)),
})
