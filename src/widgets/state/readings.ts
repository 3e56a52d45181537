import type { Design, Measure, Mechanism } from '../../paper/index.ts'
import { highest, measure, opensTo, pagePoint, settable, settingOf, topOf } from '../../paper/index.ts'
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
  /** What it means, in a sentence or two. */
  readonly help: string
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
  readonly help: string
}

const words: Readonly<Record<ReadingName, Words>> = {
  rise: {
    label: 'Rise',
    unit: 'mm',
    help: 'How far the tip stands from the page below it. Stand a ruler on the page, square to it, and read the tip.',
  },
  reach: {
    label: 'Reach',
    unit: 'mm',
    help: 'How far along the gutter the tip has come, measured from the reader’s end of the card.',
  },
  'stand-off': { label: 'Stand-off', unit: 'mm', help: 'How far the tip is from the gutter itself.' },
  gape: { label: 'Gape', unit: 'mm', help: 'How far the two tips are from each other.' },
  wedge: { label: 'Wedge', unit: 'deg', help: 'The angle at the apex between the gutter and a fold.' },
  slit: { label: 'Slit', unit: 'mm', help: 'How deep the slit goes from the fold, on each page.' },
  lean: { label: 'Lean', unit: 'mm', help: 'How far the end of the slit is shifted along the gutter.' },
  depth: { label: 'Depth', unit: 'mm', help: 'How deep the cuts go from the fold.' },
  margin: {
    label: 'Shut card',
    unit: 'mm',
    help: 'With the card shut: the least distance from the pop-up to the card’s edge. If it sticks out, the card cannot hide it.',
  },
  opening: {
    label: 'Opening',
    unit: 'deg',
    help: 'The angle between the two pages: 0 is shut, 180 is flat.',
  },
  highest: {
    label: 'Highest at',
    unit: 'deg',
    help: 'The opening at which the tip stands highest over its page.',
  },
  stop: {
    label: 'Opens to',
    unit: 'deg',
    help: 'How far the card opens before this piece is pulled tight. 180° is flat.',
  },
}

const pointWords: Partial<Record<ReadingName, Partial<Words>>> = {
  gape: {
    label: 'Gap',
    help: 'How far the point is from its twin on the other page, straight through the air.',
  },
  'stand-off': {
    label: 'To the gutter',
    help: 'How far the point is from the gutter. Watch it: it never changes as the card opens.',
  },
  reach: { help: 'How far along the gutter the point lies. Opening the card never changes it.' },
}

/** Label, unit and meaning of a reading; of a lead that has a ridge to hold a ruler to, and no tip, it says so. */
export function readingWords(name: ReadingName, state: BenchState, lead?: Mechanism): Words {
  const own = { ...words[name], ...(state.point ? pointWords[name] : {}) }
  return lead ? { ...own, help: own.help.replaceAll(/\btip\b/g, topOf(lead)) } : own
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
  label: 'Behind the page',
  value: -rise.value,
  help: 'How far the tip lies behind its page, where no ruler reaches it from the inside of the card.',
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
      ...readingWords(name, state, all.lead),
      value: readingValue(name, state, all),
    }))
    .map((one) => (one.name === 'rise' && one.value < -ON_PAGE ? behind(one) : one))
    .filter(({ value }) => Number.isFinite(value))
}
