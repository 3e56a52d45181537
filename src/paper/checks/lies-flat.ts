import type { Model, ModelPanel } from '../model/model.ts'
import { rangesOf, toldEnd } from '../motion/range.ts'
import { laid } from '../plane/lay.ts'
import { SAME } from '../plane/segment.ts'
import type { Vec3 } from '../plane/vector.ts'
import { distance } from '../plane/vector.ts'
import * as says from '../words/checks.ts'
import { pulledTight } from '../words/stops.ts'
import { The } from './names.ts'
import { mm } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { fitsNowhere, idOf } from './subject.ts'
import type { CheckName } from './verdict.ts'

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

/** What is said of a mechanism that lies as it should, and of one that does not. */
interface Said {
  readonly holds: string
  fails(name: string, off: string): string
}

const lying = (subject: Subject, name: CheckName, opening: number, off: Off, said: Said): Finding[] =>
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
      sentence: ok ? said.holds : said.fails(The(id), mm(value)),
    }
  })

/** Mechanisms whose sides do not match when shut: by how many degrees or mm their sums differ. */
const mismatches = (subject: Subject): Finding[] =>
  subject.model.builds.flatMap(({ mechanism: { id }, build: { shutGap } }, owner): Finding[] => {
    const value = Math.abs(shutGap?.gap ?? 0)
    if (!shutGap || !(value > SAME) || !subject.wants([owner])) return []
    const by = shutGap.unit === 'mm' ? mm(value) : `${value.toFixed(1)}°`
    return [
      {
        name: 'shuts-flat',
        ok: false,
        value,
        unit: shutGap.unit,
        limit: 0,
        sense: 'at-most',
        ids: [id],
        opening: 0,
        sentence: says.sidesDiffer(The(id), by),
      },
    ]
  })

/**
 * Shut, every point lies in the plane between the two pages, x = 0: the largest distance from it, mm. A
 * glued piece whose two sides do not match says by how much they differ instead.
 */
export function shutsFlat(subject: Subject): Finding[] {
  const unlike = mismatches(subject)
  const found = lying(subject, 'shuts-flat', 0, ([x]) => Math.abs(x), {
    holds: says.shutsFlat,
    fails: says.doesNotShut,
  })
  return [...unlike, ...found.filter(({ ids }) => !unlike.some((one) => one.ids[0] === ids[0]))]
}

/** Mechanisms that stop the card before it is flat, or would have to go through their page: how many degrees are missing. */
const stops = (subject: Subject): Finding[] =>
  subject.design.mechanisms.flatMap(({ id }, owner): Finding[] => {
    const { high } = rangesOf(subject.design).lineage(owner) ?? {}
    if ((high && high.why?.owner !== owner) || !subject.wants([owner])) return []
    // What fits at no opening is as far from flat as can be.
    const opening = high?.at ?? 0
    const missing = 180 - opening
    const end = toldEnd(opening, 'most')
    return [
      {
        name: 'opens-flat',
        ok: false,
        value: missing,
        unit: 'deg',
        limit: 0,
        sense: 'at-most',
        ids: [id],
        opening,
        sentence: high
          ? pulledTight(The(id), `${end.toFixed(1)}°`, `${(180 - end).toFixed(1)}°`, 'open')
          : fitsNowhere(subject, owner),
      },
    ]
  })

/** By mechanism: whether it is glued on, or stands on what is. Such a one may stand when the card lies flat. */
function standing({ builds, creases }: Model): readonly boolean[] {
  const known: boolean[] = []
  builds.forEach(({ build, host }, owner) => {
    known[owner] = (build.pieces?.length ?? 0) > 0 || known[creases[host]?.owner ?? -1] === true
  })
  return known
}

/**
 * Open, the card reaches 180 degrees, and all that was cut from the card itself lies on the table, z = 0,
 * back in its own hole: the largest distance from there, mm. What is glued on may stand, and so may what
 * is cut across its joints, half of the card and half of the piece.
 */
export function opensFlat(subject: Subject): Finding[] {
  const stands = standing(subject.model)
  const off: Off = (point, { outline, onPiece, owner }, corner) => {
    const flat = outline[corner]
    if (!flat || stands[owner]) return 0
    const [x, y] = laid(onPiece, flat)
    return distance(point, [x, y, 0])
  }
  const found = lying(subject, 'opens-flat', 180, off, {
    holds: says.opensFlat,
    fails: says.doesNotOpen,
  })
  return [...found, ...stops(subject)]
}
