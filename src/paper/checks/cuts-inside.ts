import { keeping } from '../motion/kept.ts'
import { overshoot } from '../plane/outline.ts'
import { SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import { side, The } from './names.ts'
import { mm } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

const kept = keeping<ReturnType<typeof overshoot>>()

/** What a mechanism cuts out of a panel lies inside that panel: how far it reaches over the panel's edge, mm. */
export function cutsInside(subject: Subject): Finding[] {
  const { model } = subject
  return subject.notches.flatMap(({ owner, panel, outline }): Finding[] => {
    const host = model.panels[panel]
    if (!host || !subject.wants([owner, host.owner])) return []
    const { distance, from, to } = kept(subject.paper(owner), host.name, () =>
      overshoot(outline, host.outline),
    )
    const ok = distance <= SAME
    const id = idOf(subject, owner)
    return [
      {
        name: 'cuts-inside',
        ok,
        value: distance,
        unit: 'mm',
        limit: 0,
        sense: 'at-most',
        ids: [id, ...(host.owner < 0 ? [] : [idOf(subject, host.owner)]), host.name],
        ...(ok ? {} : onPiece(subject, panel, [from, to])),
        sentence: ok ? says.cutsInside : says.cutOverEdge(The(id), mm(distance), side(host.name)),
      },
    ]
  })
}
