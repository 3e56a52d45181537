// Cuts that run into each other, and into themselves: lengths by hand. Quick, beside the random ones.
import { describe, expect, test } from 'vitest'
import { cutsApart } from '../../../src/paper/checks/cuts-apart.ts'
import { subjectOf } from '../../../src/paper/checks/subject.ts'
import { first, fold, layer, only } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const failed = (...mechanisms: object[]) => only('cuts-apart', design(mechanisms)).filter(({ ok }) => !ok)

describe('on one fold', () => {
  test('two that take the same stretch overlap by it, and it is shown', () => {
    const [one, ...more] = failed(layer('lamp', 'gutter', 20, 60, 20), layer('reed', 'gutter', 50, 90, 30))
    expect(more).toEqual([])
    expect(one).toMatchObject({ ids: ['lamp', 'reed'], value: expect.closeTo(10, 9), unit: 'mm', limit: 0 })
    expect(one?.sentence).toBe('The lamp and the reed overlap by 10.0 mm on the gutter.')
    expect(one?.flat).toEqual([
      [0, 50],
      [0, 60],
    ])
  })

  test('one within another by all of its own', () => {
    const [one] = failed(layer('lamp', 'gutter', 20, 90, 20), layer('reed', 'gutter', 40, 55, 30))
    expect(one?.value).toBeCloseTo(15, 9)
    expect(one?.flat).toEqual([
      [0, 40],
      [0, 55],
    ])
  })

  test('of three every two are told', () => {
    const three = failed(
      layer('a', 'gutter', 20, 50, 20),
      layer('b', 'gutter', 40, 80, 20),
      layer('c', 'gutter', 75, 99, 20),
    )
    expect(three.map(({ ids, value }) => `${ids.join(' ')} ${value.toFixed(3)}`)).toEqual([
      'a b 10.000',
      'b c 5.000',
    ])
  })

  test('end to end nothing is wrong, and that is said once', () => {
    expect(
      first('cuts-apart', [layer('a', 'gutter', 20, 50, 20), layer('b', 'gutter', 50, 80, 20)]),
    ).toMatchObject({
      ok: true,
      value: 0,
      ids: [],
      sentence: 'No cut runs into another.',
    })
  })
})

describe('on one panel, from two folds', () => {
  // A wall 30 deep: cut 18 from its ridge and 18 from its far fold, along 20 mm of it they take the same 6.
  const wall = layer('lamp', 'gutter', 20, 90, 30)

  test('by the shortest way that would part them', () => {
    const found = failed(wall, layer('eye', 'lamp/ridge', 10, 40, 18), layer('ear', 'lamp/left', 20, 60, 18))
    expect(found).toHaveLength(1)
    expect(found[0]?.ids.slice(0, 2)).toEqual(['eye', 'ear'])
    expect(found[0]?.value).toBeCloseTo(6, 9)
    expect(found[0]?.sentence).toBe('The eye and the ear cut 6.0 mm into each other on the lamp’s left side.')
    // What they share is shown: 20 by 6 mm.
    const xs = found[0]?.flat?.map(([x]) => x) ?? []
    const ys = found[0]?.flat?.map(([, y]) => y) ?? []
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(6, 9)
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(20, 9)
    expect(
      failed(wall, layer('eye', 'lamp/ridge', 10, 40, 14), layer('ear', 'lamp/left', 20, 60, 15)),
    ).toEqual([])
    expect(
      failed(wall, layer('eye', 'lamp/ridge', 5, 20, 18), layer('ear', 'lamp/left', 20, 60, 18)),
    ).toEqual([])
  })

  test('where their outlines have dents by the deepest of their parts', () => {
    // The slit comes back to the fold in the middle: its two teeth are 14 and 20 deep, and so 2 and 8 are shared with 18.
    const teeth = fold('eye', 'lamp/ridge', 5, 50, 20, {
      outline: [
        [14, 45],
        [4, 38],
        [20, 30],
      ],
    })
    const found = failed(wall, teeth, layer('ear', 'lamp/left', 2, 68, 18))
    expect(Math.max(...found.map(({ value }) => value))).toBeGreaterThan(4)
  })
})

describe('an outline that crosses itself', () => {
  // From the foot, (0, 60), by (22, 70), (22, 50) and (8, 70) to the end, (30, 60): the last line crosses the first where
  // 60 + 10 x / 22 = 70 - 10 (x - 8) / 22, at x = 15, 7 across and 70 / 22 along from the corners on either side. The
  // two other crossings are nearer to a corner.
  const outline = [
    [22, 70],
    [22, 50],
    [8, 70],
  ]
  const knot = fold('beak', 'gutter', 110, -50, 30, { outline })

  test('is told with how far from its nearest corner', () => {
    const found = failed(knot).filter(({ ids }) => ids.length === 1)
    expect(found[0]?.ids).toEqual(['beak'])
    expect(found[0]?.value).toBeCloseTo(Math.hypot(7, 70 / 22), 9)
    expect(found[0]?.sentence).toBe('The outline of the beak crosses itself, 7.7 mm from its nearest corner.')
    expect(found[0]?.flat).toHaveLength(1)
    expect(Math.abs(found[0]?.flat?.[0]?.[0] ?? 0)).toBeCloseTo(15, 9)
    expect(found[0]?.flat?.[0]?.[1]).toBeCloseTo(60 + 150 / 22, 9)
    // Without the knot it is sound.
    expect(failed(fold('beak', 'gutter', 110, -50, 30, { outline: outline.slice(0, 1) }))).toEqual([])
  })

  test('only if it is asked about', () => {
    const about = (id: string) =>
      cutsApart(
        subjectOf(
          design([knot, layer('step', 'gutter', 5, 20, 9)]),
          { bridge: 5, thickness: 2 },
          { ids: new Set([id]), alone: false },
          { left: 1e5 },
        ),
      )
    expect(about('step').every(({ ok }) => ok)).toBe(true)
  })
})
