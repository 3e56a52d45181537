// Kinds cut from the card, flat: what follows from their numbers and what a hand does to them, worked by hand.
import { describe, expect, test } from 'vitest'
import type { CutLayer } from '../../../src/paper/mechanisms/cut-layer.ts'
import { cutLayer } from '../../../src/paper/mechanisms/cut-layer.ts'
import type { CutTrapezoid } from '../../../src/paper/mechanisms/cut-trapezoid.ts'
import { cutTrapezoid } from '../../../src/paper/mechanisms/cut-trapezoid.ts'
import type { CutVFold } from '../../../src/paper/mechanisms/cut-v-fold.ts'
import { cutVFold } from '../../../src/paper/mechanisms/cut-v-fold.ts'

const named = <H extends { readonly name: string }>(all: readonly H[], name: string): H => {
  const found = all.find((one) => one.name === name)
  if (!found) throw new Error(name)
  return found
}

describe('a trapezoid', () => {
  const roof: CutTrapezoid = {
    id: 'roof',
    kind: 'cut-trapezoid',
    on: 'gutter',
    start: 40,
    end: 70,
    startCut: 10,
    endCut: 40,
  }

  test('has a cut at either end, its outline between them, and one wedge', () => {
    const { cuts, notch, span, tip, creases } = cutTrapezoid.build(roof)
    expect(cuts.left).toEqual([
      [
        [0, 40],
        [10, 40],
      ],
      [
        [0, 70],
        [40, 70],
      ],
    ])
    expect(cuts.right).toEqual(cuts.left)
    expect(notch?.left).toEqual([
      [0, 40],
      [0, 70],
      [40, 70],
      [10, 40],
    ])
    expect(span).toEqual([40, 70])
    // A fold goes over 30 mm along and 30 mm out.
    expect(creases.map(({ length }) => Number(length.toFixed(9)))).toEqual(
      [30, 30 * Math.SQRT2, 30 * Math.SQRT2].map((x) => Number(x.toFixed(9))),
    )
    expect(tip).toEqual({ crease: 'ridge', along: 30 })
    const { get, set } = named(cutTrapezoid.derived, 'wedge')
    expect(get(roof)).toBeCloseTo(45, 9)
    expect(get({ ...roof, endCut: 10 })).toBe(0)
    expect(set(roof, 0).endCut).toBeCloseTo(10, 9)
    expect(set(roof, 45).endCut).toBeCloseTo(40, 9)
    // Ten less thirty is less than nothing.
    expect(set(roof, -45).endCut).toBe(0)
  })

  test('has its tip at its deeper end, or in the middle of a level ridge; a cut of no depth is none', () => {
    const tip = (startCut: number, endCut: number) =>
      cutTrapezoid.build({ ...roof, startCut, endCut }).tip.along
    expect([tip(10, 40), tip(40, 10), tip(20, 20)]).toEqual([30, 0, 15])
    const cuts = (startCut: number, endCut: number) =>
      cutTrapezoid.build({ ...roof, startCut, endCut }).cuts.right.map(([from]) => from?.[1])
    expect([cuts(0, 40), cuts(40, 0), cuts(0, 0)]).toEqual([[70], [40], []])
  })

  test('is dragged by the ends of its cuts, which stay a millimetre apart', () => {
    const [start, end] = [
      named(cutTrapezoid.handles, 'start-corner'),
      named(cutTrapezoid.handles, 'end-corner'),
    ]
    expect([start.at(roof), end.at(roof)]).toEqual([
      [10, 40],
      [40, 70],
    ])
    expect(start.drag(roof, [12, 30])).toEqual({ startCut: 12, start: 30 })
    expect(start.drag(roof, [-1, 75])).toEqual({ startCut: 0, start: 69 })
    expect(end.drag(roof, [12, 80])).toEqual({ endCut: 12, end: 80 })
    expect(end.drag(roof, [-1, 20])).toEqual({ endCut: 0, end: 41 })
  })
})

describe('a layer', () => {
  const step: CutLayer = {
    id: 'step',
    kind: 'cut-layer',
    on: 'gutter',
    start: 40,
    end: 70,
    left: 20,
    right: 12,
  }

  test('has facets as wide as the other side’s cut is deep', () => {
    const { panels, notch, cuts, tip, creases } = cutLayer.build(step)
    expect(panels.map(({ outline }) => outline[2])).toEqual([
      [12, 30],
      [20, 30],
    ])
    expect([notch?.left[2], notch?.right[2]]).toEqual([
      [20, 70],
      [12, 70],
    ])
    expect(cuts.left).toEqual([
      [
        [0, 40],
        [20, 40],
      ],
      [
        [0, 70],
        [20, 70],
      ],
    ])
    expect(cutLayer.build({ ...step, left: 0 }).cuts.left).toEqual([])
    expect(tip).toEqual({ crease: 'ridge', along: 15 })
    expect(creases.map(({ length }) => length)).toEqual([30, 30, 30])
    const out = new Float64Array(6)
    cutLayer.build(step).turns?.(0, 1, out)
    expect([...out]).toEqual([1, 0, 1, 0, 1, 0])
  })

  test('is as deep as its deeper cut; one depth alone is meant for both', () => {
    const { get, set } = named(cutLayer.derived, 'depth')
    expect(get(step)).toBe(20)
    expect(get({ ...step, left: 3 })).toBe(12)
    expect(set(step, 7)).toEqual({ left: 7, right: 7 })
    const { right: _, ...alone } = step
    expect(cutLayer.complete(alone)).toMatchObject({ left: 20, right: 20 })
    const { left: __, ...none } = alone
    expect(cutLayer.limits?.(none)?.field).toBe('left')
    expect(cutLayer.limits?.(alone)).toBeNull()
    expect(cutLayer.limits?.({ ...step, end: 39 })).toMatchObject({ field: 'end', nearest: 40 })
  })

  test('is dragged by corners and folds', () => {
    const drag = (name: string, to: readonly [number, number]) => named(cutLayer.handles, name).drag(step, to)
    const at = (name: string) => named(cutLayer.handles, name).at(step)
    expect([at('start-corner'), at('end-corner'), at('left-fold'), at('right-fold')]).toEqual([
      [12, 40],
      [12, 70],
      [20, 55],
      [12, 55],
    ])
    expect(drag('start-corner', [15, 30])).toEqual({ left: 15, right: 15, start: 30 })
    expect(drag('start-corner', [-5, 90])).toEqual({ left: 0, right: 0, start: 69 })
    expect(drag('end-corner', [15, 90])).toEqual({ left: 15, right: 15, end: 90 })
    expect(drag('end-corner', [-5, 0])).toEqual({ left: 0, right: 0, end: 41 })
    expect(drag('left-fold', [25, 0])).toEqual({ left: 25, right: 12 })
    expect(drag('left-fold', [-1, 0])).toEqual({ left: 0, right: 12 })
    expect(drag('right-fold', [25, 0])).toEqual({ left: 20, right: 25 })
    expect(drag('right-fold', [-1, 0])).toEqual({ left: 20, right: 0 })
  })
})

