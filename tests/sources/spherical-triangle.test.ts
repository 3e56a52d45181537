// The spherical cosine rule, in the kernel's poses and in its own functions, against printed triangles.

import { geoArea, geoDistance } from 'd3'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../src/paper/index.ts'
import { compile, poseAt } from '../../src/paper/index.ts'
import { design, designs, openings, runs, vFold } from '../paper/shared/designs.ts'
import { between, DEG, dihedral, RAD } from '../paper/shared/space.ts'
import { creaseOf, marked, openTo } from './marked.ts'
import type { Triangle } from './triangles.ts'
import { dms, solids, triangles } from './triangles.ts'

const titleOf = ({ name, source, mark }: Triangle): string => `${name} (${source} [${mark}])`

/** How much an error of the three sides grows in the angle opposite the first: the rule's own derivatives. */
const growth = (a: number, b: number, c: number, A: number): number =>
  1 + (3 * Math.sin(a * RAD)) / (Math.sin(b * RAD) * Math.sin(c * RAD) * Math.sin(A * RAD))

test('at least six of the printed triangles were read in a published copy', () => {
  expect(triangles.filter(({ mark }) => mark === 'found').length).toBeGreaterThanOrEqual(6)
})

describe('three sides given: a V-fold glued to a card lying open closes the triangle', () => {
  // Flat open, the pages between the two joints are one straight side; the two facets are the others.
  const closed = (a: number, b: number, c: number) => {
    const [left, right] = [
      { base: a / 2, facet: b },
      { base: a / 2, facet: c },
    ]
    const moth = { id: 'moth', kind: 'glued-v-fold', on: 'gutter', apex: 70, toward: 1, foot: 40, ridge: 40 }
    const { creases, stopped } = poseAt(design([{ ...moth, left, right }]), 180)
    const angle = (part: string): number => creases[`moth/${part}`]?.angle ?? Number.NaN
    // A joint's angle is measured outside, towards the page's edge, where it is 0 when shut.
    return { A: angle('ridge'), B: 180 - angle('right'), C: 180 - angle('left'), stopped }
  }

  // Polaris, 0.7 degrees from the pole, would need a facet narrower than a file may ask for.
  const wide = triangles.filter(({ b, c }) => Math.min(b, c) >= 1)

  test('two triangles alone are too narrow for this, both with Polaris', () => {
    const narrow = triangles.filter((t) => !wide.includes(t))
    expect(narrow.map(({ name }) => name)).toEqual(['Dubhe and Polaris', 'Merak and Polaris'])
  })

  test.each(wide.map((t) => [titleOf(t), t] as const))('%s', (_, triangle) => {
    const { a, b, c, A, B, C, within } = triangle
    const found = closed(a, b, c)
    expect(found.stopped).toEqual([])
    expect(Math.abs(found.A - A)).toBeLessThan(within * growth(a, b, c, A))
    if (B !== undefined) expect(Math.abs(found.B - B)).toBeLessThan(within * growth(b, c, a, B))
    if (C !== undefined) expect(Math.abs(found.C - C)).toBeLessThan(within * growth(c, a, b, C))
  })

  // Coxeter, Regular Polytopes, table I [memory]; the closed forms are exact.
  test.each(solids)('the faces of a $name meet at $printed degrees', ({ sides, angle, printed }) => {
    const [a, b, c] = sides
    expect(Math.abs(closed(a, b, c).A - angle * DEG)).toBeLessThan(1e-11)
    expect(Math.abs(angle * DEG - printed)).toBeLessThan(5e-10)
  })

  test('angles found by the plain rule, wherever its digits suffice', () => {
    const part = fc.double({ min: 0.11, max: 0.95, noNaN: true })
    const sides = fc.tuple(
      fc.double({ min: 10, max: 80, noNaN: true }),
      fc.double({ min: 10, max: 80, noNaN: true }),
      part,
    )
    fc.assert(
      fc.property(sides, ([b, c, t]) => {
        const a = Math.abs(b - c) + t * (b + c - Math.abs(b - c))
        const [ca, cb, cc] = [a, b, c].map((side) => Math.cos(side * RAD)) as [number, number, number]
        const A = DEG * Math.acos((ca - cb * cc) / (Math.sin(b * RAD) * Math.sin(c * RAD)))
        expect(Math.abs(closed(a, b, c).A - A)).toBeLessThan(1e-9)
      }),
      runs(200),
    )
  })
})

