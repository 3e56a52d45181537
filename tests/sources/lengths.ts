// A second kernel that knows only lengths: every new point is where three spheres meet, round three points whose
// places are known. It reads the design file by its written rules (names, frames, which part of a page a piece
// shuts against) and shares no formula with the kernel; sines and cosines serve to draw angles on flat card, and
// to open the pages. Three spheres round the apex and the two joint ends: trilateration (analytic geometry,
// surveying; any textbook).
//
// It runs in ordinary floats, or in as many digits as one likes (decimal.js, MIT), where the spheres all but
// coincide: shut, flat open, at a stop.
import { Decimal } from 'decimal.js'
import type { Design, Flat, Vec3 } from '../../src/paper/index.ts'

/** The few operations the reference needs. */
export interface Digits<T> {
  of(x: number): T
  add(a: T, b: T): T
  sub(a: T, b: T): T
  mul(a: T, b: T): T
  div(a: T, b: T): T
  sqrt(a: T): T
  /** Sine and cosine of an angle in degrees. */
  sin(degrees: T): T
  cos(degrees: T): T
  number(a: T): number
  /** Spheres that meet at less than this over the plane of their centres, or round a triangle this thin, are blurred. */
  readonly blur: { readonly height: number; readonly thin: number }
}

export const floats: Digits<number> = {
  of: (x) => x,
  add: (a, b) => a + b,
  sub: (a, b) => a - b,
  mul: (a, b) => a * b,
  div: (a, b) => a / b,
  sqrt: Math.sqrt,
  sin: (a) => Math.sin((a * Math.PI) / 180),
  cos: (a) => Math.cos((a * Math.PI) / 180),
  number: (a) => a,
  blur: { height: 1e-3, thin: 1e-3 },
}

const Long = Decimal.clone({ precision: 60 })

const radians = Long.acos(-1).div(180)

/** Sixty digits. */
export const sixtyDigits: Digits<Decimal> = {
  of: (x) => new Long(x),
  add: (a, b) => a.add(b),
  sub: (a, b) => a.sub(b),
  mul: (a, b) => a.mul(b),
  div: (a, b) => a.div(b),
  sqrt: (a) => a.sqrt(),
  sin: (a) => Long.sin(a.mul(radians)),
  cos: (a) => Long.cos(a.mul(radians)),
  number: (a) => a.toNumber(),
  blur: { height: 0, thin: 1e-32 },
}

type Point<T> = readonly [T, T, T]

type FlatPoint<T> = readonly [across: T, along: T]

/** A crease as it lies in a panel. */
interface Lay<T> {
  readonly panel: string
  readonly origin: FlatPoint<T>
  readonly run: FlatPoint<T>
  readonly off: FlatPoint<T>
}

/** A panel in space: its flat origin, and its two flat directions. */
interface Placed<T> {
  readonly at: Point<T>
  readonly across: Point<T>
  readonly along: Point<T>
}

interface Crease<T> {
  readonly left: Lay<T>
  readonly right: Lay<T>
  /** 1: looking along the crease with its inside up, its left panel lies on the left hand; -1: on the right. */
  readonly hand: 1 | -1
}

/** How one mechanism's spheres met. */
export interface Meeting {
  readonly id: string
  /**
   * Height of the tip over the plane of the three centres by how far it is from them; 0: it lies in that plane,
   * both states are one. Below 0: the spheres do not meet, by so much.
   */
  readonly height: number
  /** How thin the triangle of the three centres is: its height by its longest side. */
  readonly thin: number
}

export interface Reference {
  /** Where a flat point of a panel is; undefined if the reference could not place that panel. */
  lift(panel: string, flat: Flat): Vec3 | undefined
  /** Start, direction, and across directions of a crease, each as its left and as its right panel has it. */
  crease(
    name: string,
  ): { readonly origin: Vec3; readonly run: Vec3; readonly off: Vec3; readonly front: Vec3 }[] | undefined
  readonly meetings: readonly Meeting[]
  /** Mechanisms that cannot be at this opening. */
  readonly refused: ReadonlySet<string>
  /** Mechanisms that it did not place: refused, blurred, or on one of those. */
  readonly missing: ReadonlySet<string>
}

/** Which of the two points where three spheres meet: above (1) or below (-1) the triangle of the centres, counted round. */
type Above = 1 | -1

/** Angles are drawn with arms this long, mm. */
const ARM = 100