describe('a V-fold', () => {
  const beak: CutVFold = {
    id: 'beak',
    kind: 'cut-v-fold',
    on: 'gutter',
    apex: 110,
    run: -40,
    cut: 30,
    lean: 8,
  }
  const jaw: CutVFold = { ...beak, apex: 20, run: 40, lean: -8 }

  test('has its slit at the end of its run, shifted by its lean', () => {
    const { cuts, notch, span, tip, creases, panels } = cutVFold.build(beak)
    expect(cuts.left).toEqual([
      [
        [0, 70],
        [30, 78],
      ],
    ])
    expect(notch?.right).toEqual([
      [0, 110],
      [0, 70],
      [30, 78],
    ])
    expect(span).toEqual([70, 110])
    expect(cutVFold.build(jaw).span).toEqual([20, 60])
    expect(tip).toEqual({ crease: 'ridge', along: 40 })
    // From the apex to the slit's end: 32 along and 30 out.
    expect(creases[0]?.length).toBe(40)
    expect(creases[1]?.length).toBeCloseTo(Math.hypot(32, 30), 9)
    expect(panels[0]?.outline).toEqual([
      [0, -0],
      [0, 40],
      [30, 32],
    ])
  })

  test('has a wedge that follows from slit, run and lean', () => {
    const { get, set } = named(cutVFold.derived, 'wedge')
    for (const m of [beak, jaw]) {
      expect(get(m)).toBeCloseTo((Math.atan(30 / 32) * 180) / Math.PI, 9)
      expect(set(m, 45).cut).toBeCloseTo(32, 9)
    }
  })

  test('is dragged by its slit’s end, which stays past the apex', () => {
    const { at, drag } = named(cutVFold.handles, 'slit-end')
    expect([at(beak), at(jaw)]).toEqual([
      [30, 78],
      [30, 52],
    ])
    expect(drag(beak, [20, 75])).toEqual({ cut: 20, lean: 5 })
    expect(drag(beak, [-3, 130])).toEqual({ cut: 0, lean: 39 })
    expect(drag(jaw, [20, 55])).toEqual({ cut: 20, lean: -5 })
    expect(drag(jaw, [20, 5])).toEqual({ cut: 20, lean: -39 })
  })

  test('is dragged by its apex and its foot, which stay a millimetre apart, whatever the lean', () => {
    const [apex, foot] = [named(cutVFold.handles, 'apex'), named(cutVFold.handles, 'slit-foot')]
    expect([apex.at(beak), foot.at(beak), foot.at(jaw)]).toEqual([
      [0, 110],
      [0, 70],
      [0, 60],
    ])
    expect(apex.drag(beak, [5, 120])).toEqual({ apex: 120, run: -50 })
    // Past its own slit it stops: the lean of 8 must stay past the apex as well.
    expect(apex.drag(beak, [0, 60])).toEqual({ apex: 79, run: -9 })
    expect(apex.drag({ ...beak, lean: 0 }, [0, 60])).toEqual({ apex: 71, run: -1 })
    expect(apex.drag(jaw, [0, 90])).toEqual({ apex: 51, run: 9 })
    expect(apex.drag(jaw, [0, -5])).toEqual({ apex: 0, run: 60 })
    expect(apex.drag(beak, [0, 2500])).toEqual({ apex: 2000, run: -1930 })
    expect(foot.drag(beak, [0, 60])).toEqual({ run: -50 })
    expect(foot.drag(beak, [0, 200])).toEqual({ run: -9 })
    expect(foot.drag(jaw, [0, 90])).toEqual({ run: 70 })
    expect(foot.drag(jaw, [0, 0])).toEqual({ run: 9 })
  })

  test('is dragged by the middle of its fold', () => {
    const { at, drag } = named(cutVFold.handles, 'fold-line')
    expect(at(beak)).toEqual([15, 94])
    expect(at(jaw)).toEqual([15, 36])
    // Twice as far out on the same place: a slit twice as deep.
    expect(drag(beak, [30, 94]).cut).toBeCloseTo(60, 9)
    expect(drag(jaw, [30, 36]).cut).toBeCloseTo(60, 9)
    expect(drag(beak, [-4, 94]).cut).toBe(0)
    // Level with the apex or behind it counts as a tenth of a millimetre before it.
    expect(drag(beak, [1, 120]).cut).toBeCloseTo(320, 9)
  })
})
