/** What points at a fault in a picture: rings, and loops round lines. */
import type { Mark, Point } from '../drawing/pen/marks.ts'
import type { Pose, Vec3 } from '../paper/index.ts'
import { ownerOf } from '../paper/index.ts'
import { add as along, subtract, unit } from '../paper/plane/vector.ts'

/** Radius of the ring round a place, px: as round a failed check. */
const RING = 14

/** How far a loop keeps off its line, and a ring off a part, px: red dashes on a fold would read as a valley. */
const OFF = 6

/** What lies nearer than this to where it should be is not told from it, px. */
const SAME = 7

type Dot = Extract<Mark, { mark: 'dot' }>

export const ringAt = (at: Point, of: string, radius = RING): Dot => ({
  mark: 'dot',
  at,
  radius,
  role: 'fault',
  of,
})

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

const between = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

/** Corners of what stands for a ring. */
const ROUND = 32

const round = ([x, y]: Point, radius: number, from = 0, by = 2 * Math.PI): readonly Point[] => {
  const steps = Math.round((ROUND * by) / (2 * Math.PI))
  return Array.from({ length: steps + 1 }, (_, k): Point => {
    const turn = from + (by * k) / steps
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]
  })
}

/** A loop round a line. */
function loop([a, b]: readonly [Point, Point], of: string): Mark {
  const way = Math.atan2(b[1] - a[1], b[0] - a[0])
  const run = [...round(b, OFF, way - Math.PI / 2, Math.PI), ...round(a, OFF, way + Math.PI / 2, Math.PI)]
  return { mark: 'path', runs: [run], closed: true, role: 'fault', of }
}

/** A line over dark card. */
const drawnOver = (run: readonly Point[], role: 'ghost' | 'cut'): readonly Mark[] =>
  (['halo', role] as const).map((one) => ({ mark: 'path', runs: [run], closed: false, role: one }))

/** A ring round all that is drawn of a mechanism or a panel; null where nothing is. */
function partRing(drawn: readonly Mark[], name: string): Mark | null {
  const points = drawn.flatMap((mark) =>
    mark.mark === 'path' && mark.role === 'facet' && (mark.of === name || ownerOf(mark.of ?? '') === name)
      ? mark.runs.flat()
      : [],
  )
  if (points.length === 0) return null
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const middle = between([Math.min(...xs), Math.min(...ys)], [Math.max(...xs), Math.max(...ys)])
  return ringAt(middle, name, Math.max(RING, OFF + Math.max(...points.map((p) => apart(p, middle)))))
}

export type Places = Pick<Pose, 'creases'>

/** A card as it is drawn. */
export interface Drawn {
  readonly pose: Places
  /** Had it been made rightly. */
  readonly sound: Places
  readonly marks: readonly Mark[]
  toScreen(p: Vec3): Point
}

function creaseMarks(name: string, { pose, sound, toScreen }: Drawn): readonly Mark[] | null {
  const ends = (all: Pose['creases']): readonly [Point, Point] | null => {
    const crease = all[name]
    return crease ? [toScreen(crease.start), toScreen(crease.end)] : null
  }
  const [is, right] = [ends(pose.creases), ends(sound.creases)]
  if (!is) return null
  const isMoved = right && Math.max(apart(is[0], right[0]), apart(is[1], right[1])) > SAME
  return [...(isMoved ? drawnOver(right, 'ghost') : []), loop(is, name)]
}

/** The place of a crease at its start, its end, or so many millimetres from its start; null where there is none. */
function placeOn(name: string, { creases }: Places): Vec3 | null {
  const [, crease = '', at = ''] = /^(.*)\/(start|end|\d+)$/.exec(name) ?? []
  const whole = creases[crease]
  if (!whole) return null
  if (at === 'start' || at === 'end') return whole[at]
  return along(whole.start, unit(subtract(whole.end, whole.start)), Number(at))
}

/** How far a tear has gone on, from point to point, and how far it goes aside, mm. */
const TEAR = { steps: 5, by: 1.7, aside: 1.2 } as const

/** A tear in a page: from the end of a cut outward. */
function tear(from: Vec3, toScreen: Drawn['toScreen']): readonly Mark[] {
  const outward = unit([from[0], 0, from[2]])
  const run = Array.from({ length: TEAR.steps + 1 }, (_, k): Point => {
    const [x, y, z] = along(from, outward, TEAR.by * k)
    const aside = k === 0 ? 0 : k % 2 === 0 ? -TEAR.aside : TEAR.aside
    return toScreen([x, y + aside, z])
  })
  return drawnOver(run, 'cut')
}

const list = (names: readonly string[]): string => (names.length > 0 ? names.join(', ') : 'none')

/**
 * The places that `where` names, parted by spaces: a loop round a crease, a ring on it, with a tear from there, a ring
 * round a part. A crease that is not where it should be has that place beside it. Throws an Error for what is not there.
 */
export const placeMarks = (where: string, drawn: Drawn): readonly Mark[] =>
  where.split(/\s+/).flatMap((name): readonly Mark[] => {
    const [, torn] = /^tear:(.*)$/.exec(name) ?? []
    const at = placeOn(torn ?? name, drawn.pose)
    if (at) return [...(torn === undefined ? [] : tear(at, drawn.toScreen)), ringAt(drawn.toScreen(at), name)]
    const crease = creaseMarks(name, drawn)
    if (crease) return crease
    const part = partRing(drawn.marks, name)
    if (!part)
      throw new Error(
        `where names ${name}; the card has the creases ${list(Object.keys(drawn.pose.creases))}, each with a /start, an /end and millimetres from its start, and parts.`,
      )
    return [part]
  })

/** Rings round parts in the picture of a state of making. Throws an Error for a part that is not drawn. */
export const partMarks = (where: string, marks: readonly Mark[]): readonly Mark[] =>
  where.split(/\s+/).map((name) => {
    const found = partRing(marks, name)
    if (!found) throw new Error(`where names ${name}, of which nothing is drawn.`)
    return found
  })

/** Rings that overlap cover what they point at, and each other: one ring goes round the places of both. */
export function ringed(marks: readonly Mark[]): readonly Mark[] {
  const isRing = (mark: Mark): mark is Dot => mark.mark === 'dot' && mark.role === 'fault'
  const rings = marks.filter(isRing)
  for (const one of rings)
    for (const two of rings)
      if (one !== two && apart(one.at, two.at) < one.radius + two.radius) {
        const both = {
          ...one,
          at: between(one.at, two.at),
          radius: Math.max(one.radius, two.radius, OFF + apart(one.at, two.at) / 2),
        }
        return ringed([...marks.filter((mark) => mark !== one && mark !== two), both])
      }
  return marks
}

/** What is marked stands out from dark card. */
export function standingOut(mark: Mark): readonly Mark[] {
  if (mark.role !== 'fault' || mark.mark === 'word') return [mark]
  const [runs, closed] =
    mark.mark === 'dot' ? [[round(mark.at, mark.radius)], false] : [mark.runs, mark.closed]
  return [{ mark: 'path', runs, closed, role: 'halo' }, mark]
}
