import { describe, expect, test } from 'vitest'
import { parseDesign } from '../../src/paper/index.ts'
import { answer, inText } from '../../src/site/cells/number.ts'

const heron = parseDesign({
  hingebook: 1,
  title: 'Heron',
  card: { width: 105, height: 148 },
  mechanisms: [
    { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 40 },
    { id: 'jaw', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 40, cut: 40 },
  ],
})

const bare = parseDesign({ hingebook: 1, title: 'Card', card: { width: 105, height: 148 }, mechanisms: [] })

describe('a number in the prose', () => {
  test('is the kernel’s: 45/45 at 90° rises two thirds of its ridge', () => {
    // The ridge is the gutter mirrored in the plane of the fold lines: rise 2/3 of 40, worked by hand.
    expect(answer(heron, { of: 'rise', id: 'beak', at: 90 }).value).toBeCloseTo((2 / 3) * 40, 9)
  })

  test('is highest at 109.47°, where the angle’s cosine is −1/3', () => {
    const { value, unit } = answer(heron, { of: 'highest-opening', id: 'beak' })
    expect(value).toBeCloseTo((Math.acos(-1 / 3) * 180) / Math.PI, 4)
    expect(unit).toBe('deg')
  })

  test('a point and its twin on a bare card stand a chord apart', () => {
    // The chord of a circle, 2 r sin(θ/2).
    expect(answer(bare, { of: 'apart', across: 60, at: 60 }).value).toBeCloseTo(60, 9)
    expect(answer(bare, { of: 'apart', across: 60, at: 180 }).value).toBeCloseTo(120, 9)
  })

  test('can be a field, a derived number, an angle, a size of the card', () => {
    expect(answer(heron, { of: 'cut', id: 'beak' })).toMatchObject({ value: 40, unit: 'mm' })
    expect(answer(heron, { of: 'wedge', id: 'beak' }).value).toBeCloseTo(45, 9)
    expect(answer(heron, { of: 'angle', crease: 'gutter', at: 70 }).value).toBeCloseTo(70, 9)
    expect(answer(heron, { of: 'width' })).toMatchObject({ value: 105, unit: 'mm' })
    expect(answer(heron, { of: 'gape', id: 'beak', and: 'jaw', at: 180 }).value).toBeCloseTo(0, 9)
  })

  test('can ask what another slit would give', () => {
    const longer = answer(heron, { of: 'rise', id: 'beak', at: 90, with: { cut: 46 } }).value
    expect(longer).toBeGreaterThan(answer(heron, { of: 'rise', id: 'beak', at: 90 }).value)
  })
})

describe('what cannot be computed is said in a sentence', () => {
  test.each([
    [{ of: 'rise', id: 'beek', at: 90 }, 'Heron has no mechanism beek; it has beak, jaw.'],
    [{ of: 'rise', id: 'beak' }, 'A number of rise needs at, the opening in degrees.'],
    [{ of: 'rise', id: 'beak', at: 200 }, 'at is 200; an opening goes from 0 (shut) to 180 (flat) degrees.'],
    [{ of: 'height-of-beak' }, /^height-of-beak is nothing that can be read off a card; give rise, /],
    [{ of: 'depth', id: 'beak' }, /^beak has no depth; it has apex, run, cut, /],
    [
      { of: 'angle', crease: 'beak/top', at: 90 },
      /^Heron has no crease beak\/top; it has gutter, beak\/ridge, /,
    ],
    [{ of: 'apart', across: 300, at: 90 }, 'across is 300; the page goes from 0 to 105 mm.'],
  ] as const)('%o', (ask, sentence) => {
    expect(() => answer(heron, ask)).toThrow(sentence)
  })

  test('a bare card has no mechanism', () => {
    expect(() => answer(bare, { of: 'rise', id: 'beak', at: 90 })).toThrow(
      'Card is a bare card; there is no mechanism beak.',
    )
  })
})

describe('in a sentence', () => {
  test('a reading has one decimal and a unit that stays beside it', () => {
    expect(inText({ value: 30.04, unit: 'mm' })).toBe('30.0\u00a0mm')
    expect(inText({ value: 109.4712, unit: 'deg' })).toBe('109.5°')
  })

  test('a length that the author chose stays whole', () => {
    expect(inText({ value: 46, unit: 'mm', chosen: true })).toBe('46\u00a0mm')
    expect(inText({ value: 46.25, unit: 'mm', chosen: true })).toBe('46.3\u00a0mm')
  })

  test('less than nothing has a true minus, and nothing has none', () => {
    expect(inText({ value: -3.21, unit: 'mm' })).toBe('\u22123.2\u00a0mm')
    expect(inText({ value: -0.001, unit: 'mm' })).toBe('0.0\u00a0mm')
  })

  test('no number, no text', () => {
    expect(() => inText({ value: Number.NaN, unit: 'mm' })).toThrow('which is no number to print')
  })
})