/** Less than this is meeting in the plane: angles in the file add up to rounding alone. */
const NOTHING = 1e-7

class Refused extends Error {}

/** The spheres meet, but these digits do not tell where. */
class Blurred extends Error {}

/** Builds a design at an opening (degrees; or at what is missing to 180) from lengths alone. */
export function fromLengths<T>(
  d: Digits<T>,
  design: Design,
  opening: { readonly open: number } | { readonly missing: number },
): Reference {
  const zero = d.of(0)
  const one = d.of(1)
  const less = (a: T): T => d.sub(zero, a)
  const vector = {
    add: (a: Point<T>, b: Point<T>): Point<T> => [d.add(a[0], b[0]), d.add(a[1], b[1]), d.add(a[2], b[2])],
    sub: (a: Point<T>, b: Point<T>): Point<T> => [d.sub(a[0], b[0]), d.sub(a[1], b[1]), d.sub(a[2], b[2])],
    times: (a: Point<T>, k: T): Point<T> => [d.mul(a[0], k), d.mul(a[1], k), d.mul(a[2], k)],
    dot: (a: Point<T>, b: Point<T>): T =>
      d.add(d.add(d.mul(a[0], b[0]), d.mul(a[1], b[1])), d.mul(a[2], b[2])),
    cross: (a: Point<T>, b: Point<T>): Point<T> => [
      d.sub(d.mul(a[1], b[2]), d.mul(a[2], b[1])),
      d.sub(d.mul(a[2], b[0]), d.mul(a[0], b[2])),
      d.sub(d.mul(a[0], b[1]), d.mul(a[1], b[0])),
    ],
  }
  const { add, sub, times, dot, cross } = vector
  const size = (a: Point<T>): T => d.sqrt(dot(a, a))
  const unit = (a: Point<T>): Point<T> => times(a, d.div(one, size(a)))
  /** The part of `a` square to unit `u`, made a unit. */
  const squareTo = (a: Point<T>, u: Point<T>): Point<T> => unit(sub(a, times(u, dot(a, u))))
  const flat = (across: number, along: number): FlatPoint<T> => [d.of(across), d.of(along)]
  const between = (a: FlatPoint<T>, b: FlatPoint<T>): T => {
    const [x, y] = [d.sub(a[0], b[0]), d.sub(a[1], b[1])]
    return d.sqrt(d.add(d.mul(x, x), d.mul(y, y)))
  }
  /** A flat direction at an angle from "along", towards "across". */
  const ray = (degrees: number): FlatPoint<T> => [d.sin(d.of(degrees)), d.cos(d.of(degrees))]
  const far = (p: FlatPoint<T>, k: number): FlatPoint<T> => [d.mul(p[0], d.of(k)), d.mul(p[1], d.of(k))]

  const meetings: Meeting[] = []
  const missing = new Set<string>()
  const refused = new Set<string>()
  let now = ''

  function spheres(centres: readonly Point<T>[], radii: readonly T[], above: Above): Point<T> {
    const [a, b, c] = centres as [Point<T>, Point<T>, Point<T>]
    const [r, s, t] = radii as [T, T, T]
    const ab = size(sub(b, a))
    const ex = times(sub(b, a), d.div(one, ab))
    const ac = sub(c, a)
    const i = dot(ex, ac)
    const square = sub(ac, times(ex, i))
    const j = size(square)
    const ey = times(square, d.div(one, j))
    const two = d.of(2)
    const x = d.div(d.add(d.sub(d.mul(r, r), d.mul(s, s)), d.mul(ab, ab)), d.mul(two, ab))
    const y = d.sub(
      d.div(d.add(d.sub(d.mul(r, r), d.mul(t, t)), d.add(d.mul(i, i), d.mul(j, j))), d.mul(two, j)),
      d.mul(d.div(i, j), x),
    )
    const h2 = d.sub(d.mul(r, r), d.add(d.mul(x, x), d.mul(y, y)))
    const off = d.number(h2)
    const height = (Math.sign(off) * Math.sqrt(Math.abs(off))) / d.number(r)
    const thin = Math.min(d.number(j), d.number(ab)) / Math.max(d.number(ab), d.number(size(ac)))
    meetings.push({ id: now, height, thin })
    if (!(thin >= d.blur.thin)) throw new Blurred()
    if (height <= -Math.max(d.blur.height, NOTHING)) throw new Refused()
    if (height < d.blur.height) throw new Blurred()
    const h = off > 0 ? d.sqrt(h2) : zero
    const p = add(a, add(times(ex, x), times(ey, y)))
    return add(p, times(cross(ex, ey), above > 0 ? h : less(h)))
  }

  const panels = new Map<string, Placed<T>>()
  const creases = new Map<string, Crease<T>>()
  const lift = (panel: string, [across, along]: FlatPoint<T>): Point<T> => {
    const { at, across: v, along: u } = panels.get(panel) as Placed<T>
    return add(at, add(times(v, across), times(u, along)))
  }
  const turned = (panel: string, [across, along]: FlatPoint<T>): Point<T> => {
    const { across: v, along: u } = panels.get(panel) as Placed<T>
    return add(times(v, across), times(u, along))
  }
  const laid = (lay: Lay<T>, [across, along]: FlatPoint<T>): FlatPoint<T> => [
    d.add(lay.origin[0], d.add(d.mul(lay.off[0], across), d.mul(lay.run[0], along))),
    d.add(lay.origin[1], d.add(d.mul(lay.off[1], across), d.mul(lay.run[1], along))),
  ]
  const within = (lay: Lay<T>, [across, along]: FlatPoint<T>): FlatPoint<T> => [
    d.add(d.mul(lay.off[0], across), d.mul(lay.run[0], along)),
    d.add(d.mul(lay.off[1], across), d.mul(lay.run[1], along)),
  ]
  /** A lay given in the coordinates of one side of a crease, told in those of the panel there. */
  const onPanel = (host: Lay<T>, inner: Omit<Lay<T>, 'panel'>): Lay<T> => ({
    panel: host.panel,
    origin: laid(host, inner.origin),
    run: within(host, inner.run),
    off: within(host, inner.off),
  })
  const onSide = (host: Lay<T>, point: FlatPoint<T>): Point<T> => lift(host.panel, laid(host, point))

  // The pages, by one angle.
  const half = 'open' in opening ? d.div(d.of(opening.open), d.of(2)) : d.div(d.of(opening.missing), d.of(2))
  const [S, C] = 'open' in opening ? [d.sin(half), d.cos(half)] : [d.cos(half), d.sin(half)]
  const along: Point<T> = [zero, one, zero]
  panels.set('page/right', { at: [zero, zero, zero], across: [S, zero, C], along })
  panels.set('page/left', { at: [zero, zero, zero], across: [less(S), zero, C], along })
  const plain = { origin: flat(0, 0), run: flat(0, 1), off: flat(1, 0) }
  creases.set('gutter', {
    left: { panel: 'page/left', ...plain },
    right: { panel: 'page/right', ...plain },
    hand: 1,
  })

  /** The two facets of a mechanism, hung on its ridge, each with one more point to say how it stands. */
  function facets(
    id: string,
    tip: Point<T>,
    ridge: Point<T>,
    right: Point<T>,
    left: Point<T>,
    hand: Crease<T>['hand'],
  ): void {
    for (const [side, point] of [
      ['right', right],
      ['left', left],
    ] as const)
      panels.set(`${id}/${side}`, { at: tip, along: ridge, across: squareTo(sub(point, tip), ridge) })
    creases.set(`${id}/ridge`, {
      left: { panel: `${id}/left`, ...plain },
      right: { panel: `${id}/right`, ...plain },
      hand,
    })
  }
  /** The creases between facets and host, given as they lie on the host's sides and on the facets. */
  function joints(
    id: string,
    host: Crease<T>,
    hand: Crease<T>['hand'],
    lay: (side: 'left' | 'right') => { page: Omit<Lay<T>, 'panel'>; own: Omit<Lay<T>, 'panel'> },
  ): void {
    const [l, r] = [lay('left'), lay('right')]
    creases.set(`${id}/left`, {
      left: onPanel(host.left, l.page),
      right: { panel: `${id}/left`, ...l.own },
      hand,
    })
    creases.set(`${id}/right`, {
      left: { panel: `${id}/right`, ...r.own },
      right: onPanel(host.right, r.page),
      hand,
    })
  }

  const ownLay = (degrees: number): Omit<Lay<T>, 'panel'> => {
    const [sin, cos] = ray(degrees)
    return { origin: flat(0, 0), run: [sin, cos], off: [less(cos), sin] }
  }

  for (const m of design.mechanisms) {
    now = m.id
    const owner = m.on.split('/')[0] ?? ''
    if (missing.has(owner)) {
      missing.add(m.id)
      continue
    }
    try {
      if (m.kind === 'rider') {
        panels.set(`${m.id}/face`, panels.get(m.on) as Placed<T>)
        continue
      }
      const host = creases.get(m.on) as Crease<T>
      const turn = turnOf(host)
      /** Both hands change where it is seen from its other end. */
      const seen =
        (m.kind === 'cut-v-fold' ? Math.sign(m.run) : m.kind === 'glued-v-fold' ? m.toward : 1) * host.hand
      const four = m.kind === 'glued-v-fold' || m.kind === 'glued-tent'
      // A fold that is bent the other way (a piece that lies still has such joints) hosts no four-bar.
      if (four && Math.abs(turn) < d.blur.thin) throw new Blurred()
      if (four && turn < -1e-8) throw new Refused()
      // As good as shut, and bent the other way: neither here nor there.
      if (four && turn < 0) throw new Blurred()
      switch (m.kind) {
        case 'cut-v-fold': {
          const end: FlatPoint<T> = flat(m.cut, m.apex + m.run + (m.lean ?? 0))
          const apex = onSide(host.right, flat(0, m.apex))
          const foot = flat(0, m.apex + m.run)
          const [right, left] = [onSide(host.right, end), onSide(host.left, end)]
          const slit = between(end, foot)
          const radii = [d.of(Math.abs(m.run)), slit, slit]
          // One of the two is the slit's foot where it was; the ridge is the other.
          const tip = otherThan(onSide(host.right, foot), [apex, right, left], radii)
          facets(m.id, apex, unit(sub(tip, apex)), right, left, hand(-seen))
          const outward = m.run + (m.lean ?? 0)
          const long = d.sqrt(d.add(d.mul(d.of(outward), d.of(outward)), d.mul(d.of(m.cut), d.of(m.cut))))
          const [sin, cos] = [d.div(d.of(m.cut), long), d.div(d.of(outward), long)]
          const toward = m.run > 0 ? one : less(one)
          joints(m.id, host, hand(seen), () => ({
            page: {
              origin: flat(0, m.apex),
              run: [sin, cos],
              off: [d.mul(cos, toward), less(d.mul(sin, toward))],
            },
            own: { origin: flat(0, 0), run: [sin, d.mul(cos, toward)], off: [less(d.mul(cos, toward)), sin] },
          }))
          break
        }
        case 'cut-layer':
        case 'cut-trapezoid': {
          const [l0, r0, l1, r1] =
            m.kind === 'cut-layer'
              ? [m.left ?? 0, m.right ?? m.left ?? 0, m.left ?? 0, m.right ?? m.left ?? 0]
              : [m.startCut, m.startCut, m.endCut, m.endCut]
          const [left, right] = [onSide(host.left, flat(l0, m.start)), onSide(host.right, flat(r0, m.start))]
          const [leftEnd, rightEnd] = [
            onSide(host.left, flat(l1, m.end)),
            onSide(host.right, flat(r1, m.end)),
          ]
          // Of a layer the facets are as wide as the other page's cut is deep; seen from the ridge's start.
          const [wideL, wideR] = m.kind === 'cut-layer' ? [r0, l0] : [l0, r0]
          const long = m.end - m.start
          const gutter = onSide(host.right, flat(0, m.start))
          const farR = between(flat(0, 0), flat(m.kind === 'cut-layer' ? wideR : r1, long))
          const start = otherThan(gutter, [left, right, rightEnd], [d.of(wideL), d.of(wideR), farR])
          const end = otherThan(
            onSide(host.right, flat(0, m.end)),
            [leftEnd, rightEnd, right],
            [
              d.of(m.kind === 'cut-layer' ? r1 : l1),
              d.of(m.kind === 'cut-layer' ? l1 : r1),
              between(flat(0, long), flat(wideR, 0)),
            ],
          )
          facets(m.id, start, unit(sub(end, start)), right, left, hand(-seen))
          const [u, v] = [d.of(m.kind === 'cut-layer' ? 0 : r1 - r0), d.of(long)]
          const run = d.sqrt(d.add(d.mul(u, u), d.mul(v, v)))
          const [sin, cos] = [d.div(u, run), d.div(v, run)]
          joints(m.id, host, hand(seen), (side) => ({
            page: {
              origin: flat(side === 'left' ? l0 : r0, m.start),
              run: [sin, cos],
              off: [cos, less(sin)],
            },
            own: { origin: flat(side === 'left' ? wideL : wideR, 0), run: [sin, cos], off: [less(cos), sin] },
          }))
          break
        }
        case 'glued-v-fold': {
          const end = (base: number): FlatPoint<T> => {
            const [x, y] = far(ray(base), ARM)
            return [x, d.add(d.of(m.apex), m.toward > 0 ? y : less(y))]
          }
          const apex = onSide(host.right, flat(0, m.apex))
          const [right, left] = [onSide(host.right, end(m.right.base)), onSide(host.left, end(m.left.base))]
          const radius = (facet: number): T => between(far(ray(facet), ARM), flat(0, ARM))
          const tip = spheres(
            [apex, right, left],
            [d.of(ARM), radius(m.right.facet), radius(m.left.facet)],
            aboveOf(m, seen),
          )
          facets(m.id, apex, unit(sub(tip, apex)), right, left, ridgeHand(m, seen))
          const away = shutsBeyond(m) ? one : less(one)
          const toward = m.toward > 0 ? one : less(one)
          joints(m.id, host, jointHand(m, seen), (side) => {
            const [sin, cos] = ray(m[side].base)
            return {
              page: {
                origin: flat(0, m.apex),
                run: [sin, d.mul(toward, cos)],
                off: [d.mul(away, cos), less(d.mul(d.mul(away, toward), sin))],
              },
              own: ownLay(m[side].facet),
            }
          })
          break
        }
        case 'glued-tent': {
          const foot = (side: 'left' | 'right', more: number) =>
            onSide(host[side], flat(side === 'left' ? m.leftFoot : m.rightFoot, m.start + more))
          const [right, left, beyond] = [foot('right', 0), foot('left', 0), foot('right', ARM)]
          const start = spheres(
            [right, left, beyond],
            [d.of(m.rightWall), d.of(m.leftWall), between(flat(m.rightWall, 0), flat(0, ARM))],
            // Counted round right, left, beyond: the tent's plane is seen as the V-fold's apex end is.
            aboveOf(m, -seen),
          )
          facets(m.id, start, unit(sub(beyond, right)), right, left, ridgeHand(m, seen))
          const away = shutsBeyond(m) ? 1 : -1
          joints(m.id, host, jointHand(m, seen), (side) => ({
            page: {
              origin: flat(side === 'left' ? m.leftFoot : m.rightFoot, m.start),
              run: flat(0, 1),
              off: flat(away, 0),
            },
            own: {
              origin: flat(side === 'left' ? m.leftWall : m.rightWall, 0),
              run: flat(0, 1),
              off: flat(-1, 0),
            },
          }))
          break
        }
        case 'floating-layer': {
          // Lengths alone leave a platform on walls free to sway: the file says that its crease stays over the host's.
          const [r, l] = (['right', 'left'] as const).map((side) => ({
            across: turned(host[side].panel, host[side].off),
            along: turned(host[side].panel, host[side].run),
          })) as [{ across: Point<T>; along: Point<T> }, { across: Point<T>; along: Point<T> }]
          const upright = bisector(r, l, turn < 0 ? hand(-host.hand) : host.hand)
          const up = times(upright, d.of(m.height))
          const start = add(onSide(host.right, flat(0, m.start)), up)
          panels.set(`${m.id}/right`, { at: start, across: r.across, along: r.along })
          panels.set(`${m.id}/left`, { at: start, across: l.across, along: l.along })
          creases.set(`${m.id}/ridge`, {
            left: { panel: `${m.id}/left`, ...plain },
            right: { panel: `${m.id}/right`, ...plain },
            hand: host.hand,
          })
          m.walls.forEach((across, k) => {
            const side = across < 0 ? 'left' : 'right'
            panels.set(`${m.id}/wall-${k + 1}`, {
              at: onSide(host[side], flat(Math.abs(across), m.start)),
              across: upright,
              along: r.along,
            })
          })
          break
        }
      }
    } catch (error) {
      if (error instanceof Refused) refused.add(m.id)
      else if (!(error instanceof Blurred)) throw error
      missing.add(m.id)
    }
  }

  /** The one of two points that is not where the paper was before the cut: on the other side of the centres' plane. */
  function otherThan(before: Point<T>, centres: readonly Point<T>[], radii: readonly T[]): Point<T> {
    const [a, b, c] = centres as [Point<T>, Point<T>, Point<T>]
    const was = d.number(dot(cross(sub(b, a), sub(c, a)), sub(before, a)))
    return spheres(centres, radii, was > 0 ? -1 : 1)
  }

  /** Half-way between two panels of a crease, on its inside. */
  function bisector(
    r: { across: Point<T>; along: Point<T> },
    l: { across: Point<T>; along: Point<T> },
    seen: Crease<T>['hand'],
  ): Point<T> {
    const sum = add(r.across, l.across)
    // The panels' inner sides look along across x along on the right, along x across on the left.
    const inner = add(cross(r.across, r.along), cross(l.along, l.across))
    return d.number(dot(sum, sum)) > 1 ? unit(sum) : times(unit(inner), d.of(seen))
  }

  /** The angle between the two panels of a crease, degrees: below 0 where they are bent the other way. */
  function turnOf(host: Crease<T>): number {
    const [r, l] = [turned(host.right.panel, host.right.off), turned(host.left.panel, host.left.off)]
    const run = turned(host.right.panel, host.right.run)
    const sine = d.number(dot(cross(l, r), run))
    return (host.hand * Math.atan2(sine, d.number(dot(l, r))) * 180) / Math.PI
  }

  const plainPoint = (p: Point<T>): Vec3 => [d.number(p[0]), d.number(p[1]), d.number(p[2])]
  return {
    meetings,
    refused,
    missing,
    lift: (panel, [across, along]) =>
      panels.has(panel) ? plainPoint(lift(panel, flat(across, along))) : undefined,
    crease: (name) => {
      const found = creases.get(name)
      return found && panels.has(found.left.panel) && panels.has(found.right.panel)
        ? ([found.left, found.right] as const).map((lay) => ({
            origin: plainPoint(lift(lay.panel, lay.origin)),
            run: plainPoint(turned(lay.panel, lay.run)),
            off: plainPoint(turned(lay.panel, lay.off)),
            front: plainPoint(cross(turned(lay.panel, lay.off), turned(lay.panel, lay.run))),
          }))
        : undefined
    },
  }
}

