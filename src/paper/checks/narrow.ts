import { keeping } from '../motion/kept.ts'
import type { Flat } from '../plane/lay.ts'
import { edgesOf, SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import { side } from './names.ts'
import { mm } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

/**
 * The least width of an outline, mm: of all directions square to an edge, the one in which it reaches
 * least (rotating calipers: the width of a convex polygon is taken at an edge. Shamos 1978). For an outline
 * with a dent this is the width of its hull or more.
 */
function widthOf(outline: readonly Flat[]): { width: number; at: readonly Flat[] } {
  let least: { width: number; at: readonly Flat[] } = { width: Number.POSITIVE_INFINITY, at: [] }
  for (const { a, b } of edgesOf(outline)) {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (long <= SAME) continue
    const off = ([x, y]: Flat) => ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / long
    const offs = outline.map(off)
    const width = Math.max(...offs) - Math.min(...offs)
    const far =
      outline[offs.reduce((best, one, k) => (Math.abs(one) > Math.abs(offs[best] as number) ? k : best), 0)]
    if (width < least.width) least = { width, at: far ? [far, a] : [a, b] }
  }
  return Number.isFinite(least.width) ? least : { width: 0, at: outline }
}

const kept = keeping<ReturnType<typeof widthOf>>()

/** Every part of a mechanism is wide enough not to tear: the least width of its panels, mm. The limit is that of bridges (common practice, no source). */
export function narrow(subject: Subject): Finding[] {
  const { model, limits } = subject
  return model.panels.flatMap(({ owner, name, outline }, panel): Finding[] => {
    if (owner < 0 || !subject.wants([owner])) return []
    const { width, at } = kept(subject.paper(owner), name, () => widthOf(outline))
    const ok = width >= limits.bridge - SAME
    return [
      {
        name: 'narrow',
        ok,
        caution: true,
        value: width,
        unit: 'mm',
        limit: limits.bridge,
        sense: 'at-least',
        ids: [idOf(subject, owner), name],
        ...onPiece(subject, panel, at),
        sentence: ok ? says.narrowestPart(side(name), mm(width)) : says.tooNarrow(side(name), mm(width)),
      },
    ]
  })
}
