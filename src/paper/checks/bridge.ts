import { alongLay, creaseLines, isAlong } from '../model/lines.ts'
import { stretches } from '../model/pieces.ts'
import type { Gap } from '../plane/gap.ts'
import { gapOf } from '../plane/gap.ts'
import { areNear, extentOf, nearPairs } from '../plane/near.ts'
import { runsThrough } from '../plane/outline.ts'
import type { Segment } from '../plane/segment.ts'
import { edgesOf, SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import { side, the } from './names.ts'
import { fold, mm } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

/** A line drawn on a panel, in its flat coordinates. */
interface Line extends Segment {
  /** The mechanism that it belongs to; -1 for the card itself. */
  readonly owner: number
  /** `edge`: paper ends here, by a cut or at the rim; `fold`: paper goes on behind it. */
  readonly kind: 'edge' | 'fold'
  /** The crease it is part of. */
  readonly crease?: number
  /** A slit for a tab: unlike a strip's cuts it does not begin on the crease that its mechanism sits on. */
  readonly isSlit?: boolean
}

/** Every line on every panel. */
function linesOf(subject: Subject): Line[][] {
  const { model } = subject
  const lines: Line[][] = model.panels.map(() => [])
  const creases = creaseLines(model)
  model.creases.forEach((crease, index) => {
    const spans = crease.guests.flatMap((guest) => {
      const build = model.builds[guest]?.build
      return build?.notch ? [build.span] : []
    })
    for (const { panel, lay } of [crease.left, crease.right]) {
      // A joint glued onto a panel does not weaken it.
      if (model.panels[panel]?.owner !== crease.owner && model.builds[crease.owner]?.build.notch === null)
        continue
      for (const [from, to] of stretches(crease.length, spans))
        lines[panel]?.push({
          a: alongLay(lay, from),
          b: alongLay(lay, to),
          owner: crease.owner,
          kind: 'fold',
          crease: index,
        })
    }
  })
  model.panels.forEach((panel, index) => {
    for (const edge of edgesOf(panel.outline))
      if (!isAlong(edge, creases[index] ?? []))
        lines[index]?.push({ ...edge, owner: panel.owner, kind: 'edge' })
  })
  for (const { owner, panel, outline } of subject.notches)
    for (const edge of edgesOf(outline))
      if (!isAlong(edge, creases[panel] ?? [])) lines[panel]?.push({ ...edge, owner, kind: 'edge' })
  for (const { owner, panel, slit } of model.glue)
    if (slit) lines[panel]?.push({ a: slit[0], b: slit[1], owner, kind: 'edge', isSlit: true })
  return lines
}

/** The least paper found between two mechanisms. */
interface Least {
  readonly gap: Gap
  readonly owner: number
  readonly other: Line
  readonly panel: number
}

/** Where nothing lies within the limit, so many times as far is looked, and then everywhere. */
const FARTHER = 4

const ANY = Number.POSITIVE_INFINITY

/** Holes of one panel: by `runsThrough` a gap may lead over one. */
interface Holes {
  over(between: Segment): boolean
}

function holesOf(subject: Subject, panel: number): Holes {
  const holes = subject.notches
    .filter((notch) => notch.panel === panel)
    .map(({ outline }) => ({ outline, box: extentOf(outline) }))
  return {
    over: (between) => {
      const box = extentOf([between.a, between.b])
      return holes.some((hole) => areNear(box, hole.box, SAME) && runsThrough(between, hole.outline))
    },
  }
}

/** For every two mechanisms, the least gap up to `reach` between their lines. */
function leastGaps(
  subject: Subject,
  lines: readonly (readonly Line[])[],
  reach: number,
  skips: (one: Line, two: Line) => boolean,
): Least[] {
  const least = new Map<string, Least>()
  lines.forEach((here, panel) => {
    const holes = holesOf(subject, panel)
    const boxes = here.map(({ a, b }) => extentOf([a, b]))
    for (const [i, j] of nearPairs(boxes, reach)) {
      const [one, two] = [here[i], here[j]] as [Line, Line]
      if (skips(one, two)) continue
      const gap = gapOf(one, two)
      if (gap.distance > reach) continue
      const key = `${Math.min(one.owner, two.owner)} ${Math.max(one.owner, two.owner)}`
      if (gap.distance >= (least.get(key)?.gap.distance ?? Number.POSITIVE_INFINITY)) continue
      if (holes.over({ a: gap.from, b: gap.to })) continue
      const [owner, other] = one.owner > two.owner ? [one.owner, two] : [two.owner, one]
      least.set(key, { gap, owner, other, panel })
    }
  })
  return [...least.values()]
}

/**
 * The least paper between two lines of one panel of which one at least is an edge (a cut or the rim), and
 * which belong to different mechanisms or to a mechanism and its host: a strip beside an edge tears.
 * Two folds may come as near as they like, so two V-folds may stand point to point. Not counted: a guest
 * and the very crease that it sits on (a slit for a tab is), the two halves of a shared slit, and lines with a hole
 * between them.
 * Gaps within the limit are all told; if there are none, the least one of all.
 * The limit of 5 mm is common practice, no source.
 */
export function bridge(subject: Subject, spoilt: ReadonlySet<string>): Finding[] {
  const { model, limits } = subject
  const isSpoilt = (owner: number): boolean => owner >= 0 && spoilt.has(idOf(subject, owner))
  const sitsOn = (guest: Line, host: Line): boolean =>
    !guest.isSlit && host.crease !== undefined && model.builds[guest.owner]?.host === host.crease
  const skips = (one: Line, two: Line): boolean =>
    one.owner === two.owner ||
    (one.kind === 'fold' && two.kind === 'fold') ||
    sitsOn(one, two) ||
    sitsOn(two, one) ||
    !subject.wants([one.owner, two.owner]) ||
    subject.shareSlit(one.owner, two.owner)
  const lines = linesOf(subject).map((here) => here.filter(({ owner }) => !isSpoilt(owner)))
  let found: readonly Least[] = []
  for (const reach of subject.hasty ? [limits.bridge] : [limits.bridge, FARTHER * limits.bridge, ANY])
    if (found.length === 0) found = leastGaps(subject, lines, reach, skips)
  return found.map(({ gap, owner, other, panel }): Finding => {
    const [id, host] = [idOf(subject, owner), idOf(subject, other.owner)]
    const name = model.panels[panel]?.name ?? ''
    const crease = model.creases[other.crease ?? -1]?.name
    const from = crease ? fold(crease) : other.owner < 0 ? says.edgeOfPage : the(host)
    const ok = gap.distance >= limits.bridge - SAME
    return {
      name: 'bridge',
      ok,
      caution: true,
      value: gap.distance,
      unit: 'mm',
      limit: limits.bridge,
      sense: 'at-least',
      ids: [id, ...(other.owner < 0 ? [] : [host]), name],
      ...onPiece(subject, panel, [gap.from, gap.to]),
      sentence: ok
        ? says.narrowestBridge(mm(gap.distance), the(id), from)
        : says.weakBridge(mm(gap.distance), side(name), the(id), from),
    }
  })
}
