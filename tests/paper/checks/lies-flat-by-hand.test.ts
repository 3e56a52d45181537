// Whether a card lies flat, shut and open, word by word: differences of lengths, and where paper should lie.
import { describe, expect, test } from 'vitest'
import { first, fold, layer, only, tent } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

describe('a bare card', () => {
  test.each([
    ['shuts-flat', 0, 'The card shuts flat.'],
    ['opens-flat', 180, 'The card opens flat.'],
  ] as const)('%s', (name, opening, sentence) => {
    const found = first(name, [])
    expect(found).toMatchObject({ ok: true, unit: 'mm', limit: 1e-3, sense: 'at-most', opening, sentence })
    expect(found.value).toBeLessThan(1e-9)
    // A page is named, and nobody who owns it.
    expect(found.ids).toHaveLength(1)
    expect(found.ids[0]).toMatch(/^page\//)
    expect(found.space).toHaveLength(3)
  })
})

describe('sides that differ', () => {
  test('in mm for lengths, in degrees for angles', () => {
    expect(first('shuts-flat', [tent({ leftWall: 44 })])).toMatchObject({
      ok: false,
      unit: 'mm',
      limit: 0,
      sense: 'at-most',
      opening: 0,
      ids: ['tent'],
      value: expect.closeTo(4, 9),
      sentence: 'The tent cannot shut flat: its left and right side differ by 4.0 mm.',
    })
    expect(first('shuts-flat', [gluedMoth({ right: { base: 45, facet: 63 } })])).toMatchObject({
      unit: 'deg',
      value: expect.closeTo(3, 9),
      sentence: 'The moth cannot shut flat: its left and right side differ by 3.0°.',
    })
  })

  test('are told instead of how far it stands off, of what stands on it that is told', () => {
    const all = only('shuts-flat', design([tent({ leftWall: 52 }), layer('eye', 'tent/ridge', 5, 25, 8)]))
    const failed = all.filter(({ ok }) => !ok)
    expect(failed.map(({ ids }) => ids[0])).toEqual(['tent', 'eye'])
    const eye = failed[1]
    expect(eye?.ids[1]).toMatch(/^eye\//)
    expect(eye?.unit).toBe('mm')
    // As far off the plane between the pages as its farthest corner.
    expect(eye?.value).toBeCloseTo(Math.abs(eye?.space?.[0] ?? 0), 9)
    expect(eye?.value).toBeGreaterThan(1)
    expect(eye?.sentence).toBe(
      `The eye does not shut flat: it still stands ${eye?.value.toFixed(1)} mm off the page.`,
    )
  })
})

describe('what does not open flat', () => {
  test('says how far it stays away, and which panel', () => {
    // Folds square to the gutter never turn: the slit's end, 40 mm over the apex, stays 80 from where it was cut.
    const found = first('opens-flat', [fold('beak', 'gutter', 60, -40, 30, { lean: 40 })])
    expect(found.ids[0]).toBe('beak')
    expect(found.ids[1]).toMatch(/^beak\/(left|right)$/)
    expect(found.sentence).toBe(
      'The beak does not open flat: it stays 80.0 mm away from where it should lie.',
    )
    expect(found.opening).toBe(180)
  })

  test('says what stops it, and by how much it is short', () => {
    // Pulled tight at arccos(-1/3).
    const stop = (Math.acos(-1 / 3) * 180) / Math.PI
    const all = only(
      'opens-flat',
      design([gluedMoth({ base: 60, facet: 45 }), layer('step', 'gutter', 110, 130, 9)]),
    )
    const failed = all.filter(({ ok }) => !ok)
    expect(failed).toMatchObject([
      {
        ids: ['moth'],
        value: expect.closeTo(180 - stop, 6),
        opening: expect.closeTo(stop, 6),
        limit: 0,
        unit: 'deg',
      },
    ])
  })

  test('is not what is glued and stands when flat, nor what is cut across its joints', () => {
    const standing = [tent(), layer('eye', 'tent/ridge', 5, 25, 8), layer('ear', 'tent/left', 8, 20, 5)]
    expect(only('opens-flat', design(standing)).every(({ ok }) => ok)).toBe(true)
    expect(
      only('opens-flat', design([tent(), layer('step', 'gutter', 100, 130, 20)])).every(({ ok }) => ok),
    ).toBe(true)
  })
})
