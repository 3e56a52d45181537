// How much paper is left between cuts, folds and edges: differences of lengths on a page of 105 by 148 mm. That 5 mm
// are asked for is common practice, no source.
import { describe, expect, test } from 'vitest'
import { bridge } from '../../../src/paper/checks/bridge.ts'
import { subjectOf } from '../../../src/paper/checks/subject.ts'
import type { Check } from '../../../src/paper/index.ts'
import { fold, layer, only } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const told = (mechanisms: readonly object[], bridge = 5): readonly Check[] =>
  only('bridge', design(mechanisms), { repairs: false, bridge })

/** What is measured between whom, and on which panel. */
const seen = (mechanisms: readonly object[], limit = 5) =>
  told(mechanisms, limit).map(({ value, ids }) => `${ids.join(' ')}: ${value.toFixed(3)}`)

describe('from a cut to the edge of the page', () => {
  test('the least is told, however far it is', () => {
    // Cut from 40 to 80 along and 20 across: 40 to the near edge, 68 to the far one, 85 to the side.
    expect(told([layer('lamp', 'gutter', 40, 80, 20)])).toMatchObject([
      {
        ok: true,
        value: expect.closeTo(40, 9),
        limit: 5,
        sense: 'at-least',
        caution: true,
        ids: ['lamp', expect.stringMatching(/^page\/(left|right)$/)],
        sentence: 'The narrowest bridge of paper is 40.0 mm, between the lamp and the edge of the page.',
      },
    ])
    expect(told([layer('lamp', 'gutter', 70, 80, 90)])[0]?.value).toBeCloseTo(15, 9)
    // A slit alone in a large page.
    const far = only('bridge', design([fold('beak', 'gutter', 500, -10, 6)], { width: 600, height: 1000 }))
    expect(far[0]?.value).toBeCloseTo(490, 9)
    expect(told([])).toEqual([])
  })

  test('on both pages it is told once, and where to look', () => {
    const found = told([layer('lamp', 'gutter', 3, 40, 20)])
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({ ok: false, value: expect.closeTo(3, 9) })
    const [from, to] = found[0]?.flat ?? []
    expect([from?.[1], to?.[1]].sort()).toEqual([0, 3])
    expect(Math.abs(from?.[0] ?? 0)).toBeCloseTo(Math.abs(to?.[0] ?? 9), 9)
    expect(found[0]?.sentence).toMatch(
      /^Only 3\.0 mm of paper is left on the (left|right) page between the lamp and the edge of the page: it may tear\.$/,
    )
  })

  test('the limit is what is asked for', () => {
    const at = (limit: number) => told([layer('lamp', 'gutter', 3, 40, 20)], limit)[0]?.ok
    expect([at(2), at(3), at(3.01), at(4)]).toEqual([true, true, false, false])
  })
})

describe('between two', () => {
  test('the later one is named first, and both are', () => {
    const [one, two] = [layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 53, 80, 20)]
    expect(seen([one, two])[0]).toMatch(/^reed lamp page\/(left|right): 3\.000$/)
    expect(seen([two, one])[0]).toMatch(/^lamp reed page\/(left|right): 3\.000$/)
    expect(told([one, two])[0]?.sentence).toMatch(
      /^Only 3\.0 mm of paper is left on the (left|right) page between the reed and the lamp(’s (left|right) fold)?: it may tear\.$/,
    )
  })

  test('every two that are too near are told; if none are, the nearest', () => {
    const row = [
      layer('a', 'gutter', 20, 40, 20),
      layer('b', 'gutter', 44, 70, 20),
      layer('c', 'gutter', 72, 90, 20),
    ]
    expect(seen(row).map((line) => line.replace(/page\S+/, 'page'))).toEqual([
      'b a page 4.000',
      'c b page 2.000',
    ])
    expect(seen(row, 3).map((line) => line.replace(/page\S+/, 'page'))).toEqual(['c b page 2.000'])
    // 1 mm is the least that is looked for first, and then farther: what is nearest is all that is told.
    expect(seen(row, 0.5).map((line) => line.replace(/page\S+/, 'page'))).toEqual(['c b page 2.000'])
  })

  test('a hole between them is no paper', () => {
    // On a wall 30 deep: 9 mm cut from its ridge, and 12 from its far fold, so that 9 are left between the two.
    const wall = [
      layer('lamp', 'gutter', 20, 90, 30),
      layer('eye', 'lamp/ridge', 10, 40, 9),
      layer('ear', 'lamp/left', 10, 40, 12),
    ]
    const couples = (...more: readonly object[]) =>
      bridge(
        subjectOf(design([...wall, ...more]), { bridge: 10, thickness: 2 }, null, { left: 1e5 }),
        new Set(),
      ).map(({ ids, value }) => `${ids.slice(0, 2).join(' ')} ${value.toFixed(1)}`)
    expect(couples()).toContain('ear eye 9.0')
    // A third takes all that lies between them.
    const taken = couples(layer('nose', 'lamp/ridge', 5, 45, 25))
    expect(taken.some((line) => line.startsWith('ear eye'))).toBe(false)
    // One beside them takes nothing of it.
    expect(couples(layer('nose', 'lamp/ridge', 44, 60, 25))).toContain('ear eye 9.0')
  })

  test('the halves of one slit are one cut', () => {
    const [beak, jaw] = [fold('beak', 'gutter', 110, -40, 38), fold('jaw', 'gutter', 30, 40, 38)]
    const found = told([beak, jaw])
    expect(found).toHaveLength(1)
    expect(found[0]?.ok).toBe(true)
    expect(found[0]?.ids).not.toContain('jaw beak')
  })
})

