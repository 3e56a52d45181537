import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../../src/paper/index.ts'
import { modelOf, poseAt } from '../../../src/paper/index.ts'
import { A6, design, designs, openings, runs, vFold } from '../shared/designs.ts'
import { apart } from '../shared/space.ts'
import {
  farthest,
  inner,
  mirrored,
  otherSide,
  scaled,
  shifted,
  transplanted,
  turnedRound,
} from '../shared/twins.ts'

const same = (name: string): string => name

/** Poses of the same paper may differ by rounding alone, mm. */
const EXACT = 1e-9

describe('a design and its twin', () => {
  test('left for right, every panel is the mirror image of its namesake on the other side', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        const twin = poseAt(mirrored(made), opening)
        expect(farthest(poseAt(made, opening), twin, ([x, y, z]) => [-x, y, z], otherSide)).toBeLessThan(
          EXACT,
        )
      }),
      runs(200),
    )
  })

  test('moved along the gutter, the whole model moves along the gutter', () => {
    const by = fc.double({ min: -50, max: 50, noNaN: true })
    fc.assert(
      fc.property(designs(), openings, by, (made, opening, far) => {
        const twin = poseAt(shifted(made, far), opening)
        expect(farthest(poseAt(made, opening), twin, ([x, y, z]) => [x, y + far, z], same)).toBeLessThan(
          EXACT,
        )
      }),
      runs(200),
    )
  })

  test.each([0.5, 2.5])(
    'drawn %d times as large, it poses so many times as large, at the same angles',
    (k) => {
      fc.assert(
        fc.property(designs(), openings, (made, opening) => {
          const twin = poseAt(scaled(made, k), opening)
          const move = ([x, y, z]: Vec3): Vec3 => [k * x, k * y, k * z]
          expect(farthest(poseAt(made, opening), twin, move, same)).toBeLessThan(EXACT)
        }),
        runs(100),
      )
    },
  )

  test('with its runs turned and the card turned round on the table, it is the same model', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        const { height } = made.card
        const twin = turnedRound(made)
        const move = ([x, y, z]: Vec3): Vec3 => [-x, height - y, z]
        const [here, there] = [poseAt(made, opening), poseAt(twin, opening)]
        // Panels of layers list their corners from the start, which is the other end now.
        const twinned = Object.entries(here.panels).filter(([name]) => !name.startsWith('page/'))
        for (const [name, points] of twinned) {
          const others = there.panels[otherSide(name)] as Vec3[]
          for (const p of points)
            expect(Math.min(...others.map((q) => apart(move(p), q)))).toBeLessThan(EXACT)
        }
        for (const [name, { angle }] of Object.entries(here.creases))
          expect(Math.abs(angle - (there.creases[otherSide(name)]?.angle ?? Number.NaN))).toBeLessThan(EXACT)
      }),
      runs(200),
    )
  })

  test('mirrored twice, or turned round twice, it is itself again', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        for (const twice of [mirrored(mirrored(made)), turnedRound(turnedRound(made))])
          expect(farthest(poseAt(made, opening), poseAt(twice, opening), (p) => p, same)).toBeLessThan(EXACT)
      }),
      runs(100),
    )
  })
})

