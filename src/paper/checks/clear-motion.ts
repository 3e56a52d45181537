import { meetings } from '../clearance.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'
import { mm, side, the, when } from './words.ts'

/**
 * No two panels meet between 1 degree and flat. `ok` means proved. A mechanism whose cuts cannot be made
 * as drawn is left out, and then we say that we cannot tell.
 */
export function clearMotion(subject: Subject, spoilt: ReadonlySet<string>): Finding[] {
  const { model, motion } = subject
  const owner = (panel: number): number => model.panels[panel]?.owner ?? -1
  const base = { name: 'clear-motion', unit: 'mm', limit: 0, sense: 'at-most' } as const
  const found = meetings({
    motion,
    range: subject.range(),
    wants: (one, two) => {
      const owners = [owner(one), owner(two)]
      return subject.wants(owners) && !owners.some((index) => spoilt.has(idOf(subject, index)))
    },
    name: (one, two) => `${owner(one)} ${owner(two)}`,
  }).map(({ panels, verdict, opening, at, flat, depth }): Finding => {
    const names = panels.map((panel) => model.panels[panel]?.name ?? '') as [string, string]
    const ids = [...new Set(panels.map(owner))].flatMap((index) => (index < 0 ? [] : [idOf(subject, index)]))
    const [one, two] =
      ids.length === 2 ? (ids.map(the) as [string, string]) : (names.map(side) as [string, string])
    return {
      ...base,
      ok: false,
      verdict,
      value: depth,
      ids: [...ids, ...names],
      opening,
      space: at,
      ...onPiece(subject, panels[1], [flat]),
      sentence:
        verdict === 'touches'
          ? `T${one.slice(1)} and ${two} run into each other ${when(opening)}.`
          : `We cannot tell whether ${one} and ${two} pass clear ${when(opening)}: the gap is ${mm(depth)} or less.`,
    }
  })
  if (found.length > 0) return found
  const [first] = spoilt
  if (first !== undefined)
    return [
      {
        ...base,
        ok: false,
        verdict: 'undecided',
        waits: true,
        value: 0,
        ids: [...spoilt],
        sentence: `Whether all parts pass clear of each other can be told once ${the(first)} can be cut.`,
      },
    ]
  return [
    {
      ...base,
      ok: true,
      verdict: 'clear',
      value: 0,
      ids: [],
      sentence: 'All parts pass clear of each other, from flat to nearly shut.',
    },
  ]
}
