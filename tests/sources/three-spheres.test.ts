import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Design, Flat, Vec3 } from '../../src/paper/index.ts'
import { compile, parseDesign } from '../../src/paper/index.ts'

/**
 * An independent pose for every glued and cut mechanism: the free corner lies where three spheres meet,
 * round three known points, with radii taken from the flat piece; for parallel kinds where two circles
 * meet. A. Glassner, Interactive Pop-Up Card Design, parts 1 and 2, IEEE CG&A 22 (2002) [found: opening
 * pages]; trilateration as in any geometry text. It knows lengths alone, and no angle of ours.
 */
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

const flatFar = (a: Flat, b: Flat): number => Math.hypot(a[0] - b[0], a[1] - b[1])

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

const part = fc.oneof(
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
    .map(([state, b, a, more, foot, ridge, off]) => {
      const other = Math.min(85, Math.max(10, b + (Math.abs(more) < 6 ? 0 : more)))
      // Some designs do not shut flat: they must be right all the same where they move.
      const facet = closing(state, b, a, other) + (Math.abs(off) > 3 ? off : 0)
      return {
        kind: 'glued-v-fold',
        ...state,
        foot,
        ridge,
        right: { base: b, facet: a },
        left: { base: other, facet },
        toward: 1,
      }
    })
    .filter(({ left }) => left.facet > 5 && left.facet < 170),
  fc
    .tuple(fc.record(turns), number(8, 30), number(12, 50), number(8, 30))
    .map(([state, rightFoot, rightWall, leftFoot]) => ({
      kind: 'glued-tent',
      ...state,
      rightFoot,
      rightWall,
      leftFoot,
      leftWall: closing(state, rightFoot, rightWall, leftFoot),
    }))
    .filter(({ leftWall }) => leftWall > 2),
  fc.record({ kind: fc.constant('cut-v-fold'), run: number(8, 40), cut: number(5, 30), lean: number(-4, 4) }),
  fc.record({ kind: fc.constant('cut-trapezoid'), startCut: number(3, 20), endCut: number(3, 20) }),
  fc.record({ kind: fc.constant('cut-layer'), left: number(3, 20), right: number(3, 20) }),
)

/** Up to 12 mechanisms, each on the gutter or on a crease of an earlier one. */
const designs = fc
  .array(fc.tuple(part, fc.nat(40), number(2, 30)), { minLength: 1, maxLength: 12 })
  .map((parts): Design => {
    const creases = ['gutter']
    const mechanisms = parts.map(([shape, where, at], k) => {
      const id = `m${k}`
      const on = creases[where % creases.length]
      const place = /v-fold/.test(shape.kind) ? { apex: at } : { start: at, end: at + 12 }
      creases.push(`${id}/ridge`, `${id}/left`, `${id}/right`)
      return { id, on, ...shape, ...place }
    })
    return parseDesign({ hingebook: 1, title: 'Random', card: { width: 297, height: 420 }, mechanisms })
  })

test('two thousand random designs stand where spheres meet, within 1e-6 mm', () => {
  let seen = 0
  fc.assert(
    fc.property(designs, number(3, 177), (design, opening) => {
      const poser = compile(design)
      const pose = poser(opening)
      const { model } = poser
      // What is held at its stop has let go of one joint, and all that sits on it hangs in the air.
      const held = new Set(pose.stopped)
      for (const { id, on } of design.mechanisms) if (held.has(on.split('/')[0] ?? '')) held.add(id)
      model.builds.forEach(({ mechanism, host, firstCrease, firstPanel }) => {
        if (held.has(mechanism.id)) return
        const [left, right] = [firstCrease + 1, firstCrease + 2].map((k) => model.creases[k])
        const hosts = [model.creases[host]?.left.panel, model.creases[host]?.right.panel]
        // The two joints, read off the host's own panels: apex and both far ends, or both ends of each.
        const joint = (side: 'left' | 'right') => {
          const crease = side === 'left' ? left : right
          const hang = crease && hosts.includes(crease[side].panel) ? crease[side] : undefined
          if (!crease || !hang) throw new Error('a joint hangs on its host')
          const at = (along: number): Vec3 => {
            const { origin, run } = hang.lay
            return poser.lift(hang.panel, [origin[0] + along * run[0], origin[1] + along * run[1]])
          }
          return { near: at(0), far: at(crease.length) }
        }
        const [l, r] = [joint('left'), joint('right')]
        for (const [side, panel] of [
          ['left', firstPanel],
          ['right', firstPanel + 1],
        ] as const) {
          const outline = model.panels[panel]?.outline ?? []
          const [tip, end] = [outline[1] as Flat, outline.at(-1) as Flat]
          const stands = (pose.panels[`${mechanism.id}/${side}`] ?? [])[1] as Vec3
          const wedge = /v-fold/.test(mechanism.kind)
          const other = model.panels[panel === firstPanel ? panel + 1 : panel - 1]?.outline ?? []
          const [here, there] = side === 'left' ? [l, r] : [r, l]
          const far1 = wedge ? end : (outline[2] as Flat)
          const far2 = wedge ? (other.at(-1) as Flat) : (other[2] as Flat)
          const far0 = wedge ? (outline[0] as Flat) : (outline[3] as Flat)
          const centres: [Vec3, Vec3, Vec3] = [here.near, here.far, there.far]
          const radii: [number, number, number] = [
            flatFar(tip, far0),
            flatFar(tip, far1),
            flatFar(wedge ? tip : (other[1] as Flat), far2),
          ]
          const both = meet(centres, radii)
          if (!both) continue
          seen++
          expect(Math.min(far(both[0], stands), far(both[1], stands))).toBeLessThan(1e-6)
        }
      })
    }),
    { numRuns: 2000 },
  )
  // Most corners can be told by spheres: the check is not an empty one.
  expect(seen).toBeGreaterThan(4000)
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
      const chord = Math.sqrt(60 ** 2 + 50 ** 2 - 2 * 60 * 50 * Math.cos((facet * Math.PI) / 180))
      const both = meet([[0, 200, 0], along(-1), along(1)], [50, chord, chord])
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
