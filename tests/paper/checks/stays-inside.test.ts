import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Vec3 } from '../../../src/paper/index.ts'
import { compile, partMargin, shutMargin } from '../../../src/paper/index.ts'
import { first, layer, mirrored, only } from '../shared/check-designs.ts'
import { design, designs, runs, vFold } from '../shared/designs.ts'
import { between, gardens } from '../shared/gardens.ts'
import { DEG, RAD } from '../shared/space.ts'

/** The least margin of the mechanisms named at one opening, from the pose alone. */
function marginAt(made: Design, ids: readonly string[]): (opening: number) => number {
  const poser = compile(made)
  const { width, height } = made.card
  return (opening) => {
    const corners = Object.entries(poser(opening).panels).flatMap(([name, points]): Vec3[] =>
      ids.some((id) => name.startsWith(`${id}/`)) ? points : [],
    )
    // Shut, the card ends at the gutter: the plane z = 0.
    const past = opening === 0 ? corners.map(([, , z]) => z).filter((z) => z < -1e-6) : []
    return Math.min(...past, ...corners.map(([x, y, z]) => Math.min(y, height - y, width - Math.hypot(x, z))))
  }
}

describe('the beak', () => {
  test('that leans out of the shut card says how far, past which edge, and when', () => {
    // 40 mm of ridge, wedge a: shut, the ridge stands at 2a from the gutter (Huffman, Kawasaki): its tip
    // is at 40 sin 2a from it, and 40 cos 2a along it from the apex.
    const beak = first('stays-inside', [vFold('beak', 'gutter', 130, -40, 60)])
    expect(beak).toMatchObject({ ok: false, opening: 0, ids: ['beak', expect.stringMatching('beak/')] })
    expect(beak.value).toBeCloseTo(148 - (130 + 40 * 0.5), 9)
    expect(beak.sentence).toBe('The beak sticks out 2.0 mm past the far edge when the card is shut.')
    expect(beak.space?.[1]).toBeCloseTo(150, 9)
  })

  test('whose tip just reaches the edge stays inside; a millionth of a millimetre more and it sticks out', () => {
    const at = (apex: number) => first('stays-inside', [vFold('beak', 'gutter', apex, -40, 60)])
    expect(at(128)).toMatchObject({ ok: true })
    expect(at(128).value).toBeCloseTo(0, 9)
    expect(at(128 + 1e-6).ok).toBe(false)
    expect(at(128 - 1e-6).ok).toBe(true)
  })

  test('seen by itself shut has the margin that a ruler reads', () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 40)])
    expect(only('stays-inside', made)[0]?.value).toBeCloseTo(shutMargin(made).margin, 9)
  })
})

describe('a layer', () => {
  test('twice as deep as the page is wide sticks out at the side when shut', () => {
    // Parallelogram: shut, the ridge is at the sum of both depths.
    const lamp = first('stays-inside', [layer('lamp', 'gutter', 40, 80, 60, 50)])
    expect(lamp.value).toBeCloseTo(105 - 110, 9)
    expect(lamp.sentence).toBe('The lamp sticks out 5.0 mm past the side edge when the card is shut.')
    expect(first('stays-inside', [layer('lamp', 'gutter', 40, 80, 52.5)]).ok).toBe(true)
    expect(first('stays-inside', [layer('lamp', 'gutter', 40, 80, 52.5 + 1e-6)]).ok).toBe(false)
  })

  test('that slides along the far edge has one margin all the way', () => {
    expect(first('stays-inside', [layer('lamp', 'gutter', 100, 148, 20)])).toMatchObject({
      ok: true,
      value: 0,
    })
  })
})

describe('the gutter', () => {
  test('ends the shut card: a tent on its outside sticks out by what its wall is longer than its foot', () => {
    // Shut, foot and wall lie along one line square to the gutter: 20 out and 30 back.
    const pond = { start: 30, end: 70, leftFoot: 20, rightFoot: 20, leftWall: 30, rightWall: 30, tab: 6 }
    const made = design([{ id: 'pond', kind: 'glued-tent', on: 'gutter', side: 'outside', ...pond }])
    const [found] = only('stays-inside', made)
    expect(found).toMatchObject({ ok: false, opening: 0, ids: ['pond', expect.stringMatching('pond/')] })
    expect(found?.value).toBeCloseTo(-10, 9)
    expect(found?.sentence).toBe('The pond sticks out 10.0 mm past the gutter when the card is shut.')
    expect(shutMargin(made).margin).toBeCloseTo(-10, 9)
    expect(partMargin(made, 'pond')).toBeCloseTo(-10, 9)
  })

  test('and a V-fold on its outside by its ridge times the sine of facet less base', () => {
    // Shut, a V-fold that is not pushed through lies at base − facet from its host (spherical law of cosines at 0).
    const moth = { apex: 40, toward: 1, base: 40, facet: 60, foot: 30, ridge: 24, tab: 6 }
    const found = first('stays-inside', [
      { id: 'moth', kind: 'glued-v-fold', on: 'gutter', side: 'outside', ...moth },
    ])
    expect(found.value).toBeCloseTo(-24 * Math.sin(20 * RAD), 9)
    expect(found.space?.[2]).toBeCloseTo(found.value, 9)
  })

  test('is no edge for what keeps inside it, however near', () => {
    expect(first('stays-inside', [vFold('reed', 'gutter', 60, 40, 20)]).sentence).not.toMatch('gutter')
  })
})