describe('of a guest', () => {
  const lamp = layer('lamp', 'gutter', 20, 90, 30)

  test('to the fold behind it, which is named', () => {
    // Cut 27 deep into a wall of 30.
    const found = told([lamp, layer('eye', 'lamp/ridge', 10, 40, 27)])
    expect(found.map(({ ids }) => ids.slice(0, 2))).toEqual([['eye', 'lamp']])
    expect(found[0]?.value).toBeCloseTo(3, 9)
    expect(found[0]?.sentence).toMatch(
      /^Only 3\.0 mm of paper is left on the lamp’s (left|right) side between the eye and the lamp’s (left|right) fold: it may tear\.$/,
    )
  })

  test('to the end of its strip, and not to the fold that it sits on', () => {
    expect(seen([lamp, layer('eye', 'lamp/ridge', 4, 40, 9)])[0]).toMatch(
      /^eye lamp lamp\/(left|right): 4\.000$/,
    )
    // Both ends in the middle, 12 deep into 30: 18 to the fold behind it, 20 to either end.
    expect(seen([lamp, layer('eye', 'lamp/ridge', 20, 50, 12)])[0]).toMatch(
      /^eye lamp lamp\/(left|right): 18\.000$/,
    )
  })

  test('two that sit on either side of one fold are told by their cuts', () => {
    // Their cuts begin on the same ridge, 4 mm apart along it.
    expect(
      seen([lamp, layer('eye', 'lamp/ridge', 10, 30, 9), layer('ear', 'lamp/ridge', 34, 50, 9)])[0],
    ).toMatch(/^ear eye lamp\/(left|right): 4\.000$/)
  })
})

describe('what does not count', () => {
  test('a joint that is glued does not weaken its page', () => {
    // Joints 2 mm from the cut's end and from the edge: the moth takes nothing out.
    expect(told([gluedMoth({ apex: 1, foot: 20, ridge: 20 })])).toEqual([])
    const beside = told([layer('lamp', 'gutter', 70, 100, 20), gluedMoth({ apex: 40, foot: 40, ridge: 20 })])
    expect(beside.every(({ ok, ids }) => ok && !ids.includes('moth'))).toBe(true)
  })

  test('nor what cannot be cut as drawn, nor what nobody asks about', () => {
    const made = design([layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 53, 80, 20)])
    const ask = (spoilt: string[], ids: string[] | null) =>
      bridge(
        subjectOf(made, { bridge: 5, thickness: 2 }, ids && { ids: new Set(ids), alone: false }, {
          left: 1e5,
        }),
        new Set(spoilt),
      ).map(({ ids: of, value }) => `${of[0]} ${Math.round(value)}`)
    expect(ask([], null)).toEqual(['reed 3'])
    expect(ask(['reed'], null)).toEqual(['lamp 20'])
    expect(ask(['lamp', 'reed'], null)).toEqual([])
    expect(ask([], ['lamp'])).toEqual(['reed 3'])
    expect(ask([], ['owl'])).toEqual([])
    // In haste only what is too near is told.
    expect(ask(['reed'], ['lamp'])).toEqual([])
  })
})
