import { jointsOf } from '../model/joints.ts'
import type { ModelGlue, ModelPanel } from '../model/model.ts'
import { coveredSlits } from '../model/threading.ts'
import { convexParts, overlapOf } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import { longestThrough, nearestEdge, overshoot, runsThrough } from '../plane/outline.ts'
import type { Segment } from '../plane/segment.ts'
import { edgesOf, isWithin, SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import { side, The, the } from './names.ts'
import { mm } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

/** How far one glued place misses, mm, and where; 0 if it sticks as it should. */
interface Miss {
  readonly by: number
  readonly at: readonly Flat[]
  readonly sentence: string
}

const NONE: Miss = { by: 0, at: [], sentence: says.glueHolds }

/** The lines of a glued place: all round it, or the joint alone where it is taped. */
const linesOf = ({ outline, closed }: ModelGlue): Segment[] =>
  closed ? edgesOf(outline) : outline.slice(1).map((b, k) => ({ a: outline[k] as Flat, b }))

/** How far a glued place reaches over the edge of its panel, mm. */
function overEdge(glue: ModelGlue, { outline }: ModelPanel): { by: number; at: readonly Flat[] } {
  if (glue.closed) {
    const { distance, from, to } = overshoot(glue.outline, outline)
    return { by: distance, at: [from, to] }
  }
  const edges = edgesOf(outline)
  return glue.outline.reduce<{ by: number; at: readonly Flat[] }>(
    (worst, p) => {
      const { distance, at } = nearestEdge(edges, p)
      return distance > Math.max(SAME, worst.by) && !isWithin(edges, p)
        ? { by: distance, at: [p, at] }
        : worst
    },
    { by: 0, at: [] },
  )
}

/** How deep a glued place reaches into a hole or a moving strip of its panel, mm. */
function overNotch(glue: ModelGlue, notch: readonly Flat[]): { by: number; at: readonly Flat[] } {
  const edges = edgesOf(notch)
  const deep = glue.outline
    .map((p) => ({ p, ...nearestEdge(edges, p) }))
    .filter(({ p }) => isWithin(edges, p))
  const worst = deep.reduce((a, b) => (b.distance > a.distance ? b : a), {
    p: [0, 0] as Flat,
    distance: 0,
    at: [0, 0] as Flat,
  })
  if (worst.distance > SAME) return { by: worst.distance, at: [worst.p, worst.at] }
  // Of a strip that runs right across, the glue has no corner in it: as far as its edges lie on the strip.
  const across = Math.max(...linesOf(glue).map((line) => longestThrough(line, notch)))
  return across > 0 ? { by: Math.max(SAME * 2, across), at: glue.outline } : { by: 0, at: [] }
}

function missOf(subject: Subject, glue: ModelGlue): Miss {
  const panel = subject.model.panels[glue.panel] as ModelPanel
  const own = (): string => The(idOf(subject, glue.owner))
  const name = side(panel.name)
  const edge = overEdge(glue, panel)
  if (edge.by > SAME) return { ...edge, sentence: says.gluePastEdge(own(), mm(edge.by), name) }
  for (const { outline, owner } of panel.notches) {
    const found = overNotch(glue, outline)
    if (found.by > SAME)
      return { ...found, sentence: says.glueOverCut(own(), mm(found.by), the(idOf(subject, owner)), name) }
  }
  return NONE
}

/** A rider's glue that shows beside the rider, mm. */
function besideRider(subject: Subject, glue: ModelGlue): Miss {
  const found = subject.model.builds[glue.owner]
  if (found?.hostPanel === undefined) return NONE
  const shape = subject.model.panels[found.firstPanel]?.outline ?? []
  const { distance, from, to } = overshoot(glue.outline, shape)
  return distance > SAME
    ? {
        by: distance,
        at: [from, to],
        sentence: says.glueBeside(The(idOf(subject, glue.owner)), mm(distance)),
      }
    : NONE
}

/** How deep two outlines overlap, mm: the shortest way that would part their convex parts. */
const overlap = (one: readonly Flat[], two: readonly Flat[]): number =>
  Math.max(0, ...convexParts(one).flatMap((a) => convexParts(two).map((b) => overlapOf(a, b))))

/**
 * Tabs that lie over each other's joints, on one face of one panel: whichever is stuck down first, the other's
 * part already stands in its way. Of two of which only one covers the other's joint, the covered one goes on top.
 */
function interlocked(subject: Subject): Finding[] {
  const { model, design } = subject
  // Joints are told in the order of the glue.
  const tabs = jointsOf(design).flatMap(({ host: { face }, line }, k) => {
    const glue = model.glue[k]
    return line && glue?.closed ? [{ ...glue, face }] : []
  })
  const covers = (one: ModelGlue, { outline: [a, b] }: ModelGlue): boolean =>
    a !== undefined && b !== undefined && runsThrough({ a, b }, one.outline)
  return tabs.flatMap((one, k) =>
    tabs.slice(k + 1).flatMap((two): Finding[] => {
      if (one.panel !== two.panel || one.face !== two.face || !subject.wants([one.owner, two.owner]))
        return []
      if (!covers(one, two) || !covers(two, one)) return []
      const [id, other] = [idOf(subject, one.owner), idOf(subject, two.owner)]
      const panel = model.panels[one.panel] as ModelPanel
      const on = side(panel.name)
      return [
        {
          name: 'glue',
          ok: false,
          value: overlap(one.outline, two.outline),
          unit: 'mm',
          limit: 0,
          sense: 'at-most',
          ids: [...new Set([id, other]), panel.name],
          ...onPiece(subject, one.panel, two.outline.slice(0, 2)),
          sentence:
            one.owner === two.owner
              ? says.ownTabsInterlock(the(id), on)
              : says.tabsInterlock(The(id), the(other), on),
        },
      ]
    }),
  )
}

/** Slits that are stuck over before their own tabs go through them. */
function overSlits(subject: Subject): Finding[] {
  return coveredSlits(subject.model).flatMap(({ by, of, panel, slit, long }): Finding[] => {
    if (!subject.wants([by, of])) return []
    const [id, other] = [idOf(subject, by), idOf(subject, of)]
    const name = subject.model.panels[panel]?.name ?? ''
    return [
      {
        name: 'glue',
        ok: false,
        value: long,
        unit: 'mm',
        limit: 0,
        sense: 'at-most',
        ids: [id, other, name],
        ...onPiece(subject, panel, slit),
        sentence: says.overSlit(The(id), mm(long), the(other), side(name)),
      },
    ]
  })
}

/**
 * Glue on one panel only, mm: a tab, a taped joint or the glue of a rider may not reach past the edge of
 * the panel it sticks to, nor over a cut or fold in it, and no glue may show beside its piece. Else it glues
 * shut what should move, or does not hold along its whole length. Nor may two tabs lie over each other's joints, or
 * what is stuck down first over a slit that another tab still has to go through.
 */
export function glue(subject: Subject): Finding[] {
  const misses = subject.model.glue.flatMap((one): Finding[] => {
    if (!subject.wants([one.owner])) return []
    const id = idOf(subject, one.owner)
    const first = missOf(subject, one)
    const miss = first === NONE ? besideRider(subject, one) : first
    const ok = miss === NONE
    const name = subject.model.panels[one.panel]?.name ?? ''
    return [
      {
        name: 'glue',
        ok,
        value: miss.by,
        unit: 'mm',
        limit: 0,
        sense: 'at-most',
        ids: [id, name],
        ...(ok ? {} : onPiece(subject, one.panel, miss.at)),
        sentence: miss.sentence,
      },
    ]
  })
  return [...misses, ...interlocked(subject), ...overSlits(subject)]
}
