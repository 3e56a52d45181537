import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { leastChange } from '../../../src/paper/answers/tip.ts'
import type { Design, Mechanism, Vec3 } from '../../../src/paper/index.ts'
import {
  check,
  compile,
  parseDesign,
  settable,
  settingOf,
  tipAt,
  tipTowards,
} from '../../../src/paper/index.ts'
import { designs, everyKind, runs } from '../shared/designs.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'

const card = { width: 105, height: 148 }

const designOf = (...mechanisms: object[]): Design =>
  parseDesign({ hingebook: 1, title: 'Tip', card, mechanisms })

function tipOf(design: Design, id: string, opening: number): Vec3 {
  const poser = compile(design)
  poser(opening)
  return tipAt(
    poser,
    design.mechanisms.findIndex((m) => m.id === id),
  )
}

const far = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

describe('the least change', () => {
  test('of two equal ways takes half of each', () => {
    const [a, b] = leastChange(
      [
        [0, 0, 1],
        [0, 0, 1],
      ],
      [0, 0, 6],
    ) as [number, number]
    // Lagrange: x + y = 6 with x² + y² least gives x = y = 3; the damping takes less than a thousandth of it.
    expect(a).toBeCloseTo(3, 3)
    expect(b).toBeCloseTo(3, 3)
  })

  test('of a weak and a strong way is in proportion to their strength', () => {
    // x + 2 y = 10 with x² + y² least: (x, y) = (2, 4).
    const [a, b] = leastChange(
      [
        [0, 1, 0],
        [0, 2, 0],
      ],
      [0, 10, 0],
    ) as [number, number]
    expect(a).toBeCloseTo(2, 3)
    expect(b).toBeCloseTo(4, 3)
  })

  test('asks nothing of what moves the tip elsewhere', () => {
    const [a, b] = leastChange(
      [
        [1, 0, 0],
        [0, 0, 1],
      ],
      [0, 0, 5],
    ) as [number, number]
    expect(a).toBeCloseTo(0, 9)
    expect(b).toBeCloseTo(5, 2)
  })
})

describe('a tip that is dragged', () => {
  test('a layer deepens to the height asked for: its rise over the page is depth times the sine of the opening', () => {
    const layer = designOf({
      id: 'step',
      kind: 'cut-layer',
      on: 'gutter',
      start: 40,
      end: 80,
      left: 20,
      right: 20,
    })
    // At 90° equal depths d put the ridge at a height of d √2 over the gutter.
    const [x, y] = tipOf(layer, 'step', 90)
    const next = tipTowards(layer, 'step', 90, [x, y, 30 * Math.SQRT2])
    expect(next.mechanisms[0]).toMatchObject({ left: 30, right: 30, start: 40, end: 80 })
  })

  test('a tip moved along the gutter takes its mechanism along', () => {
    const beak = designOf({ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 60, run: 40, cut: 30 })
    const [x, y, z] = tipOf(beak, 'beak', 90)
    const next = tipTowards(beak, 'beak', 90, [x, y + 12, z])
    expect(far(tipOf(next, 'beak', 90), [x, y + 12, z])).toBeLessThan(0.3)
  })

  test('leaves alone what is kept, and the other parts', () => {
    const beak = designOf(
      { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 40, cut: 30 },
      { id: 'step', kind: 'cut-layer', on: 'gutter', start: 90, end: 120, left: 20, right: 20 },
    )
    const [x, y, z] = tipOf(beak, 'beak', 90)
    const next = tipTowards(beak, 'beak', 90, [x, y, z + 4], { kept: ['apex', 'cut'] })
    expect(next.mechanisms[0]).toMatchObject({ apex: 30, cut: 30 })
    expect(next.mechanisms[1]).toEqual(beak.mechanisms[1])
    expect(far(tipOf(next, 'beak', 90), [x, y, z + 4])).toBeLessThan(4)
  })

  test('what cannot be reached is come nearer to, and every number stays in its range', () => {
    const beak = designOf({ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 40, cut: 30 })
    const next = tipTowards(beak, 'beak', 90, [0, 5000, 9000])
    expect(() => parseDesign(JSON.parse(JSON.stringify(next)))).not.toThrow()
  })

  test('an unknown part is refused', () => {
    expect(() => tipTowards(designOf(), 'owl', 90, [0, 0, 0])).toThrow(/there is no mechanism owl/)
  })
})

/** What a hand may type on a card: no length far beyond its longer side. */
const typed = ({ card: { width, height }, mechanisms }: Design) => {
  const most = 1.25 * Math.max(width, height)
  return Object.fromEntries(
    mechanisms.flatMap((m) =>
      settable(m).map(({ name, unit, min, max }): [string, { min: number; max: number }] => [
        `${m.id}.${name}`,
        unit === 'mm' ? { min: Math.max(min, -most), max: Math.min(max, most) } : { min, max },
      ]),
    ),
  )
}

