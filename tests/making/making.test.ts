import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { foldsTogether, making } from '../../src/making/making.ts'
import type { Surface, Vec3 } from '../../src/paper/index.ts'
import { compile, SHUT, surfaces } from '../../src/paper/index.ts'
import { design, designs, ladder, runs, vFold } from '../paper/shared/designs.ts'
import { apart, crossOf, dotOf, minus, plus, sizeOf } from '../paper/shared/space.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const jaw = vFold('jaw', 'gutter', 30, 40, 45)

const box = { id: 'box', kind: 'cut-layer', on: 'gutter', start: 60, end: 90, left: 20, right: 20 }

const step = { ...box, id: 'step', right: 12 }

const areaOf = ({ points }: Surface): number =>
  sizeOf(
    points.reduce<Vec3>(
      (sum, p, k) => plus(sum, crossOf(p, points[(k + 1) % points.length] as Vec3)),
      [0, 0, 0],
    ),
  ) / 2

const areas = (paper: readonly Surface[]): number => paper.reduce((sum, one) => sum + areaOf(one), 0)

const named = (paper: readonly Surface[], panel: string): Surface => {
  const found = paper.find((one) => one.panel === panel)
  if (!found) throw new Error(`no ${panel}`)
  return found
}

describe('surfaces', () => {
  it.each(ladder)('show the front of $name upwards when it lies flat', ({ design: one }) => {
    const poser = compile(one)
    poser(180)
    for (const { front } of surfaces(poser)) expect(front[2]).toBeCloseTo(1, 12)
  })

  it('turn their front without a jump while the card opens, and keep it square to them', () => {
    fc.assert(
      fc.property(designs(), fc.double({ min: 0, max: 178, noNaN: true }), (one, opening) => {
        const poser = compile(one)
        poser(opening)
        const before = surfaces(poser)
        for (const { front, points } of before) {
          expect(sizeOf(front)).toBeCloseTo(1, 9)
          for (const p of points)
            expect(Math.abs(dotOf(front, minus(p, points[0] as Vec3)))).toBeLessThan(1e-9 * 600)
        }
        poser(opening + 1)
        surfaces(poser).forEach(({ front }, k) => {
          expect(dotOf(front, (before[k] as Surface).front)).toBeGreaterThan(0)
        })
      }),
      runs(60),
    )
  })

  it.each(ladder)('lose no paper of $name at any opening', ({ design: one }) => {
    const poser = compile(one)
    for (const opening of [0, 30, 90, 150, 180]) {
      poser(opening)
      expect(areas(surfaces(poser))).toBeCloseTo(2 * one.card.width * one.card.height, 6)
    }
  })
})

describe('making', () => {
  const both = design([beak, jaw, { ...box, start: 115, end: 140 }])

  it('keeps all the paper, whatever is cut and pushed through', () => {
    for (const through of [[], ['beak'], ['beak', 'box']])
      for (const cut of [[], ['jaw']])
        for (const opening of [0, 70, 180])
          expect(areas(making(both, { opening, through, cut }))).toBeCloseTo(2 * 105 * 148, 6)
  })

  it('leaves a strip that is only cut in the plane of its page', () => {
    for (const opening of [20, 90, 170]) {
      const paper = making(both, { opening, through: [], cut: ['beak', 'jaw', 'box'] })
      for (const side of ['left', 'right']) {
        const page = named(paper, `page/${side}`)
        for (const { points } of paper.filter(({ panel }) => panel.endsWith(`/${side}`)))
          for (const p of points)
            expect(Math.abs(dotOf(page.front, minus(p, page.points[0] as Vec3)))).toBeLessThan(1e-9)
      }
    }
  })

  it('with everything through is the paper of the finished card', () => {
    const poser = compile(both)
    poser(75)
    const finished = surfaces(poser)
    const made = making(both, { opening: 75, through: ['beak', 'jaw', 'box'], cut: [] })
    expect(made.map(({ panel, points }) => [panel, points])).toEqual(
      finished.map(({ panel, points }) => [panel, points]),
    )
  })

  // Source: reflection in a line. The foot (0, 70) mirrored in the line from (0, 110) to (40, 70) is (40, 110).
  it('folds a strip right over to its mirror image in the fold line', () => {
    const paper = making(both, { opening: 0, through: [], cut: ['beak'], folds: { beak: 180 } })
    const { points } = named(paper, 'beak/right')
    const half = (SHUT / 2) * (Math.PI / 180)
    const foot: Vec3 = [40 * Math.sin(half), 110, 40 * Math.cos(half)]
    expect(Math.min(...points.map((p) => apart(p, foot)))).toBeLessThan(1e-9)
  })

  it('turns both layers as one: joined at the gutter, every length kept', () => {
    for (const id of ['beak', 'jaw', 'box'])
      for (const fold of [-160, -90, 45, 179]) {
        const state = { opening: 0, through: [], cut: [id] }
        const before = making(both, state)
        const after = making(both, { ...state, folds: { [id]: fold } })
        for (const side of ['left', 'right']) {
          const [a, b] = [named(before, `${id}/${side}`).points, named(after, `${id}/${side}`).points]
          a.forEach((p, k) => {
            a.forEach((q, m) => {
              expect(Math.abs(apart(p, q) - apart(b[k] as Vec3, b[m] as Vec3))).toBeLessThan(1e-9)
            })
          })
        }
        const onGutter = (paper: readonly Surface[], side: string): Vec3[] =>
          named(before, `${id}/${side}`)
            .points.map((p, k) => [p, named(paper, `${id}/${side}`).points[k]] as [Vec3, Vec3])
            .filter(([p]) => Math.hypot(p[0], p[2]) < 1e-9)
            .map(([, q]) => q)
        const rights = onGutter(after, 'right')
        expect(rights).toHaveLength(2)
        for (const p of onGutter(after, 'left'))
          expect(Math.min(...rights.map((q) => apart(p, q)))).toBeLessThan(1e-9)
      }
  })

  it('folds to the outside of the right page above 0, and to the other side mirror-wise below', () => {
    const at = (fold: number, side: string) =>
      named(making(both, { opening: 0, through: [], cut: ['jaw'], folds: { jaw: fold } }), `jaw/${side}`)
        .points
    const [right, left] = [at(70, 'right'), at(-70, 'left')]
    expect(Math.max(...right.map(([x]) => x))).toBeGreaterThan(20)
    for (const [x, y, z] of right)
      expect(Math.min(...left.map((q) => apart(q, [-x, y, z])))).toBeLessThan(1e-9)
  })

  it('folds both layers together only where their fold lines lie on one another', () => {
    const one = design([beak, step, { ...box, start: 0, end: 10 }])
    expect(['beak', 'box', 'step'].map((id) => foldsTogether(one, id))).toEqual([true, true, false])
    expect(() => making(one, { opening: 0, through: [], cut: ['step'], folds: { step: 90 } })).toThrow(
      'the fold lines of step do not lie on one another in the shut card',
    )
    expect(() => making(one, { opening: 90, through: [], cut: ['beak'], folds: { beak: 90 } })).toThrow(
      'both layers fold over together only in the shut card, not at 90 degrees',
    )
  })
})
