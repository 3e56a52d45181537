import * as says from '../../../content/words/bench.ts'
import type { Design, Measure, Mechanism } from '../../paper/index.ts'
import { highest, measure, opensTo, pagePoint, settable, settingOf } from '../../paper/index.ts'
import type { BenchConfig, ReadingName } from './config.ts'
import type { ValueUnit } from './format.ts'
import type { BenchState } from './state.ts'
import { leadOf } from './state.ts'

/** One number of the strip. */
export interface Reading {
  readonly name: ReadingName
  readonly label: string
  readonly value: number
  readonly unit: ValueUnit
  /** It is a rise below nothing, said as a number above it. */
  readonly behind?: true
}

/** Everything measured of one state, once. */
export interface Measured {
  readonly measure: Measure
  readonly lead: Mechanism | undefined
}

export const measured = (state: BenchState, config: BenchConfig): Measured => ({
  measure: measure(state.design, state.opening),
  lead: leadOf(state.design, config),
})

export interface Words {
  readonly label: string
  readonly unit: ValueUnit
}

const words: Readonly<Record<ReadingName, Words>> = {
  rise: { label: says.rise, unit: 'mm' },
  reach: { label: says.reach, unit: 'mm' },
  'stand-off': { label: says.standOff, unit: 'mm' },
  gape: { label: says.gape, unit: 'mm' },
  wedge: { label: says.wedge, unit: 'deg' },
  slit: { label: says.slit, unit: 'mm' },
  lean: { label: says.lean, unit: 'mm' },
  depth: { label: says.depth, unit: 'mm' },
  margin: { label: says.shutCard, unit: 'mm' },
  opening: { label: says.opening, unit: 'deg' },
  highest: { label: says.highestAt, unit: 'deg' },
  stop: { label: says.opensTo, unit: 'deg' },
}

/** What they are called of the point of a bare card. */
const pointLabels: Partial<Record<ReadingName, string>> = { gape: says.gap, 'stand-off': says.pointToGutter }

/** Label and unit of a reading. */
export function readingWords(name: ReadingName, { point }: Pick<BenchState, 'point'>): Words {
  const label = point && pointLabels[name]
  return label ? { ...words[name], label } : words[name]
}

const hasNumber = (m: Mechanism, name: string): boolean => settable(m).some((field) => field.name === name)

const numberOf = (m: Mechanism | undefined, name: string): number =>
  m && hasNumber(m, name) ? settingOf(m, name) : Number.NaN

/** What suits the lead when the chapter does not choose. */
export function readingNames(design: Design, config: BenchConfig): readonly ReadingName[] {
  if (config.readings) return config.readings
  if (config.point) return ['gape', 'stand-off', 'reach']
  const lead = leadOf(design, config)
  if (!lead) return ['opening']
  const gapes = measure(design, 180).gapes.some(({ between }) => between.includes(lead.id))
  const names: ReadingName[] = ['rise', 'reach']
  if (gapes) names.push('gape')
  if (hasNumber(lead, 'wedge')) names.push('wedge')
  if (hasNumber(lead, 'depth')) names.push('depth')
  return [...names, 'margin']
}

/** The value of one reading, mm or degrees; NaN where the design has no such number. */
export function readingValue(
  name: ReadingName,
  state: BenchState,
  { measure: { tips, gapes, margin }, lead }: Measured,
): number {
  const tip = lead && tips[lead.id]
  const point = state.point && pagePoint(state.point, state.opening)
  switch (name) {
    case 'rise':
      return tip?.rise ?? Number.NaN
    case 'reach':
      return tip?.reach ?? point?.reach ?? Number.NaN
    case 'stand-off':
      return tip?.standOff ?? point?.standOff ?? Number.NaN
    case 'gape':
      return gapes.find(({ between }) => lead && between.includes(lead.id))?.gape ?? point?.gape ?? Number.NaN
    case 'slit':
      return numberOf(lead, 'cut')
    case 'wedge':
    case 'lean':
    case 'depth':
      return numberOf(lead, name)
    case 'margin':
      return margin
    case 'opening':
      return state.opening
    case 'highest':
      return lead ? highest(state.design, lead.id).opening : Number.NaN
    case 'stop':
      return lead ? opensTo(state.design, lead.id) : Number.NaN
  }
}

/** Nearer than this to its page a tip is on it, mm. */
const ON_PAGE = 0.05

/** No ruler reads less than nothing: a tip that lies behind its page is said to. */
const behind = (rise: Reading): Reading => ({
  ...rise,
  label: says.behindPage,
  value: -rise.value,
  behind: true,
})

/** The strip of readings, in order. Those that the design does not have are left out. */
export function readingsOf(
  state: BenchState,
  names: readonly ReadingName[],
  all: Measured,
): readonly Reading[] {
  return names
    .map((name) => ({
      name,
      ...readingWords(name, state),
      value: readingValue(name, state, all),
    }))
    .map((one) => (one.name === 'rise' && one.value < -ON_PAGE ? behind(one) : one))
    .filter(({ value }) => Number.isFinite(value))
}
