// The free corner of a piece lies where three spheres meet, round three points of the pages, with radii as on the
// flat card. Trilateration: any textbook of analytic geometry or surveying. Everything here comes from the numbers
// in the file: page points, and lengths measured on flat card by the plane law of cosines (Euclid II 12-13); no part
// of the kernel is asked but for the corner that is judged. Nested designs: `lengths.ts`, the same at length.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Vec3 } from '../../src/paper/index.ts'
import { compile, parseDesign } from '../../src/paper/index.ts'

const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

const size = (a: Vec3): number => Math.hypot(a[0], a[1], a[2])

const mix = (o: Vec3, ...terms: readonly (readonly [number, Vec3])[]): Vec3 =>
  terms.reduce<Vec3>((sum, [k, v]) => [sum[0] + k * v[0], sum[1] + k * v[1], sum[2] + k * v[2]], o)

const far = (a: Vec3, b: Vec3): number => size(sub(a, b))

/** Both points at distances r from three centres; null where the centres lie too nearly in line to tell. */
function meet(c: readonly [Vec3, Vec3, Vec3], r: readonly [number, number, number]): [Vec3, Vec3] | null {
  const d = far(c[1], c[0])
  if (d < 1) return null
  const ex = mix([0, 0, 0], [1 / d, sub(c[1], c[0])])
  const w = sub(c[2], c[0])
  const i = dot(ex, w)
  const across = mix(w, [-i, ex])
  const j = size(across)
  if (j < 1) return null
  const ey = mix([0, 0, 0], [1 / j, across])
  const ez = cross(ex, ey)
  const x = (r[0] ** 2 - r[1] ** 2 + d * d) / (2 * d)
  const y = (r[0] ** 2 - r[2] ** 2 + i * i + j * j - 2 * i * x) / (2 * j)
  const z2 = r[0] ** 2 - x * x - y * y
  // A root near nought loses half its digits: those openings are left to other tests.
  if (z2 < 1e-2) return null
  const z = Math.sqrt(z2)
  return [mix(c[0], [x, ex], [y, ey], [z, ez]), mix(c[0], [x, ex], [y, ey], [-z, ez])]
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const turns = { side: fc.constantFrom('inside', 'outside'), pop: fc.constantFrom('up', 'down') }

/** The angle or length that lets the left side shut with the right one, in the state the piece is in. */
const closing = (state: { side: string; pop: string }, b1: number, a1: number, b2: number): number =>
  (state.pop === 'up') !== (state.side === 'outside') ? b1 + a1 - b2 : a1 - b1 + b2

/** The third side of a flat triangle, by the plane law of cosines. */
const chord = (a: number, b: number, degrees: number): number =>
  Math.sqrt(a * a + b * b - 2 * a * b * Math.cos((degrees * Math.PI) / 180))

/** A point of the right (1) or left (-1) page of a card that stands at `opening` degrees. */
const onPage = (side: 1 | -1, opening: number, across: number, along: number): Vec3 => {
  const half = (opening * Math.PI) / 360
  return [side * across * Math.sin(half), along, across * Math.cos(half)]
}

interface Case {
  readonly kind: string
  readonly fields: object
  /** Centres and radii for the corner at the ridge that is drawn nearest to the start, or for the tip. */
  readonly spheres: (
    opening: number,
  ) => readonly [readonly [Vec3, Vec3, Vec3], readonly [number, number, number]]
}

/** Two bars of a strip that runs along the gutter: round both ends of the right fold, and one of the left. */
const strip =
  (
    [start, end]: readonly [number, number],
    right: readonly [foot: number, footEnd: number, wall: number, wallEnd: number],
    left: readonly [foot: number, wall: number],
  ): Case['spheres'] =>
  (opening) => [
    [
      onPage(1, opening, right[0], start),
      onPage(1, opening, right[1], end),
      onPage(-1, opening, left[0], start),
    ],
    [right[2], Math.hypot(right[3], end - start), left[1]],
  ]

const cases: fc.Arbitrary<Case> = fc.oneof(
  fc
    .tuple(
      fc.record(turns),
      number(15, 80),
      number(20, 100),
      number(-20, 20),
      number(10, 60),
      number(10, 60),
      number(-4, 4),
    )
    .map(([state, b, a, more, foot, ridge, off]): Case => {
      const other = Math.min(85, Math.max(10, b + (Math.abs(more) < 6 ? 0 : more)))
      // Some designs do not shut flat: they must be right all the same where they move.
      const facet = closing(state, b, a, other) + (Math.abs(off) > 3 ? off : 0)
      const [right, left] = [
        { base: b, facet: a },
        { base: other, facet },
      ]
      const end = (side: 1 | -1, base: number, opening: number): Vec3 => {
        const turn = (base * Math.PI) / 180
        return onPage(side, opening, foot * Math.sin(turn), 100 + foot * Math.cos(turn))
      }
      return {
        kind: 'glued-v-fold',
        fields: { ...state, apex: 100, toward: 1, foot, ridge, right, left },
        spheres: (opening) => [
          [[0, 100, 0], end(1, b, opening), end(-1, other, opening)],
          [ridge, chord(foot, ridge, a), chord(foot, ridge, facet)],
        ],
      }
    })
    .filter(({ fields }) => {
      const { facet } = (fields as { left: { facet: number } }).left
      return facet > 5 && facet < 170
    }),
  fc
    .tuple(fc.record(turns), number(8, 30), number(12, 50), number(8, 30), number(10, 40))
    .map(([state, rightFoot, rightWall, leftFoot, long]): Case => {
      const leftWall = closing(state, rightFoot, rightWall, leftFoot)
      return {
        kind: 'glued-tent',
        fields: { ...state, start: 50, end: 50 + long, rightFoot, rightWall, leftFoot, leftWall },
        spheres: strip([50, 50 + long], [rightFoot, rightFoot, rightWall, rightWall], [leftFoot, leftWall]),
      }
    })
    .filter(({ fields }) => (fields as { leftWall: number }).leftWall > 2),
  fc
    .tuple(number(8, 40), number(5, 30), number(-4, 4), fc.constantFrom(1, -1))
    .map(([size, cut, lean, way]): Case => {
      const run = way * size
      const slit = Math.hypot(cut, lean)
      return {
        kind: 'cut-v-fold',
        fields: { apex: 100, run, cut, lean },
        spheres: (opening) => [
          [
            [0, 100, 0],
            onPage(1, opening, cut, 100 + run + lean),
            onPage(-1, opening, cut, 100 + run + lean),
          ],
          [size, slit, slit],
        ],
      }
    }),
  fc.tuple(number(3, 40), number(3, 40), number(8, 40)).map(
    ([startCut, endCut, long]): Case => ({
      kind: 'cut-trapezoid',
      fields: { start: 50, end: 50 + long, startCut, endCut },
      // A strip's corner was on the gutter before it was pushed through: as far from each fold as the cut is deep.
      spheres: strip([50, 50 + long], [startCut, endCut, startCut, endCut], [startCut, startCut]),
    }),
  ),
  fc.tuple(number(3, 40), number(3, 40), number(8, 40)).map(
    ([left, right, long]): Case => ({
      kind: 'cut-layer',
      fields: { start: 50, end: 50 + long, left, right },
      // The strip is as wide as both cuts are deep; its ridge lies the other cut's depth from either fold.
      spheres: strip([50, 50 + long], [right, right, left, left], [left, right]),
    }),
  ),
)

test('the free corner of two thousand pieces is where three spheres meet, within 1e-6 mm', () => {
  const seen = new Map<string, number>()
  fc.assert(
    fc.property(cases, number(3, 177), ({ kind, fields, spheres }, opening) => {
      const design = parseDesign({
        hingebook: 1,
        title: 'Random',
        card: { width: 297, height: 420 },
        mechanisms: [{ id: 'owl', on: 'gutter', kind, ...fields }],
      })
      const { creases, stopped } = compile(design)(opening)
      const both = meet(...spheres(opening))
      if (stopped.length > 0 || !both) return
      seen.set(kind, (seen.get(kind) ?? 0) + 1)
      const ridge = creases['owl/ridge']
      const stands = (/v-fold/.test(kind) ? ridge?.end : ridge?.start) ?? [9, 9, 9]
      // What is cut from the card and pushed through is the corner farther out; the other one never left the gutter.
      const [outer, inner] = both[0][2] > both[1][2] ? both : [both[1], both[0]]
      const off = kind.startsWith('cut-')
        ? far(outer, stands)
        : Math.min(far(outer, stands), far(inner, stands))
      expect(off).toBeLessThan(1e-6)
    }),
    { numRuns: 2000 },
  )
  // Most corners can be told by spheres: the check is not an empty one.
  expect(seen.size).toBe(5)
  for (const count of seen.values()) expect(count).toBeGreaterThan(150)
})

test('popped and lying down are the two meeting points, one each', () => {
  fc.assert(
    fc.property(number(20, 80), number(5, 60), number(20, 170), (base, more, opening) => {
      const facet = base + more
      const tip = (pop: 'up' | 'down'): Vec3 => {
        const design = parseDesign({
          hingebook: 1,
          title: 'Moth',
          card: { width: 297, height: 420 },
          mechanisms: [
            {
              id: 'moth',
              kind: 'glued-v-fold',
              on: 'gutter',
              apex: 200,
              toward: 1,
              base,
              facet,
              foot: 60,
              ridge: 50,
              pop,
            },
          ],
        })
        return compile(design)(opening).creases['moth/ridge']?.end as Vec3
      }
      const half = (opening * Math.PI) / 360
      const along = (sign: 1 | -1): Vec3 => {
        const [sin, cos] = [60 * Math.sin((base * Math.PI) / 180), 60 * Math.cos((base * Math.PI) / 180)]
        return [sign * sin * Math.sin(half), 200 + cos, sin * Math.cos(half)]
      }
      const side = chord(60, 50, facet)
      const both = meet([[0, 200, 0], along(-1), along(1)], [50, side, side])
      fc.pre(both !== null)
      const [a, b] = both as [Vec3, Vec3]
      const [up, down] = [tip('up'), tip('down')]
      // Popped is the one further out of the card.
      const [outer, inner] = a[2] > b[2] ? [a, b] : [b, a]
      expect(far(up, outer)).toBeLessThan(1e-6)
      expect(far(down, inner)).toBeLessThan(1e-6)
    }),
    { numRuns: 300 },
  )
})
