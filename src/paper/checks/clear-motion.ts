import { meetings } from '../motion/clearance.ts'
import { mm, side, the, when } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf, onPiece } from './subject.ts'

/** Looks at a pair of panels that one verdict may take: some fifty times what 25 mechanisms do. */
const MOST = 2e5

/** The same where only a few mechanisms are asked about, over and over. */
const HASTY = 2e3

/** Degrees: the angle of a crease that is about to shut has its sign, and still its digits, here. */
const NEARLY_SHUT = 0.01

/**
 * Creases whose inside angle falls below 0: the paper would have to go through itself there, as neighbours
 * by an edge. A facet comes into its page's plane where cos a2 = cos(b1 - a1) cos b2 + sin(b1 - a1) sin b2
 * cos w (spherical law of cosines; planar kinds likewise), which has at most one root w; so the angle's sign
 * changes at most once, and the two ends and the middle of the motion tell it for the whole of it. Cut folds
 * have tan(w/2) = cos a tan(t/2), never below 0.
 */
function through(subject: Subject): Finding[] {
  const { model, poser } = subject
  const [least, most] = subject.range()
  const seen = new Set<number>()
  return [(least + most) / 2, most, Math.max(NEARLY_SHUT, least)].flatMap((opening) => {
    const { creases } = poser(opening)
    return model.creases.flatMap(({ name, owner, left, right, hidden }): Finding[] => {
      const angle = creases[name]?.angle ?? 0
      if (hidden || seen.has(owner) || !(angle < -1e-6) || !subject.wants([owner])) return []
      seen.add(owner)
      const id = idOf(subject, owner)
      const other = [left, right]
        .map(({ panel }) => model.panels[panel])
        .find((panel) => panel?.owner !== owner)
      return [
        {
          name: 'clear-motion',
          ok: false,
          verdict: 'touches',
          value: -angle,
          unit: 'deg',
          limit: 0,
          sense: 'at-most',
          ids: [id, name, other?.name ?? name],
          opening,
          ...(creases[name] ? { space: [...creases[name].end] } : {}),
          sentence: `T${the(id).slice(1)} would have to go through ${side(other?.name ?? name)}: it cannot lie down like this.`,
        },
      ]
    })
  })
}

/**
 * No two panels meet between shut and flat, nor pass through each other in the shut stack. `ok` means
 * proved. A mechanism whose cuts cannot be made as drawn is left out, and then we say that we cannot tell.
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
  const [from, to] = subject.range()
  if (!(to > from)) {
    const stopped = [...subject.poser((from + to) / 2).stopped]
    return waiting(
      stopped,
      `Nothing can be told of the motion: at no opening do all parts of the card fit together, ${the(stopped[0] ?? 'page')} among them.`,
    )
  }
  const most = Math.min(subject.hasty ? HASTY : MOST, subject.effort.left)
  const effort = { left: most }
  const meeting = meetings({
    motion,
    effort,
    range: [from, to],
    wants: (one, two) => {
      if (liesOn(one, two) || liesOn(two, one)) return false
      const owners = [owner(one), owner(two)]
      return subject.wants(owners) && !owners.some((index) => spoilt.has(idOf(subject, index)))
    },
    name: (one, two) => `${owner(one)} ${owner(two)}`,
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
          ? `T${one.slice(1)} and ${two} run into each other ${when(opening)}.`
          : `We cannot tell whether ${one} and ${two} pass clear ${when(opening)}: the gap is ${mm(depth)} or less.`,
    }
  })
  const crossed = through(subject)
  if (found.length + crossed.length > 0) return [...crossed, ...found]
  const [first] = spoilt
  if (first !== undefined)
    return waiting(
      [...spoilt],
      `Whether all parts pass clear of each other can be told once ${the(first)} can be cut.`,
    )
  return [
    {
      ...base,
      ok: true,
      verdict: 'clear',
      value: 0,
      ids: [],
      sentence: 'All parts pass clear of each other, from flat to shut.',
    },
  ]
}