type State = { readonly pop?: 'up' | 'down'; readonly side?: 'inside' | 'outside' }

/** What the file says: a popped piece inside the fold, or one lying still off its back, shuts against the page beyond its joints. */
const shutsBeyond = ({ pop = 'up', side = 'inside' }: State): boolean =>
  (pop === 'up') === (side === 'inside')

/**
 * Which of the two points is the popped state, told from one shape that everybody can build and look at: base 45,
 * facet 60, card half open, apex at the reader's end. The popped ridge is the higher of the two. That side of the
 * plane of the three centres is kept from there on: to change it the ridge would have to go through that plane,
 * where both states are one (it stops there). Off the back, and with the apex at the other end, everything is
 * seen in a mirror.
 */
function aboveOf({ pop = 'up', side = 'inside' }: State, seen: number): Above {
  return ((pop === 'up' ? 1 : -1) * (side === 'inside' ? 1 : -1) * seen * POPPED) as Above
}

const hand = (seen: number): 1 | -1 => (seen > 0 ? 1 : -1)

/** A ridge bends against its host, a valley if it lies still; off the back it is all seen in a mirror. */
const ridgeHand = ({ pop = 'up', side = 'inside' }: State, seen: number): 1 | -1 =>
  hand((pop === 'up' ? -1 : 1) * (side === 'inside' ? 1 : -1) * seen)

/** A joint of a piece that lies still shuts to the other side. */
const jointHand = ({ pop = 'up' }: State, seen: number): 1 | -1 => hand((pop === 'up' ? 1 : -1) * seen)

/** Found by looking at both points of that shape. */
const POPPED: Above = (() => {
  const rad = Math.PI / 180
  const [s, c] = [Math.sin(45 * rad), Math.cos(45 * rad)]
  // Apex at the origin; joint ends at 45 degrees on pages that stand at 45 degrees to either side.
  const [right, left]: [Vec3, Vec3] = [
    [s * s, c, s * c],
    [-s * s, c, s * c],
  ]
  // Base 45, facet 60, opening 90: the popped ridge stands square to the gutter (see glued.test.ts, same source).
  const up: Vec3 = [0, 0, 1]
  const normal: Vec3 = [
    right[1] * left[2] - right[2] * left[1],
    right[2] * left[0] - right[0] * left[2],
    right[0] * left[1] - right[1] * left[0],
  ]
  return normal[0] * up[0] + normal[1] * up[1] + normal[2] * up[2] > 0 ? 1 : -1
})()
