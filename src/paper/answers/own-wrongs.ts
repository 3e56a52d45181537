/** What is wrong with parts by themselves, measured: so that a search can go along what it must not pass. */
import { faults } from '../checks/check.ts'
import { mechanismsIn, roomOf } from '../checks/subject.ts'
import type { CheckName } from '../checks/verdict.ts'
import { settable, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import type { Bounds } from '../plane/descent.ts'

/** What keeps a tip from going on, and by how much it is overstepped, mm or degrees. */
export type Wrongs = ReadonlyMap<string, number>

/** What makes a part one that can be cut, folded and opened at all, whatever else is on the card. */
const OWN_CHECKS: readonly CheckName[] = [
  'inside-fold',
  'cuts-inside',
  'cuts-apart',
  'bridge',
  'narrow',
  'glue',
  'shuts-flat',
  'opens-flat',
]

/** Those that a step at a time most often runs into, and that are soon told. */
export const SOON_TOLD: readonly CheckName[] = ['inside-fold', 'cuts-inside', 'bridge', 'narrow']

/** More than this is overstepped, mm or degrees. */
export const OVER = 1e-6

/** What is wrong with some parts by themselves: their shape, and sizes that a hand may not set. */
export function wrongsOf(
  design: Design,
  ids: ReadonlySet<string>,
  ranges: Ranges,
  names: readonly CheckName[] = OWN_CHECKS,
): Wrongs {
  const wrongs = new Map<string, number>()
  const add = (key: string, by: number): void => {
    // What cannot be told is as wrong as can be.
    wrongs.set(key, Math.max(wrongs.get(key) ?? 0, Number.isNaN(by) ? Number.POSITIVE_INFINITY : by))
  }
  for (const m of design.mechanisms)
    if (ids.has(m.id))
      for (const field of settable(m)) {
        const { min, max } = rangeOf(m, field, ranges)
        const value = settingOf(m, field.name)
        if (!(value >= min && value <= max)) add(`${m.id}.${field.name}`, Math.max(min - value, value - max))
      }
  const effort = { left: Number.POSITIVE_INFINITY }
  for (const one of faults(design, { names, ids, effort })) {
    const [id = '', other] = mechanismsIn(one)
    // How it gets on with other parts is told by the checks: a tip may be taken past them.
    if (other === undefined && ids.has(id)) add(`${one.name} ${one.ids.join(' ')}`, -roomOf(one))
  }
  return wrongs
}

/** Whether anything is wrong that was not, or not so much. */
export const isWorse = (wrongs: Wrongs, before: Wrongs): boolean =>
  [...wrongs].some(([key, by]) => by > (before.get(key) ?? 0) + OVER)

/** The ranges that a hand may set numbers in, by `<id>.<field>`, where they are narrower than a file's. */
export type Ranges = Readonly<Record<string, Bounds>>

/** The range of one number of a mechanism. */
export function rangeOf(
  { id }: Mechanism,
  { name, min, max }: Bounds & { readonly name: string },
  ranges: Ranges,
): Bounds {
  const own = ranges[`${id}.${name}`]
  return own ? { min: Math.max(min, own.min), max: Math.min(max, own.max) } : { min, max }
}
