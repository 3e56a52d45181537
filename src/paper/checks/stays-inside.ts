import type { Vec3 } from '../types.ts'
import { SAME } from './plane.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf } from './subject.ts'
import { mm, The, the, when } from './words.ts'

/** Every mechanism stays inside the shut card: the least distance to the page's edges, mm. */
export function staysInside(subject: Subject): Finding[] {
  const { model, poser } = subject
  const { width, height } = model.design.card
  const opening = 0
  const pose = poser(opening)
  const found = new Map<number, { margin: number; at: Vec3; edge: string; panel: string }>()
  for (const { owner, name } of model.panels) {
    if (owner < 0 || !subject.wants([owner])) continue
    for (const at of pose.panels[name] ?? [])
      for (const [margin, edge] of [
        [at[1], 'near'],
        [height - at[1], 'far'],
        [width - Math.hypot(at[0], at[2]), 'side'],
      ] as const)
        if (margin < (found.get(owner)?.margin ?? Number.POSITIVE_INFINITY))
          found.set(owner, { margin, at: [...at], edge, panel: name })
  }
  return [...found].map(([owner, { margin, at, edge, panel }]): Finding => {
    const ok = margin >= -SAME
    const id = idOf(subject, owner)
    return {
      name: 'stays-inside',
      ok,
      value: margin,
      unit: 'mm',
      limit: 0,
      sense: 'at-least',
      ids: [id, panel],
      opening,
      space: at,
      sentence: ok
        ? `Nothing sticks out: ${the(id)} comes nearest, ${mm(margin)} inside the ${edge} edge ${when(opening)}.`
        : `${The(id)} sticks out ${mm(-margin)} past the ${edge} edge ${when(opening)}.`,
    }
  })
}
