import { alongLay } from '../model/lines.ts'
import { common, overlapOf } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import type { Extent } from '../plane/near.ts'
import { areNear, extentOf } from '../plane/near.ts'
import { selfCrossing } from '../plane/outline.ts'
import { SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import { side, The, the } from './names.ts'
import { fold, mm } from './phrases.ts'
import type { Finding, Notch, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

/** How deep two notches of one panel overlap, mm, and the corners of what they share. */
function overlap(one: Notch, two: Notch): { value: number; shape: readonly Flat[] } {
  let worst = { value: 0, shape: [] as readonly Flat[] }
  for (const a of one.parts)
    for (const b of two.parts) {
      const value = overlapOf(a, b)
      if (value > worst.value) worst = { value, shape: common(a.points, b.points) }
    }
  return worst
}

/**
 * No two mechanisms cut into one another, and none into itself: how deep they overlap, mm. On one crease
 * that is the stretch they both take; elsewhere the shortest way that would part them. Two V-folds that
 * share a slit touch along it and do not overlap.
 */
export function cutsApart(subject: Subject): Finding[] {
  const { model, notches } = subject
  const found: Finding[] = []
  const base = { name: 'cuts-apart', unit: 'mm', limit: 0, sense: 'at-most' } as const
  const fails = (finding: Omit<Finding, keyof typeof base | 'ok'>): void => {
    found.push({ ...base, ok: false, ...finding })
  }
  // Pairs that overlap on their crease need no telling again; of several panels the worst is told.
  const met = new Set<string>()
  const pair = (i: number, j: number): string => `${Math.min(i, j)} ${Math.max(i, j)}`
  for (const crease of model.creases)
    crease.guests.forEach((i, k) => {
      for (const j of crease.guests.slice(k + 1)) {
        const [one, two] = [model.builds[i]?.build, model.builds[j]?.build]
        if (!one || !two || !subject.wants([i, j])) continue
        const from = Math.max(one.span[0], two.span[0])
        const value = Math.min(one.span[1], two.span[1]) - from
        if (!(value > SAME)) continue
        met.add(pair(i, j))
        const { panel, lay } = crease.right
        fails({
          value,
          ids: [idOf(subject, i), idOf(subject, j)],
          ...onPiece(subject, panel, [alongLay(lay, from), alongLay(lay, from + value)]),
          sentence: says.overlaps(The(idOf(subject, i)), the(idOf(subject, j)), mm(value), fold(crease.name)),
        })
      }
    })
  const boxes = notches.map(({ outline }) => extentOf(outline))
  notches.forEach((one, k) => {
    const panel = model.panels[one.panel]?.name ?? ''
    const own = subject.wants([one.owner]) ? selfCrossing(one.outline) : null
    if (own)
      fails({
        value: own.depth,
        ids: [idOf(subject, one.owner)],
        ...onPiece(subject, one.panel, [own.at]),
        sentence: says.crossesItself(the(idOf(subject, one.owner)), mm(own.depth)),
      })
    for (let other = k + 1; other < notches.length; other++) {
      const two = notches[other] as Notch
      if (two.panel !== one.panel || two.owner === one.owner) continue
      if (!areNear(boxes[k] as Extent, boxes[other] as Extent, 0) || !subject.wants([one.owner, two.owner]))
        continue
      const { value, shape } = overlap(one, two)
      if (!(value > SAME) || met.has(pair(one.owner, two.owner))) continue
      fails({
        value,
        ids: [idOf(subject, one.owner), idOf(subject, two.owner), panel],
        ...onPiece(subject, one.panel, shape),
        sentence: says.cutInto(
          The(idOf(subject, one.owner)),
          the(idOf(subject, two.owner)),
          mm(value),
          side(panel),
        ),
      })
    }
  })
  if (found.length > 0) return found
  return [{ ...base, ok: true, value: 0, ids: [], sentence: says.cutsApart }]
}
