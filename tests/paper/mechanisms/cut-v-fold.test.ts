// How far the end of a V-fold's slit may lean back to its apex, in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import type { CutVFold } from '../../../src/paper/mechanisms/cut-v-fold.ts'
import { cutVFold } from '../../../src/paper/mechanisms/cut-v-fold.ts'

const beak = (run: number, lean?: number): CutVFold => ({
  id: 'beak',
  kind: 'cut-v-fold',
  on: 'gutter',
  apex: 70,
  run,
  cut: 30,
  ...(lean === undefined ? {} : { lean }),
})

describe('the slit’s end keeps a millimetre past the apex', () => {
  test.each([
    [40, undefined],
    [40, 20],
    [40, -39],
    [-40, -20],
    [-40, 39],
    // A slit nearer than that to its apex may not lean back at all.
    [0.5, 0],
    [-0.5, 0],
  ])('a run of %d with a lean of %s will do', (run, lean) => {
    expect(cutVFold.limits?.(beak(run, lean))).toBeNull()
  })

  test.each([
    [40, -39.5, -39, true],
    [40, -40, -39, true],
    [-40, 39.5, 39, true],
    [-40, 40, 39, true],
    [0.5, -0.1, 0, true],
    // Past the apex it cannot even be drawn.
    [40, -41, -40, false],
    [-40, 41, 40, false],
  ])('a run of %d with a lean of %d will not: the nearest is %d', (run, lean, nearest, drawable) => {
    const found = cutVFold.limits?.(beak(run, lean))
    expect(found?.field).toBe('lean')
    expect(found?.nearest).toBeCloseTo(nearest, 9)
    expect(found?.drawable ?? false).toBe(drawable)
    expect(found?.sentence).toContain(
      `with a run of ${run} it is ${run > 0 ? 'at least' : 'at most'} ${-run}`,
    )
  })
})

describe('a bare run and cut', () => {
  test('make the wedge that a protractor reads', () => {
    const wedge = cutVFold.derived[0]
    expect(wedge?.get(beak(30))).toBeCloseTo(45, 9)
    expect(wedge?.get(beak(-30))).toBeCloseTo(45, 9)
    // 10 and 20 mm of lean: atan(30 / 40) = 36.87 and atan(30 / 10) = 71.57 degrees.
    expect(wedge?.get(beak(30, 10))).toBeCloseTo(36.8699, 4)
    expect(wedge?.get(beak(30, -20))).toBeCloseTo(71.5651, 4)
    expect(wedge?.get(beak(-30, -10))).toBeCloseTo(36.8699, 4)
    expect(wedge?.set(beak(30, 10), 45)).toEqual({ cut: expect.closeTo(40, 9) })
  })

  test('have their fold from the apex to the slit’s end, and their ridge from the apex to its foot', () => {
    const { creases, span, tip } = cutVFold.build(beak(-40, 0))
    expect(creases.map(({ length }) => length)).toEqual([40, 50, 50])
    expect(span).toEqual([30, 70])
    expect(tip).toEqual({ crease: 'ridge', along: 40 })
    expect(cutVFold.build(beak(40)).span).toEqual([70, 110])
  })
})
