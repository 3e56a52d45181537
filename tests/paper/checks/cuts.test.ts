import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check, modelOf } from '../../../src/paper/index.ts'
import { first, fold, layer, only } from '../shared/check-designs.ts'
import { design, runs } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'

const beak = fold('beak', 'gutter', 110, -40, 38)

describe('a guest keeps to its fold', () => {
  test('an eye that reaches past the end of the beak’s ridge says by how much', () => {
    const eye = first('inside-fold', [beak, fold('eye', 'beak/ridge', 30, 14, 4)])
    expect(eye).toMatchObject({ ok: false, ids: ['eye', 'beak'], unit: 'mm', limit: 0 })
    expect(eye.value).toBeCloseTo(4, 9)
    expect(eye.sentence).toBe('The eye reaches 4.0 mm past the end of the beak’s ridge.')
  })

  test('the end of the ridge itself is still inside, a hair past it is not', () => {
    const to = (end: number) => first('inside-fold', [beak, fold('eye', 'beak/ridge', 20, end - 20, 4)]).ok
    expect(to(40)).toBe(true)
    expect(to(40 + 1e-6)).toBe(false)
  })

  test('a guest cannot begin before its fold does', () => {
    const early = first('inside-fold', [beak, fold('eye', 'beak/left', 5, -8, 4)])
    expect(early.ok).toBe(false)
    expect(early.value).toBeCloseTo(3, 9)
  })

  test('the place is shown on the flat sheet: the end of the fold, and the end of the guest', () => {
    const { flat } = first('inside-fold', [beak, fold('eye', 'beak/ridge', 30, 14, 4)])
    // The ridge of a cut V-fold lies on the gutter when flat: apex 110, tip 70, and 4 mm past it.
    expect(flat?.map(([x, y]) => [Math.round(x), Math.round(y)])).toEqual([
      [0, 70],
      [0, 66],
    ])
  })
})

describe('cuts stay inside their panel', () => {
  test('a slit longer than the page is cut over its edge', () => {
    const wide = first('cuts-inside', [fold('beak', 'gutter', 110, -40, 109.2)])
    expect(wide).toMatchObject({ ok: false, ids: ['beak', 'page/left'] })
    expect(wide.value).toBeCloseTo(4.2, 9)
    expect(wide.sentence).toBe('The beak is cut 4.2 mm over the edge of the left page.')
  })

  test('a slit to the very edge is inside, a hair further is not', () => {
    expect(first('cuts-inside', [fold('beak', 'gutter', 110, -40, 105)]).ok).toBe(true)
    expect(first('cuts-inside', [fold('beak', 'gutter', 110, -40, 105 + 1e-6)]).ok).toBe(false)
  })

  test('an eye too wide for its facet crosses the beak’s fold', () => {
    // Facet: 45 degrees at the apex. Slit end 12 across and 10 along: (12 - 10) / sqrt 2 over the fold.
    const wide = only(
      'cuts-inside',
      design([fold('beak', 'gutter', 110, -40, 40), fold('eye', 'beak/ridge', 2, 8, 12)]),
    )
    expect(wide).toHaveLength(1)
    expect(wide[0]?.value).toBeCloseTo(Math.SQRT2, 9)
  })

  test('a bulge in a shaped slit counts even if both ends of the slit are inside', () => {
    const shaped = fold('beak', 'gutter', 20, -15, 20, { outline: [[10, -3]] })
    const found = first('cuts-inside', [shaped])
    expect(found.ok).toBe(false)
    expect(found.value).toBeCloseTo(3, 9)
  })

  test('no corner of a hole lies outside its panel, where the check holds', () => {
    fc.assert(
      fc.property(gardens(5), (made) => {
        fc.pre(only('cuts-inside', made)[0]?.ok === true)
        for (const { outline, notches } of modelOf(made).panels) {
          const convex = outline.length === 3 || outline.length === 4
          if (!convex) continue
          for (const [a, l] of notches.flatMap((notch) => notch.outline)) {
            const sides = outline.map(([x, y], k) => {
              const [u, v] = outline[(k + 1) % outline.length] ?? [0, 0]
              return ((u - x) * (l - y) - (v - y) * (a - x)) / (Math.hypot(u - x, v - y) || 1)
            })
            expect(sides.every((off) => off > -1e-8) || sides.every((off) => off < 1e-8)).toBe(true)
          }
        }
      }),
      runs(100),
    )
  })
})

