// Twins of a design of the cut family: the same paper seen another way. Written from the file format's own rules.
import type { Design, Flat, Mechanism, Pose, Vec3 } from '../../../src/paper/index.ts'
import { compile, modelOf } from '../../../src/paper/index.ts'
import { laid } from '../../../src/paper/plane/lay.ts'
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
  withMechanisms(design, (m) => {
    const on = swapped(m.on)
    return m.kind === 'cut-layer' ? { ...m, on, left: m.right ?? 0, right: m.left ?? 0 } : { ...m, on }
  })

const lengths = ['apex', 'run', 'cut', 'lean', 'start', 'end', 'left', 'right', 'startCut', 'endCut']

/** Every length `k` times as long, the card with it. */
export function scaled(design: Design, k: number): Design {
  const { width, height, caliper } = design.card
  const whole = withMechanisms(design, (m) => {
    const fields = Object.entries(m).map(([key, value]: [string, unknown]) => {
      if (lengths.includes(key)) return [key, (value as number) * k]
      if (key === 'outline') return [key, (value as readonly Flat[]).map(([a, b]) => [a * k, b * k])]
      return [key, value]
    })
    return Object.fromEntries(fields) as Mechanism
  })
  return { ...whole, card: { width: width * k, height: height * k, caliper } }
}

/** One mechanism farther along its host crease. */
function moved(m: Mechanism, by: number): Mechanism {
  switch (m.kind) {
    case 'cut-v-fold':
      return {
        ...m,
        apex: m.apex + by,
        ...(m.outline ? { outline: m.outline.map(([a, b]): Flat => [a, b + by]) } : {}),
      }
    case 'cut-layer':
    case 'cut-trapezoid':
      return { ...m, start: m.start + by, end: m.end + by }
    default:
      throw new RangeError(`no twin for ${m.kind}`)
  }
}

/** What sits on the gutter moved along it; the rest follows. */
export const shifted = (design: Design, by: number): Design =>
  withMechanisms(design, (m) => (m.on === 'gutter' ? moved(m, by) : m))

/** One mechanism counted from the other end of its host crease, left for right. */
function fromOtherEnd(m: Mechanism, length: number): Mechanism {
  const turn = (along: number): number => length - along
  switch (m.kind) {
    case 'cut-v-fold':
      return {
        ...m,
        apex: turn(m.apex),
        run: -m.run,
        lean: -(m.lean ?? 0),
        ...(m.outline ? { outline: m.outline.map(([a, b]): Flat => [a, turn(b)]) } : {}),
      }
    case 'cut-layer':
      return { ...m, start: turn(m.end), end: turn(m.start) }
    case 'cut-trapezoid':
      return { ...m, start: turn(m.end), end: turn(m.start), startCut: m.endCut, endCut: m.startCut }
    default:
      throw new RangeError(`no twin for ${m.kind}`)
  }
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
    if (m.kind !== 'cut-v-fold') for (const part of ['ridge', 'left', 'right']) counted.add(`${m.id}/${part}`)
    return fromOtherEnd(m, lengthOf.get(m.on) ?? 0)
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