test('a ridge that leans back when shut sticks out on the way, while it stands upright', () => {
  // Ridge angle f from the gutter: tan(f/2) = tan a cos(t/2). It is upright where that is 1; for a wedge of
  // 60 degrees at cos(t/2) = 1 / sqrt 3, t = 109.47. Then 110 mm of ridge reach 5 mm past a page of 105,
  // shut only 110 sin 120 = 95.3 mm.
  const slanted = { cut: 40 * Math.tan(60 * RAD), lean: 70 }
  const made = design([{ ...vFold('beak', 'gutter', 200, -110, 60), ...slanted }], {
    width: 105,
    height: 300,
  })
  expect(shutMargin(made).margin).toBeGreaterThan(9)
  const found = only('stays-inside', made)[0]
  expect(found).toMatchObject({ ok: false, ids: ['beak', expect.stringMatching('beak/')] })
  expect(Math.abs((found?.value ?? 0) + 5)).toBeLessThan(1e-3)
  expect(Math.abs((found?.opening ?? 0) - 2 * Math.acos(1 / Math.sqrt(3)) * DEG)).toBeLessThan(1)
  expect(found?.sentence).toBe('The beak sticks out 5.0 mm past the side edge when the card is open at 109°.')
})

test('the least margin of a leaning ridge is the page less the ridge, whatever the wedge', () => {
  fc.assert(
    fc.property(between(47, 80), between(30, 160), (wedge, ridge) => {
      // Its own shut and flat ends are no worse than this: the slit runs back to a fold of 20 mm at most.
      const short = 20 * Math.cos(wedge * RAD)
      const beak = {
        ...vFold('beak', 'gutter', 300, -ridge, wedge),
        cut: short * Math.tan(wedge * RAD),
        lean: ridge - short,
      }
      const found = only('stays-inside', design([beak], { width: 200, height: 600 }))[0]
      expect(Math.abs((found?.value ?? 0) - (200 - ridge))).toBeLessThan(1e-3)
      expect(Math.abs((found?.opening ?? 0) - 2 * DEG * Math.acos(1 / Math.tan(wedge * RAD)))).toBeLessThan(
        0.5,
      )
    }),
    runs(200),
  )
})

test('a mechanism that stops the card is judged up to its stop', () => {
  const moth = {
    id: 'moth',
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 40,
    toward: 1,
    base: 60,
    facet: 45,
    foot: 40,
    ridge: 40,
    tab: 8,
  }
  const found = first('stays-inside', [moth])
  expect(found.verdict).toBeUndefined()
  expect(found.ok).toBe(true)
  // Base 60, facet 45: the card stops at 109.47 degrees (arccos -1/3).
  expect(found.opening).toBeLessThan(109.48)
  expect(first('clear-motion', [moth])).toMatchObject({ ok: true, verdict: 'clear' })
})

test('no opening has a smaller margin than the one found, and one has it', () => {
  fc.assert(
    fc.property(gardens(6), (made) => {
      const found = only('stays-inside', made)
      const all = made.mechanisms.map(({ id }) => id)
      for (const one of found) {
        const margin = marginAt(made, one.ok ? all : [one.ids[0] as string])
        expect(margin(one.opening as number)).toBeCloseTo(one.value, 9)
        for (let k = 0; k <= 200; k++) expect(margin(0.9 * k)).toBeGreaterThan(one.value - 1.001e-3)
      }
      const bad = new Set(found.filter(({ ok }) => !ok).map(({ ids }) => ids[0]))
      if (bad.size > 0)
        for (const { id } of made.mechanisms)
          if (!bad.has(id))
            for (let k = 0; k <= 60; k++) expect(marginAt(made, [id])(3 * k)).toBeGreaterThan(-1.001e-3)
    }),
    runs(40),
  )
})

test('also six levels deep', () => {
  fc.assert(
    fc.property(designs({ chain: true, depth: 6 }), (made) => {
      const found = only('stays-inside', made)
      for (const one of found) {
        expect(one.verdict).toBeUndefined()
        const margin = marginAt(made, one.ok ? made.mechanisms.map(({ id }) => id) : [one.ids[0] as string])
        for (let k = 0; k <= 180; k++) expect(margin(k)).toBeGreaterThan(one.value - 1.001e-3)
      }
    }),
    runs(25),
  )
})

test('the mirrored twin has the same margins', () => {
  fc.assert(
    fc.property(gardens(5), (made) => {
      const [one, two] = [made, mirrored(made)].map((of) =>
        only('stays-inside', of).map(({ value }) => value),
      )
      expect(two?.length).toBe(one?.length)
      one?.forEach((value, k) => {
        expect(two?.[k]).toBeCloseTo(value, 6)
      })
    }),
    runs(40),
  )
})