describe('cuts stay apart', () => {
  test('two V-folds that share one slit do not overlap', () => {
    const both = [fold('beak', 'gutter', 110, -40, 38), fold('jaw', 'gutter', 30, 40, 38)]
    expect(first('cuts-apart', both).ok).toBe(true)
    expect(first('bridge', both).ok).toBe(true)
  })

  test('two parts that take the same stretch of the gutter overlap by that stretch', () => {
    const found = first('cuts-apart', [beak, fold('owl', 'gutter', 104, 20, 15)])
    expect(found).toMatchObject({ ok: false, ids: ['beak', 'owl'] })
    expect(found.value).toBeCloseTo(6, 9)
    expect(found.sentence).toBe('The beak and the owl overlap by 6.0 mm on the gutter.')
  })

  test('end to end they do not overlap, a hair nearer they do', () => {
    const at = (start: number) => first('cuts-apart', [beak, layer('lamp', 'gutter', start, 140, 20)]).ok
    expect(at(110)).toBe(true)
    expect(at(110 - 1e-6)).toBe(false)
  })

  test('cuts of parts on different folds of one panel may run into each other', () => {
    const found = first('cuts-apart', [
      fold('beak', 'gutter', 110, -50, 50),
      layer('lamp', 'beak/ridge', 20, 40, 12),
      layer('eye', 'beak/right', 20, 50, 14),
    ])
    expect(found.ok).toBe(false)
    expect(found.ids).toEqual(['lamp', 'eye', 'beak/right'])
  })

  test('an outline that crosses itself is told', () => {
    const knot = fold('beak', 'gutter', 110, -40, 38, {
      outline: [
        [30, 40],
        [5, 40],
        [30, 70],
      ],
    })
    expect(first('cuts-apart', [knot]).sentence).toMatch(/^The outline of the beak crosses itself/)
  })
})

describe('a bridge of paper is left', () => {
  test('5 mm is enough by default (common practice, no source), a hair less is not', () => {
    const to = (start: number) => first('bridge', [beak, layer('lamp', 'gutter', start, 140, 20)])
    expect(to(115)).toMatchObject({ ok: true, caution: true, limit: 5 })
    expect(to(115 - 1e-6).ok).toBe(false)
  })

  test('another limit can be asked for', () => {
    const made = design([beak, layer('lamp', 'gutter', 113, 140, 20)])
    expect(only('bridge', made)[0]?.ok).toBe(false)
    expect(only('bridge', made, { bridge: 3, repairs: false })[0]?.ok).toBe(true)
  })

  test('a slit near the edge of the page is a strip that tears', () => {
    const thin = first('bridge', [fold('beak', 'gutter', 110, -40, 103)])
    expect(thin.value).toBeCloseTo(2, 9)
    expect(thin.sentence).toBe(
      'Only 2.0 mm of paper is left on the left page between the beak and the edge of the page: it may tear.',
    )
    // From the slit's end to the edge.
    expect(thin.flat?.map(([x]) => Math.abs(x))).toEqual([103, 105])
  })

  test('two V-folds may stand point to point: between two folds nothing tears', () => {
    const points = [fold('owl', 'gutter', 60, -30, 20), fold('moth', 'gutter', 61, 30, 20)]
    expect(first('bridge', points)).toMatchObject({ ok: true })
    // Slit to slit they may not.
    expect(
      first('bridge', [fold('owl', 'gutter', 30, 30, 20), fold('moth', 'gutter', 92, -30, 20)]),
    ).toMatchObject({ ok: false })
  })

  test('a guest touches its own fold and its host’s apex, and that is no bridge', () => {
    expect(first('bridge', [beak, fold('eye', 'beak/ridge', 0, 20, 6)]).ok).toBe(true)
  })

  test('a hole between two lines is no bridge', () => {
    // The pupil’s cuts end inside the eye’s hole in the beak; seen through the hole, they are near.
    const all = check(
      design([beak, fold('eye', 'beak/ridge', 10, 20, 12), layer('pupil', 'eye/ridge', 6, 13, 2)]),
      {
        repairs: false,
      },
    )
    expect(
      all.filter(({ name, ids }) => name === 'bridge' && ids.includes('pupil') && ids.includes('beak/left')),
    ).toEqual([])
  })

  test('what cannot be cut has no bridges to measure', () => {
    const spoilt = check(design([beak, fold('eye', 'beak/ridge', 30, 14, 4)]), { repairs: false })
    expect(spoilt.filter(({ name, ids }) => name === 'bridge' && ids.includes('eye'))).toEqual([])
  })
})
