// Drawings as they come to paper: mixed colours against culori, which knows CSS Color 4, and shapes by hand.
import { converter, interpolate } from 'culori'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Drawing, Mark, PathMark } from '../../src/drawing/pen/marks.ts'
import { blended, mixed } from '../../src/drawing/pen/mix.ts'
import type { Hex } from '../../src/drawing/pen/papers.ts'
import type { Printed } from '../../src/drawing/pen/printed.ts'
import { printed } from '../../src/drawing/pen/printed.ts'

const colours = fc.integer({ min: 0, max: 0xffffff }).map((n): Hex => `#${n.toString(16).padStart(6, '0')}`)

const channels = (colour: Hex): number[] => [1, 3, 5].map((k) => Number.parseInt(colour.slice(k, k + 2), 16))

const rgb = converter('rgb')

/** What culori makes of `color-mix(in space, a share, b)`, by channel, 0 to 255. */
function reference(space: 'rgb' | 'oklab', a: Hex, share: number, b: Hex): number[] {
  const { r, g, b: blue } = rgb(interpolate([b, a], space)(share))
  return [r, g, blue].map((n) => 255 * Math.min(1, Math.max(0, n)))
}

describe('colours are mixed as CSS mixes them', () => {
  test.each([
    ['rgb', mixed],
    ['oklab', blended],
  ] as const)('in %s', (space, mix) => {
    fc.assert(
      fc.property(colours, fc.double({ min: 0, max: 1, noNaN: true }), colours, (a, share, b) => {
        const found = channels(mix(a, share, b))
        reference(space, a, share, b).forEach((value, k) => {
          // Rounded to a 255th; culori's own matrices have a digit less.
          expect(Math.abs((found[k] as number) - value)).toBeLessThan(0.6)
        })
      }),
    )
  })
})

const square = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
] as const

const facet = (more: Partial<PathMark> = {}): PathMark => ({
  ...{ mark: 'path', runs: [square], closed: true, role: 'facet' },
  paint: { card: 0, light: 0, sky: 1, face: 'front', paper: '#ffffff' },
  ...more,
})

const of = (...marks: Mark[]): Printed[] => {
  const drawing: Drawing = { box: [0, 0, 10, 10], unit: 'px', marks, says: '' }
  return printed(drawing)
}

describe('a surface', () => {
  test('in the lamp’s full light has its paper’s colour, and in its shade more of the shade’s', () => {
    // By marks.css: what is dark is 1 - 0.65 sky - 0.52 light.
    const [lit] = of(facet({ paint: { card: 0, light: 1, face: 'front', paper: '#f5b83d' } }))
    expect(lit).toMatchObject({ what: 'shape', fill: { colour: '#f5b83d', alpha: 1 } })
    const [dark] = of(facet())
    expect(dark).toMatchObject({ fill: { colour: mixed('#001153', 0.35, '#ffffff') } })
  })

  test('holds what lies on it within its own outline', () => {
    const edge: PathMark = { mark: 'path', runs: [square], closed: false, role: 'edge' }
    const [, held] = of(facet({ on: [edge] }))
    expect(held).toMatchObject({
      what: 'clip',
      runs: [square],
      inner: [{ what: 'shape', fill: null, line: { colour: '#1a1d33', width: 1, alpha: 1 } }],
    })
  })

  test('has its shadows as dark as the lamp was bright, and no light of the night', () => {
    const on: PathMark[] = [
      { mark: 'path', runs: [square], closed: true, role: 'shadow', strength: 0.5 },
      { mark: 'path', runs: [square], closed: true, role: 'glow' },
    ]
    const [, held] = of(facet({ paint: { card: 0, light: 0.5, sky: 1, face: 'front' }, on }))
    // marks.css: strength times the lamp's share of all light, 0.26 of 0.65 + 0.26.
    expect(held).toMatchObject({ inner: [{ fill: { colour: '#001153', alpha: (0.5 * 0.26) / 0.91 } }] })
    expect(held?.what === 'clip' && held.inner).toHaveLength(1)
  })
})

test('lines differ by dashes: cut solid, valley dashed, mountain dash and dot', () => {
  const lines = (['cut', 'valley', 'mountain'] as const).flatMap((role) =>
    of({ mark: 'path', runs: [square], closed: false, role }),
  )
  expect(lines.map((one) => (one.what === 'shape' ? one.line?.dash.length : null))).toEqual([0, 2, 4])
})

test('an arrow has a filled head, a halo a white one', () => {
  const arrow = (role: 'hand' | 'halo'): Mark => ({
    ...{ mark: 'path', runs: [square.slice(0, 2)], closed: false, role, arrow: 'end' },
  })
  expect(of(arrow('hand'))[1]).toMatchObject({ shape: { closed: true }, fill: { colour: '#1a1d33' } })
  expect(of(arrow('halo')).map((one) => one.what === 'shape' && one.line?.colour)).toEqual([
    '#ffffff',
    '#ffffff',
  ])
})
