// Twins of a design: the same paper seen another way. Written from the file format's own rules.
import type { Design, Mechanism, Pose, Vec3 } from '../../../src/paper/index.ts'
import { compile, kindOf, modelOf } from '../../../src/paper/index.ts'
import { laid } from '../../../src/paper/plane/lay.ts'
import { allKinds, entryOf } from './kinds.ts'
import { apart } from './space.ts'

const swapped = (name: string): string =>
  name.replace(/\/(left|right)$/, (_, side) => (side === 'left' ? '/right' : '/left'))

/** `page/left` for `page/right`, `beak/right` for `beak/left`; ridges keep their name. */
export const otherSide = swapped

const withMechanisms = (design: Design, map: (m: Mechanism) => Mechanism): Design => ({
  ...design,
  mechanisms: design.mechanisms.map(map),
})

/** Left for right everywhere. */
export const mirrored = (design: Design): Design =>
  withMechanisms(design, (m) => ({ ...entryOf(m.kind).mirrored(m), on: swapped(m.on) }))

const angles: ReadonlySet<string> = new Set(allKinds.flatMap((kind) => entryOf(kind).angles ?? []))

/** Every number in it that is a length, `k` times as large. */
function grown(value: unknown, k: number, key = ''): unknown {
  if (typeof value === 'number') return angles.has(key) ? value : value * k
  if (Array.isArray(value)) return value.map((one) => grown(one, k, key))
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, grown(one, k, name)]))
  return value
}

/** Every length `k` times as long, the card with it. */
export function scaled(design: Design, k: number): Design {
  const { width, height, caliper } = design.card
  const whole = withMechanisms(design, (m) => grown(m, k) as Mechanism)
  return { ...whole, card: { width: width * k, height: height * k, caliper } }
}

/** What sits on the gutter or on a page (or is stuck on such a piece), moved along it; the rest follows. */
export function shifted(design: Design, by: number): Design {
  const faces = new Set(['page/left', 'page/right'])
  return withMechanisms(design, (m) => {
    if (kindOf(m).sitsOn !== 'panel') return m.on === 'gutter' ? entryOf(m.kind).moved(m, by) : m
    // Its face uses the coordinates of what it is stuck on.
    if (!faces.has(m.on)) return m
    for (const { part } of kindOf(m).build(m).panels) faces.add(`${m.id}/${part}`)
    return entryOf(m.kind).moved(m, by)
  })
}

/**
 * The card turned round on the table: its other end is the reader's now. Creases of a V-fold still
 * start at its apex, those of layers and trapezoids at their other end.
 */
export function turnedRound(design: Design): Design {
  const { creases } = modelOf(design)
  const lengthOf = new Map(creases.map(({ name, length }) => [name, length]))
  const counted = new Set(['gutter'])
  const whole = withMechanisms(design, (m) => {
    if (!counted.has(m.on)) return m
    const { otherEnd } = entryOf(m.kind)
    if (!otherEnd) throw new RangeError(`no twin for ${m.kind}`)
    if (otherEnd.turned) for (const { part } of kindOf(m).build(m).creases) counted.add(`${m.id}/${part}`)
    const long = lengthOf.get(m.on) ?? 0
    return otherEnd.count(m, (along) => long - along)
  })
  return mirrored(whole)
}

/** A mechanism and all that sits on it, moved to another crease of another card. */
export function transplanted(design: Design, id: string, on: string): Mechanism[] {
  const taken = new Set([id])
  return design.mechanisms.flatMap((m): Mechanism[] => {
    if (m.id === id) return [{ ...m, on }]
    if (!taken.has(m.on.split('/')[0] ?? '')) return []
    taken.add(m.id)
    return [m]
  })
}

/** Distances between all points of a mechanism, its guests and both panels of its host crease, mm. */
export function inner(made: Design, id: string, opening: number): number[] {
  const poser = compile(made)
  const pose = poser(opening)
  const own = new Set(transplanted(made, id, 'gutter').map((m) => m.id))
  const host = poser.model.creases[poser.model.builds.find(({ mechanism }) => mechanism.id === id)?.host ?? 0]
  if (!host) return []
  const onHost = (['left', 'right'] as const).flatMap((side) =>
    (
      [
        [0, 0],
        [0, 50],
        [50, 10],
      ] as const
    ).map((flat) => poser.lift(host[side].panel, laid(host[side].lay, flat))),
  )
  const points = [
    ...onHost,
    ...Object.entries(pose.panels).flatMap(([name, list]) => (own.has(name.split('/')[0] ?? '') ? list : [])),
  ]
  return points.flatMap((p, i) => points.slice(i + 1).map((q) => apart(p, q)))
}

/** The farthest that a point of one pose lies from its twin, mm, or an angle from its twin, degrees. */
export function farthest(
  of: Pose,
  twin: Pose,
  move: (p: Vec3) => Vec3,
  rename: (name: string) => string,
): number {
  const panels = Object.entries(of.panels).filter(([name]) => !name.startsWith('page/'))
  const creases = Object.entries(of.creases).filter(([name]) => name !== 'gutter')
  return Math.max(
    0,
    ...panels.flatMap(([name, points]) => {
      const others = twin.panels[rename(name)]
      return points.map((p, k) => apart(move(p), others?.[k] ?? [Number.NaN, 0, 0]))
    }),
    ...creases.map(([name, { angle }]) =>
      Math.abs(angle - (twin.creases[rename(name)]?.angle ?? Number.NaN)),
    ),
  )
}