describe('two sides and their angle given: two directions marked on the panels beside a crease', () => {
  const made = design([
    vFold('beak', 'gutter', 140, -100, 50),
    { id: 'lid', kind: 'cut-layer', on: 'beak/ridge', start: 20, end: 70, left: 20, right: 30 },
    { id: 'eye', kind: 'cut-trapezoid', on: 'beak/right', start: 20, end: 80, startCut: 10, endCut: 30 },
  ])
  const poser = compile(made)
  const everyCrease = poser.model.creases.map(({ name }) => name)

  test.each(triangles.map((t) => [titleOf(t), t] as const))('%s', (_, triangle) => {
    const { a, b, c, A, within } = triangle
    for (const name of everyCrease) {
      openTo(poser, name, A)
      const crease = creaseOf(poser, name)
      const along = marked(poser, crease, 'left', 0)
      const [left, right] = [marked(poser, crease, 'left', b), marked(poser, crease, 'right', c)]
      expect(Math.abs(between(left, right) - a)).toBeLessThan(within)
      expect(Math.abs(dihedral(along, left, right) - A)).toBeLessThan(1e-11)
      if (triangle.B !== undefined)
        expect(Math.abs(dihedral(right, along, left) - triangle.B)).toBeLessThan(
          within * growth(b, c, a, triangle.B),
        )
      if (triangle.C !== undefined)
        expect(Math.abs(dihedral(left, along, right) - triangle.C)).toBeLessThan(
          within * growth(c, a, b, triangle.C),
        )
    }
  })

  // Coxeter, Regular Polytopes, table I [memory]: fold the net's corner up, and the missing face just fits.
  test.each(solids)(
    'the corner of a $name: folded to its angle, the open side closes',
    ({ sides, angle }) => {
      const [a, b, c] = sides
      for (const name of everyCrease) {
        openTo(poser, name, angle * DEG)
        const crease = creaseOf(poser, name)
        const gap = between(marked(poser, crease, 'left', b), marked(poser, crease, 'right', c))
        expect(Math.abs(gap - a)).toBeLessThan(1e-10)
      }
    },
  )

  test('the three stars of Ursa: the triangle’s angles on paper exceed 180 by its area on the sphere', () => {
    // Girard: area = (A + B + C - 180) pi / 180. Hann, Elements of Spherical Trigonometry, 2nd ed. 1866,
    // p. 55 [found]; the area is d3-geo's (ISC). The triangle is the quadrantal one, all parts printed.
    const { b, A } = triangles.find(({ name }) => name === 'a side of exactly 90') as Triangle
    openTo(poser, 'gutter', A)
    const crease = creaseOf(poser, 'gutter')
    const [along, left, right] = [
      marked(poser, crease, 'left', 0),
      marked(poser, crease, 'left', b),
      marked(poser, crease, 'right', 90),
    ]
    const sum = dihedral(along, left, right) + dihedral(left, right, along) + dihedral(right, along, left)
    const area = geoArea({ type: 'Polygon', coordinates: [[along, left, right, along].map(place)] })
    expect(Math.min(area, 4 * Math.PI - area)).toBeCloseTo((sum - 180) * RAD, 10)
    expect(sum).toBeCloseTo(dms(118, 40, 52) + dms(60, 18) + dms(76, 14, 38), 3)
  })
})

/** A direction in space as longitude and latitude, degrees: d3-geo's way to say it. */
const place = ([x, y, z]: Vec3): [number, number] => [
  DEG * Math.atan2(y, x),
  DEG * Math.atan2(z, Math.hypot(x, y)),
]

describe('great circles, by d3-geo (ISC)', () => {
  const side = fc.double({ min: 0, max: 180, noNaN: true })

  test('directions marked on two pages are as far apart as d3-geo says', () => {
    const poser = compile(design([]))
    fc.assert(
      fc.property(side, side, openings, (b, c, A) => {
        poser(A)
        const crease = creaseOf(poser, 'gutter')
        const [left, right] = [marked(poser, crease, 'left', b), marked(poser, crease, 'right', c)]
        expect(Math.abs(between(left, right) * RAD - geoDistance([0, 90 - b], [A, 90 - c]))).toBeLessThan(
          1e-12,
        )
      }),
      runs(500),
    )
  })

  test('round the apex of every V-fold the facets keep their wedge angle, seen as towns on a globe', () => {
    fc.assert(
      fc.property(designs({ kinds: ['cut-v-fold'], depth: 4 }), openings, (made, opening) => {
        const poser = compile(made)
        poser(opening)
        for (const m of made.mechanisms) {
          if (m.kind !== 'cut-v-fold') continue
          const wedge = Math.atan2(m.cut, Math.abs(m.run + (m.lean ?? 0)))
          const ridge = marked(poser, creaseOf(poser, `${m.id}/ridge`), 'left', 0)
          for (const part of ['left', 'right']) {
            const fold = marked(poser, creaseOf(poser, `${m.id}/${part}`), 'left', 0)
            expect(Math.abs(geoDistance(place(ridge), place(fold)) - wedge)).toBeLessThan(1e-9)
          }
        }
      }),
      runs(200),
    )
  })
})
