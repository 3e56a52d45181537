import { kindOf, settingOf } from '../../paper/index.ts'
import { chosen } from '../state/fields.ts'
import type { BenchState } from '../state/state.ts'
import { kept } from '../state/state.ts'
import { owned, plainEntries } from './link-entries.ts'

/** What differs from the page's own state, as `beak.cut=38&opening=96`; empty if nothing does. */
export function linkOf(state: BenchState, start: BenchState): string {
  const parts = state.design.mechanisms.flatMap((m) => {
    const before = start.design.mechanisms.find(({ id }) => id === m.id)
    const words = (kindOf(m).choices ?? []).flatMap((choice) =>
      before && chosen(before, choice) !== chosen(m, choice)
        ? [`${m.id}.${choice.name}=${chosen(m, choice)}`]
        : [],
    )
    const numbers = owned(m).flatMap(({ name }) => {
      const value = kept(settingOf(m, name))
      return before && kept(settingOf(before, name)) === value ? [] : [`${m.id}.${name}=${value}`]
    })
    return [...words, ...numbers]
  })
  for (const { key, get } of plainEntries(state.design)) {
    const value = get(state)
    if (value !== null && value !== get(start)) parts.push(`${key}=${kept(value)}`)
  }
  return parts.join('&')
}

/** Whether the part of an address behind `#` speaks of a bench at all, or names a place of the page. */
export const isLink = (text: string): boolean => text.includes('=')
