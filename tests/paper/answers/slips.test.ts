import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  change,
  likelyPointSlips,
  likelySlips,
  measure,
  pagePoint,
  parseDesign,
} from '../../../src/paper/index.ts'

const design = (...mechanisms: object[]) =>
  parseDesign({ hingebook: 1, title: 'Test', card: { width: 105, height: 148 }, mechanisms })

const beak = (run: number, cut: number) => ({
  id: 'beak',
  kind: 'cut-v-fold',
  on: 'gutter',
  apex: 110,
  run,
  cut,
})

const layer = (left: number, right: number) => ({
  id: 'body',
  kind: 'cut-layer',
  on: 'gutter',
  start: 50,
  end: 90,
  left,
  right,
})

/** Rise of a V-fold cut from the sheet. Source: spherical law of cosines with equal angles, phi = 2 delta. */
const riseByFormula = (run: number, cut: number, opening: number): number => {
  const half = (opening * Math.PI) / 360
  const phi = 2 * Math.atan((cut / run) * Math.cos(half))
  return run * Math.sin(phi) * Math.sin(half)
}

describe('likely slips of the hand', () => {
  test('a right reading has no slip to explain', () => {
    const d = design(beak(-40, 38))
    const { rise } = measure(d, 90).tips.beak ?? { rise: Number.NaN }
    expect(likelySlips(d, 'beak', 90, rise)).toEqual([])
  })

  test('a slit cut short is found by how much, against the closed formula', () => {
    const reading = riseByFormula(40, 36.1, 90)
    const slips = likelySlips(design(beak(-40, 38)), 'beak', 90, reading)
    const slit = slips.find(({ field }) => field === 'cut')
    expect(slit).toMatchObject({ id: 'beak', label: 'Slit', unit: 'mm', from: 38 })
    expect(slit?.to).toBeCloseTo(36.1, 6)
    expect(slit?.slip).toBeCloseTo(-1.9, 6)
  })

  test('a card opened too little is found by how many degrees', () => {
    const reading = riseByFormula(40, 38, 84)
    const opening = likelySlips(design(beak(-40, 38)), 'beak', 90, reading).find(({ id }) => id === 'card')
    expect(opening).toMatchObject({ field: 'opening', unit: 'deg', from: 90 })
    expect(opening?.to).toBeCloseTo(84, 6)
  })

  test('a run towards the reader counts as short when it is nearer to nought', () => {
    const reading = riseByFormula(38.5, 38, 90)
    const run = likelySlips(design(beak(-40, 38)), 'beak', 90, reading).find(({ field }) => field === 'run')
    expect(run?.to).toBeCloseTo(-38.5, 6)
    expect(run?.slip).toBeCloseTo(-1.5, 6)
  })

  test('two equal depths are one slip, not the left one, the right one and both', () => {
    const slips = likelySlips(design(layer(34, 34)), 'body', 90, 33)
    expect(slips[0]).toMatchObject({ field: 'depth', label: 'Depth' })
    expect(slips[0]?.slip).toBeCloseTo(-1, 6)
    expect(slips.map(({ field }) => field)).toEqual(['depth', 'opening'])
  })

  test('two walls that differ slip together too, and keep their difference', () => {
    const tent = {
      id: 'tent',
      kind: 'glued-tent',
      on: 'gutter',
      start: 50,
      end: 90,
      leftFoot: 30,
      rightFoot: 26,
      leftWall: 40,
      rightWall: 44,
    }
    const d = design(tent)
    const made = change(d, 'tent', { leftWall: 38, rightWall: 42 })
    const slips = likelySlips(d, 'tent', 90, measure(made, 90).tips.tent?.rise ?? Number.NaN)
    expect(slips.find(({ field }) => field === 'wall')?.slip).toBeCloseTo(-2, 6)
    expect(slips.map(({ field }) => field).filter((field) => field.endsWith('Wall'))).toEqual([])
  })

  test('a field that does not change the rise is never blamed', () => {
    const slips = likelySlips(design(layer(34, 30)), 'body', 90, 29)
    expect(slips.map(({ field }) => field)).not.toContain('start')
    // The shallower cut sets the rise; the deeper one would have to lose its lead first.
    expect(slips.find(({ field }) => field === 'right')?.slip).toBeCloseTo(-1, 6)
    expect(slips.find(({ field }) => field === 'left')?.slip).toBeCloseTo(-5, 6)
  })

  test('a reading that no small slip explains gets no answer', () => {
    expect(likelySlips(design(layer(34, 34)), 'body', 90, 80)).toEqual([])
  })

  test('an unknown mechanism is refused', () => {
    expect(() => likelySlips(design(), 'beak', 90, 10)).toThrow('there is no mechanism beak')
  })

  test('a child may rise wrongly because of the one it stands on', () => {
    const child = { id: 'eye', kind: 'cut-v-fold', on: 'beak/ridge', apex: 8, run: 14, cut: 9 }
    const d = design(beak(-40, 38), child)
    const short = change(d, 'beak', { cut: 36.5 })
    const reading = measure(short, 90).tips.eye?.rise ?? Number.NaN
    const slips = likelySlips(d, 'eye', 90, reading)
    expect(slips.find(({ id, field }) => id === 'beak' && field === 'cut')?.to).toBeCloseTo(36.5, 5)
  })

  test('every slip, made on purpose, gives the reading; they come smallest first', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 60, noNaN: true }),
        fc.double({ min: 15, max: 60, noNaN: true }),
        fc.double({ min: 40, max: 140, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (run, cut, opening, off) => {
          const d = design(beak(-run, cut))
          const reading = riseByFormula(run, cut, opening) + off
          const slips = likelySlips(d, 'beak', opening, reading)
          for (const { id, field, to } of slips) {
            const made = id === 'card' ? d : change(d, id, { [field]: to })
            const rise = measure(made, id === 'card' ? to : opening).tips.beak?.rise
            expect(rise).toBeCloseTo(reading, 6)
          }
          const sizes = slips.map(({ slip }) => Math.abs(slip))
          expect(sizes).toEqual([...sizes].sort((a, b) => a - b))
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('a point of a bare card', () => {
  test('it is the chord 2 r sin(opening / 2) from its twin', () => {
    expect(pagePoint([60, 80], 0).gape).toBe(0)
    expect(pagePoint([60, 80], 60).gape).toBeCloseTo(60, 12)
    expect(pagePoint([60, 80], 90).gape).toBeCloseTo(60 * Math.SQRT2, 12)
    expect(pagePoint([60, 80], 180).gape).toBe(120)
  })

  test('it never leaves its circle round the gutter', () => {
    for (let opening = 0; opening <= 180; opening += 5) {
      const { at, standOff } = pagePoint([60, 80], opening)
      expect(Math.hypot(at[0], at[2])).toBeCloseTo(standOff, 10)
    }
  })

  test('a gape read wrongly is traced to the distance or to the opening', () => {
    const slips = likelyPointSlips([60, 80], 60, 58)
    expect(slips.map(({ field }) => field).sort()).toEqual(['across', 'opening'])
    expect(slips.find(({ field }) => field === 'across')?.to).toBeCloseTo(58, 6)
  })
})
