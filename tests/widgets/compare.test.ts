import { describe, expect, test } from 'vitest'
import { compare, comparisonSays, modelSays, slipSays } from '../../src/widgets/compare.ts'
import { bare, bareConfig, beak, layer } from './benches.ts'

const at90 = { opening: 90 }

describe('a ruler’s reading beside the model', () => {
  test('the model says the depth for a layer at 90 degrees', () => {
    expect(modelSays(layer, {}, null, at90)).toBeCloseTo(34, 9)
  })

  test('as near as a pencil line is right', () => {
    const found = compare(layer, {}, null, at90, 34.4)
    expect(found.slips).toEqual([])
    expect(comparisonSays(found, 'mm')).toEqual(['That is right, to the width of a pencil line. Well made.'])
  })

  test('it says how far off, and the likeliest slip first', () => {
    const said = comparisonSays(compare(layer, {}, null, at90, 32), 'mm', 'body')
    expect(said.slice(0, 2)).toEqual([
      'You are 2.0 mm low.',
      'The likeliest slip: the left depth is 2.0 mm short.',
    ])
  })

  test('what no small slip explains is told to be measured again', () => {
    const said = comparisonSays(compare(layer, {}, null, at90, 90), 'mm', 'body')
    expect(said).toEqual([
      'You are 56.0 mm high.',
      'No single small slip explains that. Measure once more, and check the opening.',
    ])
  })

  test('the other half of the beak can be measured too', () => {
    const { model } = compare(beak, {}, null, { id: 'jaw', opening: 90 }, 25)
    // tan(delta) = slit cos(45) / run; rise = run sin(2 delta) sin(45)
    const delta = Math.atan((38 / 34) * Math.SQRT1_2)
    expect(model).toBeCloseTo(34 * Math.sin(2 * delta) * Math.SQRT1_2, 9)
  })

  test('the gap of a bare card is measured through the air', () => {
    const found = compare(bare, bareConfig, [60, 80], at90, 82)
    expect(found.model).toBeCloseTo(60 * Math.SQRT2, 9)
    expect(comparisonSays(found, 'mm').join(' ')).toContain('distance to the gutter is 2.0 mm short')
  })

  test.each([
    [
      { id: 'beak', field: 'cut', label: 'Slit', unit: 'mm', from: 38, to: 36.1, slip: -1.9 },
      'the slit is 1.9 mm short',
    ],
    [
      { id: 'jaw', field: 'cut', label: 'Slit', unit: 'mm', from: 38, to: 40, slip: 2 },
      'the slit of the jaw is 2.0 mm long',
    ],
    [
      { id: 'beak', field: 'run', label: 'Apex to slit', unit: 'mm', from: -40, to: -38, slip: -2 },
      'the way from the apex to the slit is 2.0 mm short',
    ],
    [
      { id: 'beak', field: 'lean', label: 'Lean', unit: 'mm', from: 0, to: 2, slip: 2 },
      'the end of the slit is 2.0 mm off along the fold',
    ],
    [
      { id: 'card', field: 'opening', label: 'Opening', unit: 'deg', from: 90, to: 84, slip: -6 },
      'the card was opened to 84.0°, not 90.0°',
    ],
  ] as const)('%o', (slip, sentence) => {
    expect(slipSays(slip, 'mm', 'beak')).toBe(sentence)
  })
})
