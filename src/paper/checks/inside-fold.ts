import { alongLay } from '../model/lines.ts'
import { SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import { The, the } from './names.ts'
import { fold, mm } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

/** A guest's stretch of its host crease lies on that crease: how far it reaches past an end, mm. */
export function insideFold(subject: Subject): Finding[] {
  const { model } = subject
  return model.builds.flatMap(({ build, host, mechanism }, owner): Finding[] => {
    const crease = model.creases[host]
    if (!crease || !subject.wants([owner, crease.owner]) || !crease.guests.includes(owner)) return []
    const [from, to] = build.span
    const over = Math.max(-from, to - crease.length)
    const ok = over <= SAME
    const { panel, lay } = crease.right
    const at = -from > to - crease.length ? from : to
    return [
      {
        name: 'inside-fold',
        ok,
        value: over,
        unit: 'mm',
        limit: 0,
        sense: 'at-most',
        ids: [mechanism.id, ...(crease.owner < 0 ? [] : [idOf(subject, crease.owner)])],
        ...onPiece(subject, panel, [
          alongLay(lay, Math.min(crease.length, Math.max(0, at))),
          alongLay(lay, at),
        ]),
        sentence: ok
          ? says.keepsToFold(the(mechanism.id), mm(-over), fold(crease.name))
          : says.pastFold(The(mechanism.id), mm(over), fold(crease.name)),
      },
    ]
  })
}