/** By how much a part fails by itself: its folds, cuts, glue and widths, whatever else is on the card. */
function ownFaults(made: Design, id: string): Map<string, number> {
  const failing = check(made, {
    repairs: false,
    names: ['inside-fold', 'cuts-inside', 'narrow', 'glue', 'shuts-flat', 'opens-flat'],
  }).filter(({ ok, ids }) => !ok && ids[0] === id && ids.every((one) => one === id || one.includes('/')))
  return new Map(failing.map(({ name, value, limit }) => [name, Math.abs(value - limit)]))
}

describe('a tip that is dragged too far', () => {
  const slit = designOf({ id: 'slit', kind: 'cut-v-fold', on: 'gutter', apex: 26, run: 96, cut: 68 })
  const [x, y, z] = tipOf(slit, 'slit', 100)
  const places: readonly (readonly [number, number])[] = [
    [-100, -140],
    [-300, 40],
    [0, -500],
    [400, 0],
    [0, 300],
    [5000, 9000],
  ]
  test.each(places)('by %d along and %d up stays a slit that can be cut', (along, up) => {
    const next = tipTowards(slit, 'slit', 100, [x, y + along, z + up], { ranges: typed(slit) })
    const { apex, run, cut, lean = 0 } = next.mechanisms[0] as Extract<Mechanism, { kind: 'cut-v-fold' }>
    // On the page with both ends, and no line: the triangle is wider than paper tears.
    expect(Math.min(apex, apex + run, apex + run + lean)).toBeGreaterThanOrEqual(0)
    expect(Math.max(apex, apex + run, apex + run + lean)).toBeLessThanOrEqual(148)
    expect(cut).toBeLessThanOrEqual(105)
    expect(cut).toBeGreaterThanOrEqual(5)
    expect(Math.abs(run)).toBeGreaterThanOrEqual(5)
    expect(ownFaults(next, 'slit')).toEqual(new Map())
    expect(far(tipOf(next, 'slit', 100), [x, y + along, z + up])).toBeLessThan(Math.hypot(along, up))
  })

  test('goes on along what stops it: past the end of the page it still rises', () => {
    const layer = designOf({
      id: 'step',
      kind: 'cut-layer',
      on: 'gutter',
      start: 100,
      end: 140,
      left: 20,
      right: 20,
    })
    const [a, b, c] = tipOf(layer, 'step', 90)
    const there = tipOf(tipTowards(layer, 'step', 90, [a, b + 60, c + 20]), 'step', 90)
    expect(there[2]).toBeGreaterThan(c + 19)
  })

  test('what is kept stays, though a rule would move it', () => {
    const leaning = designOf({
      id: 'slit',
      kind: 'cut-v-fold',
      on: 'gutter',
      apex: 60,
      run: 40,
      cut: 30,
      lean: -35,
    })
    const [a, b, c] = tipOf(leaning, 'slit', 90)
    const next = tipTowards(leaning, 'slit', 90, [a, b - 60, c], { kept: ['lean', 'cut'] })
    expect(next.mechanisms[0]).toMatchObject({ lean: -35, cut: 30 })
  })

  test('whatever the part and the place: sizes in their ranges, nothing spoilt, never farther off', () => {
    const place = fc.tuple(...[1, 2, 3].map(() => fc.double({ min: -300, max: 300, noNaN: true })))
    fc.assert(
      fc.property(
        fc.oneof(designs({ most: 3, kinds: everyKind }), gluedDesigns({ most: 3 })),
        fc.nat(),
        fc.constantFrom(20, 60, 90, 100, 150, 180),
        place,
        (made, pick, opening, off) => {
          const m = made.mechanisms[pick % made.mechanisms.length] as Mechanism
          const from = tipOf(made, m.id, opening)
          const at: Vec3 = [from[0] + (off[0] ?? 0), from[1] + (off[1] ?? 0), from[2] + (off[2] ?? 0)]
          const ranges = typed(made)
          const next = tipTowards(made, m.id, opening, at, { ranges })
          for (const one of next.mechanisms)
            for (const { name } of settable(one)) {
              const [value, { min, max }] = [settingOf(one, name), ranges[`${one.id}.${name}`] as never]
              const before = settingOf(made.mechanisms.find(({ id }) => id === one.id) as Mechanism, name)
              expect(value, `${one.id}.${name}`).not.toBeNaN()
              expect(value, `${one.id}.${name}`).toBeGreaterThanOrEqual(Math.min(min, before) - 1e-6)
              expect(value, `${one.id}.${name}`).toBeLessThanOrEqual(Math.max(max, before) + 1e-6)
            }
          const spoilt = ownFaults(made, m.id)
          for (const [name, by] of ownFaults(next, m.id))
            expect(by, name).toBeLessThanOrEqual((spoilt.get(name) ?? 0) + 2e-6)
          const there = tipOf(next, m.id, opening)
          if (next !== made) expect(far(there, at)).toBeLessThan(far(from, at))
          expect(() => parseDesign(JSON.parse(JSON.stringify(next)))).not.toThrow()
        },
      ),
      runs(60),
    )
  })
})
