import { closesNowhere } from '../mechanisms/build.ts'
import { meetings } from '../motion/clearance.ts'
import { rangesOf, toldEnd } from '../motion/range.ts'
import type { Vec3 } from '../plane/vector.ts'
import * as says from '../words/checks.ts'
import { side, The, the } from './names.ts'
import { degrees, mm, when } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { fitsNowhere, idOf, onPiece } from './subject.ts'

/** Looks at a pair of panels that one verdict may take, in all and for each mechanism: several times what a clear card does. */
const MOST = 1.5e4

const MOST_EACH = 750

/** The same where only a few mechanisms are asked about, over and over. */
const HASTY = 2e3

/** How far towards the end of what its host allows a mechanism is looked at that would go through its page. */
const LOOKS = [1, 0.5, 0.25, 0.125, 1 / 64]

/**
 * Mechanisms of which a crease's inside angle falls below 0 where what they stand on still goes: the paper
 * would have to go through itself there, as neighbours by an edge. Where that begins is told by
 * `motion/range.ts`; here by how much at worst.
 */
function through(subject: Subject): Finding[] {
  const { model, poser, design } = subject
  const { lineage } = rangesOf(design)
  return model.builds.flatMap(({ host, hostPanel }, owner): Finding[] => {
    const span = lineage(owner)
    if (!span || hostPanel !== undefined || !subject.wants([owner])) return []
    const under = lineage(model.creases[host]?.owner ?? -1)
    const ends = [
      { end: span.high, far: under?.high.at ?? 180 },
      { end: span.low, far: under?.low.at ?? 0 },
    ].filter(({ end }) => end.why?.owner === owner && end.why.how === 'through')
    const [first] = ends
    if (!first) return []
    const crease = model.creases[first.end.why?.crease ?? -1]
    if (!crease) return []
    const { name } = crease
    let worst = { angle: 0, opening: first.end.at, space: [0, 0, 0] as Vec3 }
    for (const { end, far } of ends)
      for (const part of LOOKS) {
        const opening = end.at + part * (far - end.at)
        const { creases, stopped } = poser(opening)
        const { angle, end: space } = creases[name] ?? { angle: 0, end: worst.space }
        if (!stopped.includes(idOf(subject, owner)) && angle < worst.angle)
          worst = { angle, opening, space: [...space] }
      }
    const other = [crease.left, crease.right]
      .map(({ panel }) => model.panels[panel])
      .find((panel) => panel?.owner !== owner)
    const id = idOf(subject, owner)
    return [
      {
        name: 'clear-motion',
        ok: false,
        verdict: 'touches',
        value: -worst.angle,
        unit: 'deg',
        limit: 0,
        sense: 'at-most',
        ids: [id, name, other?.name ?? name],
        opening: worst.opening,
        space: worst.space,
        sentence: says.lyingThrough(The(id), side(other?.name ?? name)),
      },
    ]
  })
}

/** That nothing meets; of what goes less far than from flat to shut, how far it goes, and so over what it was judged. */
function clearAll({ model, design }: Subject): string {
  const { lineage } = rangesOf(design)
  const parts = model.builds.flatMap(({ mechanism: { id } }, owner) => {
    const { low, high } = lineage(owner) ?? {}
    // What stands on it goes no further.
    if (low?.why?.owner !== owner && high?.why?.owner !== owner) return []
    return [
      says.goesFrom(
        the(id),
        degrees(toldEnd(high?.at ?? 180, 'most')),
        degrees(toldEnd(low?.at ?? 0, 'least')),
      ),
    ]
  })
  return parts.length === 0 ? says.clear : says.clearAsFar(parts)
}

/**
 * No two panels meet between shut and flat, nor pass through each other in the shut stack. `ok` means
 * proved. A mechanism whose cuts cannot be made as drawn is left out, and then we say that we cannot tell.
 *
 * Two panels are looked at over the openings to which the card gets without what stands on the two
 * (`Subject.range`). Where a panel is hangs on its own lineage alone, so within that all poses are real; past
 * it, one of the two is no longer where paper could be, or something else has stopped the card. A guest that
 * goes less far than its host is left out of it, or it would hide what the host runs into.
 */
export function clearMotion(subject: Subject, spoilt: ReadonlySet<string>): Finding[] {
  const { model, motion } = subject
  const owner = (panel: number): number => model.panels[panel]?.owner ?? -1
  // Paper that lies on its host's panels all the way can no more run into them than they into each other.
  const liesOn = (panel: number, other: number): boolean => {
    const build = model.builds[owner(panel)]
    if (!build?.build.lies) return false
    const host = model.creases[build.host]
    return owner(other) === owner(panel) || other === host?.left.panel || other === host?.right.panel
  }
  const base = { name: 'clear-motion', unit: 'mm', limit: 0, sense: 'at-most' } as const
  const waiting = (ids: readonly string[], sentence: string): Finding[] => [
    { ...base, ok: false, verdict: 'undecided', waits: true, value: 0, ids, sentence },
  ]
  const most = Math.min(
    subject.hasty ? HASTY : Math.max(MOST, MOST_EACH * model.builds.length),
    subject.effort.left,
  )
  const effort = { left: most }
  const isSpoilt = (owner: number): boolean => spoilt.has(idOf(subject, owner))
  const meeting = meetings({
    motion,
    effort,
    range: subject.range,
    alone: subject.alone,
    skips: (one, two) => liesOn(one, two) || liesOn(two, one),
    wants: (one, two) => !isSpoilt(one) && !isSpoilt(two) && subject.wants([one, two]),
    counts: subject.counts,
  })
  subject.effort.left -= most - effort.left
  const found = meeting.map(({ panels, verdict, opening, at, flat, depth }): Finding => {
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
          ? says.runInto(one, two, when(opening))
          : says.clearUntold(one, two, when(opening), mm(depth)),
    }
  })
  const crossed = through(subject)
  const { nowhere } = rangesOf(subject.design)
  const misfits = nowhere.filter((index) => subject.wants([index])).map((index) => idOf(subject, index))
  const never = nowhere.find(
    (index) => subject.wants([index]) && closesNowhere(model.builds[index]?.build ?? {}),
  )
  const untold =
    misfits[0] === undefined
      ? []
      : waiting(
          misfits,
          never === undefined
            ? says.fitNowhere(the(misfits[0]))
            : says.motionUntold(fitsNowhere(subject, never)),
        )
  if (untold.length + found.length + crossed.length > 0) return [...untold, ...crossed, ...found]
  const [first] = spoilt
  if (first !== undefined) return waiting([...spoilt], says.cutFirst(the(first)))
  return [
    {
      ...base,
      ok: true,
      verdict: 'clear',
      value: 0,
      ids: [],
      sentence: clearAll(subject),
    },
  ]
}
