import { type Design, type Flat, likelyPointSlips, likelySlips, type Slip } from '../paper/index.ts'
import type { BenchConfig } from './config.ts'
import { type LengthUnit, shown, small } from './format.ts'
import { measured, readingValue } from './readings.ts'
import { type BenchState, leadOf, startState } from './state.ts'

/** A ruler's reading beside the model's. */
export interface Comparison {
  /** What the model says, mm. */
  readonly model: number
  /** The reading less the model, mm. */
  readonly off: number
  readonly slips: readonly Slip[]
}

/** Nearer than this nobody reads a ruler, mm. Common practice, no source. */
export const AS_GOOD_AS_RIGHT = 0.5

export interface Measured {
  /** The mechanism whose rise is read; the bench's lead if left out. */
  readonly id?: string | undefined
  /** Degrees. */
  readonly opening: number
}

/** The state as it is when the reader measures: at the opening stated. */
function measuring(design: Design, config: BenchConfig, point: Flat | null, opening: number): BenchState {
  return { ...startState(design, config), point, opening }
}

/** What the ruler should say, mm: the rise, or on a bare card the gap between the two points. */
export function modelSays(
  design: Design,
  config: BenchConfig,
  point: Flat | null,
  { id, opening }: Measured,
): number {
  const led = id === undefined ? config : { ...config, lead: id }
  const state = measuring(design, config, point, opening)
  return readingValue(point ? 'gape' : 'rise', state, measured(state, led))
}

/** A reading in mm beside the model, with the likeliest slips of the hand. */
export function compare(
  design: Design,
  config: BenchConfig,
  point: Flat | null,
  where: Measured,
  reading: number,
): Comparison {
  const model = modelSays(design, config, point, where)
  const off = reading - model
  const id = where.id ?? leadOf(design, config)?.id
  const near = Math.abs(off) < AS_GOOD_AS_RIGHT
  const slips = near
    ? []
    : point
      ? likelyPointSlips(point, where.opening, reading)
      : id === undefined
        ? []
        : likelySlips(design, id, where.opening, reading)
  return { model, off, slips }
}

const isLength = ({ unit }: Slip): boolean => unit === 'mm'

/** One slip as a clause: `the slit is 1.9 mm short`. `lead` is the mechanism that goes without its name. */
export function slipSays(slip: Slip, length: LengthUnit, lead?: string): string {
  const { id, field, label, unit, from, to, slip: off } = slip
  const much = shown(Math.abs(off), unit, length)
  if (id === 'card')
    return `the card was opened to ${shown(to, 'deg', length)}, not ${shown(from, 'deg', length)}`
  const owner = id === lead || id === 'point' ? '' : ` of the ${id.replaceAll('-', ' ')}`
  if (field === 'lean') return `the end of the slit${owner} is ${much} off along the fold`
  if (field === 'apex' || field === 'start' || field === 'end')
    return `the ${small(label)}${owner} is ${much} too far ${off > 0 ? 'from' : 'towards'} the start of the fold`
  const what = field === 'run' ? 'way from the apex to the slit' : small(label)
  return isLength(slip)
    ? `the ${what}${owner} is ${much} ${off < 0 ? 'short' : 'long'}`
    : `the ${what}${owner} is ${much} too ${off < 0 ? 'small' : 'large'}`
}

/** The comparison in sentences. */
export function comparisonSays(
  { off, slips }: Comparison,
  length: LengthUnit,
  lead?: string,
): readonly string[] {
  if (Math.abs(off) < AS_GOOD_AS_RIGHT) return ['That is right, to the width of a pencil line. Well made.']
  const much = `You are ${shown(Math.abs(off), 'mm', length)} ${off < 0 ? 'low' : 'high'}.`
  const [first, second, third] = slips
  if (!first) return [much, 'No single small slip explains that. Measure once more, and check the opening.']
  const others = [second, third].flatMap((slip) => (slip ? [slipSays(slip, length, lead)] : []))
  return [
    much,
    `The likeliest slip: ${slipSays(first, length, lead)}.`,
    ...(others.length > 0 ? [`It could also be that ${others.join(', or ')}.`] : []),
  ]
}
