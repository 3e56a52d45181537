import type { ModelPanel } from '../model.ts'
import type { CheckName, Vec3 } from '../types.ts'
import { distance, laid } from '../vector.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf } from './subject.ts'
import { mm, The } from './words.ts'

/** What a rigid model may be off its plane, mm: rounding is a millionth of it, a careful hand a hundred times as much. */
const FLAT = 1e-3

/** How far a corner of a panel is from where it should lie, mm. */
type Off = (point: Vec3, panel: ModelPanel, corner: number) => number

/** For every mechanism, the corner that is farthest off at one opening. */
function farthest(subject: Subject, opening: number, off: Off) {
  const pose = subject.poser(opening)
  const worst = new Map<number, { value: number; space: Vec3; panel: string }>()
  for (const panel of subject.model.panels) {
    if (!subject.wants([panel.owner])) continue
    pose.panels[panel.name]?.forEach((point, corner) => {
      const value = off(point, panel, corner)
      if (!(value <= (worst.get(panel.owner)?.value ?? -1)))
        worst.set(panel.owner, { value, space: [...point], panel: panel.name })
    })
  }
  return worst
}

interface Words {
  readonly holds: string
  fails(id: string, off: string): string
}

const lying = (subject: Subject, name: CheckName, opening: number, off: Off, words: Words): Finding[] =>
  [...farthest(subject, opening, off)].map(([owner, { value, space, panel }]): Finding => {
    const ok = value <= FLAT
    const id = idOf(subject, owner)
    return {
      name,
      ok,
      value,
      unit: 'mm',
      limit: FLAT,
      sense: 'at-most',
      ids: owner < 0 ? [panel] : [id, panel],
      opening,
      space,
      sentence: ok ? words.holds : words.fails(The(id), mm(value)),
    }
  })

/** Shut, every point lies in the plane between the two pages, x = 0: the largest distance from it, mm. */
export const shutsFlat = (subject: Subject): Finding[] =>
  lying(subject, 'shuts-flat', 0, ([x]) => Math.abs(x), {
    holds: 'The card shuts flat.',
    fails: (id, off) => `${id} does not shut flat: it still stands ${off} off the page.`,
  })

/**
 * Open, every point lies on the table, z = 0, and what was cut from the card is back in its own hole: the
 * largest distance from there, mm.
 */
export function opensFlat(subject: Subject): Finding[] {
  const cut = new Set(subject.notches.map(({ owner }) => owner))
  const off: Off = (point, { owner, outline, sheet }, corner) => {
    const flat = outline[corner]
    if (!flat || !cut.has(owner)) return Math.abs(point[2])
    const [x, y] = laid(sheet, flat)
    return distance(point, [x, y, 0])
  }
  return lying(subject, 'opens-flat', 180, off, {
    holds: 'The card opens flat.',
    fails: (id, by) => `${id} does not open flat: it stays ${by} away from where it should lie.`,
  })
}
