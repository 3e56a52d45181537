// What a handle does when it is dragged, for every kind: what was asked where it can be had, and the nearest that can
// where not. The handle itself says where it is; a drag to a place and a look at the place must agree.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Change, Mechanism } from '../../../src/paper/index.ts'
import { assign, kindOf } from '../../../src/paper/index.ts'
import { design } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'

const card = { width: 297, height: 420 }

const KINDS: Readonly<Record<string, object>> = {
  'a V-fold': { kind: 'cut-v-fold', apex: 100, run: 50, cut: 40, lean: 6 },
  'a V-fold to the reader': { kind: 'cut-v-fold', apex: 300, run: -50, cut: 40, lean: 6 },
  'a plain V-fold': { kind: 'cut-v-fold', apex: 100, run: 50, cut: 40 },
  'a plain V-fold to the reader': { kind: 'cut-v-fold', apex: 300, run: -50, cut: 40 },
  'a layer': { kind: 'cut-layer', start: 100, end: 150, left: 30, right: 30 },
  'a trapezoid': { kind: 'cut-trapezoid', start: 100, end: 150, startCut: 20, endCut: 40 },
  'a moth': { kind: 'glued-v-fold', apex: 100, toward: 1, base: 50, facet: 70, foot: 50, ridge: 50 },
  'a tent': {
    kind: 'glued-tent',
    start: 100,
    end: 150,
    rightFoot: 30,
    leftFoot: 20,
    rightWall: 50,
    leftWall: 60,
  },
  'a platform': {
    kind: 'floating-layer',
    start: 100,
    end: 150,
    height: 20,
    left: 30,
    right: 40,
    walls: [-10, 0, 15],
  },
}

const mechanism = (m: object): Mechanism =>
  design([{ id: 'm', on: 'gutter', ...m }], card).mechanisms[0] as Mechanism

/** By how much each handle moves its place along the axis that it sets. */
function axesOf(m: Mechanism, name: string): { across: boolean; along: boolean } {
  const handle = kindOf(m).handles.find((one) => one.name === name)
  return { across: handle?.across !== undefined, along: handle?.along !== undefined }
}

const numbersOf = (m: Mechanism): Record<string, unknown> => ({ ...m })

describe.each(Object.entries(KINDS))('%s', (_, fields) => {
  const m = mechanism(fields)
  const handles = kindOf(m).handles

  test('dragged to where it is, nothing changes', () => {
    for (const handle of handles) {
      const still = assign(m, handle.drag(m, handle.at(m)) as Change) as Mechanism
      const [a, b] = [handle.at(m), handle.at(still)]
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-9)
      for (const other of handles) {
        const [p, q] = [other.at(m), other.at(still)]
        expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeLessThan(1e-9)
      }
    }
  })

  test('dragged a little way, it goes there along the axes that it sets', () => {
    fc.assert(
      fc.property(between(-8, 8), between(-8, 8), (dx, dy) => {
        for (const handle of handles) {
          // The fold line turns about the apex: it follows the finger in its angle only.
          if (handle.name === 'fold-line') continue
          const at = handle.at(m)
          const axes = axesOf(m, handle.name)
          const now = handle.at(assign(m, handle.drag(m, [at[0] + dx, at[1] + dy]) as Change) as Mechanism)
          if (axes.across) expect(now[0]).toBeCloseTo(at[0] + dx, 9)
          if (axes.along && handle.name !== 'tip') expect(now[1]).toBeCloseTo(at[1] + dy, 9)
        }
      }),
      { numRuns: 40 },
    )
  })

  test('dragged across the fold or past its other end, it stays a hand’s work away from both', () => {
    for (const handle of handles) {
      if (handle.name === 'fold-line' || handle.piece !== undefined) continue
      const at = handle.at(m)
      const over = numbersOf(assign(m, handle.drag(m, [-500, at[1]]) as Change) as Mechanism)
      for (const name of ['left', 'right', 'cut', 'startCut', 'endCut', 'rightFoot', 'leftFoot'])
        if (typeof over[name] === 'number') expect(over[name]).toBeGreaterThanOrEqual(0)
      if (handle.across && handle.across !== 'base') {
        const [a] = handle.at(assign(m, handle.drag(m, [-500, at[1]]) as Change) as Mechanism)
        expect(a).toBeCloseTo(0, 9)
      }
      for (const far of [-900, 1900]) {
        const past = numbersOf(assign(m, handle.drag(m, [at[0], far]) as Change) as Mechanism)
        const { start, end, run, lean, apex } = past as Record<string, number | undefined>
        if (handle.along !== undefined && start !== undefined && end !== undefined) {
          expect(end - start).toBeGreaterThanOrEqual(1)
          // As near as it can go: a millimetre is left, or it went where it was asked.
          expect([end - start === 1, start === far, end === far]).toContain(true)
        }
        if (run !== undefined && apex !== undefined) {
          const before = fields as { run: number }
          expect(Math.sign(run)).toBe(Math.sign(before.run))
          expect(Math.abs(run)).toBeGreaterThanOrEqual(1)
          // As near as it can go: a millimetre is left, or it went where it was asked.
          if (lean === undefined && handle.along !== undefined && handle.across === undefined) {
            const [, there] = handle.at(past as unknown as Mechanism)
            expect([Math.abs(run), there === far ? 1 : 0, there === 0 ? 1 : 0]).toContain(1)
          }
          // The slit's end stays on the same side of the apex as its foot.
          expect((run + (lean ?? 0)) * Math.sign(run)).toBeGreaterThanOrEqual(1 - 1e-9)
        }
      }
    }
  })
})

test('a fold line under a finger goes through it, wherever it is laid', () => {
  // A straight line through the apex and the finger: equal slopes (similar triangles).
  for (const fields of [KINDS['a V-fold'], KINDS['a V-fold to the reader']]) {
    const m = mechanism(fields as object)
    const handle = kindOf(m).handles.find(({ name }) => name === 'fold-line')
    const { apex, run, lean } = fields as { apex: number; run: number; lean: number }
    const way = Math.sign(run)
    for (const [across, out] of [
      [10, 20],
      [30, 15],
      [5, 60],
    ] as const) {
      const now = assign(m, handle?.drag(m, [across, apex + way * out]) as Change) as unknown as {
        cut: number
      }
      expect(now.cut / Math.abs(run + lean)).toBeCloseTo(across / out, 9)
    }
    const back = assign(m, handle?.drag(m, [-5, apex + way * 20]) as Change) as unknown as { cut: number }
    expect(back.cut).toBe(0)
  }
})