describe('a guest knows nothing of its host but the crease', () => {
  test('moved to the gutter of a card opened as far as its host crease was, it stands just as it stood', () => {
    fc.assert(
      fc.property(designs({ most: 5 }), openings, fc.nat(), (made, opening, pick) => {
        const guest = made.mechanisms[pick % made.mechanisms.length]
        if (!guest) return
        const { angle } = poseAt(made, opening).creases[guest.on] ?? { angle: Number.NaN }
        const alone = { ...made, mechanisms: transplanted(made, guest.id, 'gutter') }
        const [there, here] = [inner(made, guest.id, opening), inner(alone, guest.id, angle)]
        expect(there).toHaveLength(here.length)
        there.forEach((distance, k) => {
          expect(Math.abs(distance - (here[k] as number))).toBeLessThan(EXACT)
        })
      }),
      runs(200),
    )
  })

  test('on the folds of two equal V-folds, equal guests stand alike', () => {
    const guest = (id: string, on: string) => ({
      id,
      kind: 'cut-layer',
      on,
      start: 8,
      end: 20,
      left: 5,
      right: 9,
    })
    const made = design([
      vFold('near', 'gutter', 10, 40, 50),
      vFold('far', 'gutter', 80, 40, 50),
      guest('near-eye', 'near/left'),
      guest('far-eye', 'far/left'),
    ])
    for (const opening of [0, 20, 75, 130, 180]) {
      const { panels } = poseAt(made, opening)
      for (const side of ['left', 'right'])
        panels[`near-eye/${side}`]?.forEach(([x, y, z], k) => {
          expect(apart([x, y + 70, z], panels[`far-eye/${side}`]?.[k] as Vec3)).toBeLessThan(EXACT)
        })
    }
  })

  test('a ridge is the host crease mirrored: a guest on it stands inside out, but as far apart', () => {
    const made = design([
      vFold('beak', 'gutter', 20, 60, 40),
      vFold('eye', 'beak/ridge', 10, 30, 35),
      vFold('twin', 'gutter', 90, 30, 35),
    ])
    for (const opening of [10, 60, 110, 170]) {
      const { creases } = poseAt(made, opening)
      expect(creases['eye/right']?.angle).toBeCloseTo(creases['twin/right']?.angle ?? Number.NaN, 9)
      expect(creases['eye/ridge']?.angle).toBeCloseTo(opening, 9)
    }
  })
})

describe('which side is which', () => {
  const beak = vFold('beak', 'gutter', 110, -60, 45)
  const layer = { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 10, end: 40, left: 20, right: 25 }
  const guests = (['beak', 'lantern'] as const).flatMap((host) =>
    (['left', 'right'] as const).map((side) => vFold(`${host}-${side}`, `${host}/${side}`, 10, 12, 30)),
  )
  const { creases, panels } = modelOf(design([beak, layer, ...guests]))
  const hung = (name: string, side: 'left' | 'right') =>
    panels[creases.find((crease) => crease.name === name)?.[side].panel ?? -1]?.name

  test.each([
    ['gutter', 'page/left', 'page/right'],
    ['beak/ridge', 'beak/left', 'beak/right'],
    ['beak/left', 'page/left', 'beak/left'],
    ['beak/right', 'beak/right', 'page/right'],
    ['lantern/ridge', 'lantern/left', 'lantern/right'],
    ['lantern/left', 'page/left', 'lantern/left'],
    ['lantern/right', 'lantern/right', 'page/right'],
    ['beak-right/left', 'beak/right', 'beak-right/left'],
    ['beak-right/right', 'beak-right/right', 'page/right'],
    ['beak-left/left', 'page/left', 'beak-left/left'],
    ['beak-left/right', 'beak-left/right', 'beak/left'],
    ['lantern-right/left', 'lantern/right', 'lantern-right/left'],
    ['lantern-left/right', 'lantern-left/right', 'lantern/left'],
  ])('%s lies between %s and %s', (name, left, right) => {
    expect([hung(name, 'left'), hung(name, 'right')]).toEqual([left, right])
  })

  test('on the open sheet, a guest of the right fold has its left side towards the gutter, on the facet', () => {
    const { creases: flat } = poseAt(design([beak, layer, ...guests]), 180)
    for (const host of ['beak', 'lantern']) {
      const left = flat[`${host}-right/left`]?.end[0] ?? Number.NaN
      const right = flat[`${host}-right/right`]?.end[0] ?? Number.NaN
      expect(left).toBeGreaterThan(0)
      expect(left).toBeLessThan(right)
      expect(flat[`${host}-left/right`]?.end[0]).toBeGreaterThan(
        flat[`${host}-left/left`]?.end[0] ?? Number.NaN,
      )
    }
  })

  test('shut, the two panels beside a fold lie flat against each other: the facet on its page', () => {
    const pose = poseAt(design([beak]), 0)
    const [apex, , end] = pose.panels['beak/right'] as Vec3[]
    const tip = pose.creases['beak/ridge']?.end as Vec3
    // The fold lies at 45 degrees in the page, and the facet beyond it, away from the gutter.
    expect(apart(end as Vec3, [0, 50, 60])).toBeLessThan(EXACT)
    expect(apart(apex as Vec3, [0, 110, 0])).toBeLessThan(EXACT)
    expect(apart(tip, [0, 110, 60])).toBeLessThan(EXACT)
    expect(tip[2]).toBeLessThan(A6.width)
  })
})
