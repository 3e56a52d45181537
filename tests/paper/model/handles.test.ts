import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dragHandle, handlesOf, parseDesign, pieces } from '../../../src/paper/index.ts'
import { design, designs, runs, vFold } from '../shared/designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const jaw = vFold('jaw', 'gutter', 30, 40, 45)

const made = design([beak, jaw])

/** What a hand can drag to: fields are kept to a tenth of a millimetre. */
const TENTH = 0.0501

const handle = (of: ReturnType<typeof design>, id: string, name: string) => {
  const found = handlesOf(of).find((one) => one.id === id && one.name === name)
  if (!found) throw new Error(`no ${name} on ${id}`)
  return found
}

describe('handles of the flat sheet', () => {
  test('of a V-fold: the slit’s end, the fold line, the apex and the slit’s foot, each where it is drawn', () => {
    const own = handlesOf(made).filter(({ id }) => id === 'beak')
    expect(own.map(({ name }) => name)).toEqual(['slit-end', 'fold-line', 'apex', 'slit-foot'])
    const at = (name: string) =>
      handle(made, 'beak', name).at.map((value) => Math.round(value * 1e9) / 1e9 + 0)
    expect(at('slit-end')).toEqual([40, 70])
    expect(at('fold-line')).toEqual([20, 90])
    expect(at('apex')).toEqual([0, 110])
    expect(at('slit-foot')).toEqual([0, 70])
  })

  test('a slit’s end is an end of a printed cut, on every sheet', () => {
    fc.assert(
      fc.property(designs({ kinds: ['cut-v-fold'] }), (any) => {
        const ends = pieces(any)
          .flatMap(({ lines }) => lines)
          .filter(({ kind }) => kind === 'cut')
          .flatMap(({ points }) => [points[0], points.at(-1)])
        for (const { name, at } of handlesOf(any)) {
          if (name !== 'slit-end') continue
          const near = ends.map((end) => Math.hypot((end?.[0] ?? 0) - at[0], (end?.[1] ?? 0) - at[1]))
          expect(Math.min(...near)).toBeLessThan(1e-9)
        }
      }),
      runs(100),
    )
  })

  test('have ways that are square to each other, one of them along the host crease', () => {
    fc.assert(
      fc.property(designs(), (any) => {
        for (const { acrossWay: a, alongWay: b } of handlesOf(any)) {
          expect(Math.abs(a[0] * b[0] + a[1] * b[1])).toBeLessThan(1e-12)
          expect(Math.hypot(...a)).toBeCloseTo(1, 12)
          expect(Math.hypot(...b)).toBeCloseTo(1, 12)
        }
      }),
      runs(100),
    )
  })
})

describe('dragging', () => {
  test.each([
    { name: 'slit-end', to: [33.3, 66.7] },
    { name: 'apex', to: [0, 118.4] },
    { name: 'slit-foot', to: [0, 61.9] },
  ] as const)('brings the $name where the hand is, to a tenth of a millimetre', ({ name, to }) => {
    const { at } = handle(dragHandle(design([beak]), 'beak', name, to), 'beak', name)
    expect(Math.hypot(at[0] - to[0], at[1] - to[1])).toBeLessThan(TENTH)
  })

  test('the fold line follows a finger laid on it anywhere', () => {
    const after = dragHandle(design([beak]), 'beak', 'fold-line', [15, 80])
    // The line from the apex, 110, through the finger: 15 across on 30 along.
    expect(after.mechanisms[0]).toMatchObject({ cut: 20 })
  })

  test('one half of a shared slit takes the other half with it', () => {
    const after = dragHandle(made, 'beak', 'slit-end', [30, 75])
    expect(after.mechanisms).toMatchObject([
      { apex: 110, run: -40, cut: 30, lean: 5 },
      { apex: 30, run: 40, cut: 30, lean: 5 },
    ])
    const moved = dragHandle(made, 'jaw', 'slit-foot', [0, 60])
    expect(moved.mechanisms).toMatchObject([
      { apex: 110, run: -50 },
      { apex: 30, run: 30 },
    ])
  })

  test('an apex is not dragged past its slit, and a slit not past its apex', () => {
    expect(dragHandle(design([beak]), 'beak', 'apex', [0, 20]).mechanisms).toMatchObject([
      { apex: 71, run: -1 },
    ])
    expect(dragHandle(design([beak]), 'beak', 'slit-foot', [0, 140]).mechanisms).toMatchObject([{ run: -1 }])
  })

  test('whatever is dragged anywhere, the design stays one that a file may hold', () => {
    const spot = fc.tuple(
      fc.double({ min: -900, max: 900, noNaN: true }),
      fc.double({ min: -900, max: 900, noNaN: true }),
    )
    fc.assert(
      fc.property(designs({ most: 3 }), fc.nat(), spot, (any, pick, to) => {
        const all = handlesOf(any)
        const { id, name } = all[pick % all.length] ?? { id: '', name: '' }
        const after = dragHandle(any, id, name, to)
        expect(() => parseDesign(JSON.parse(JSON.stringify(after)))).not.toThrow()
      }),
      runs(300),
    )
  })

  test('an unknown handle is refused', () => {
    expect(() => dragHandle(made, 'beak', 'tail', [0, 0])).toThrow('there is no handle beak tail')
    expect(() => dragHandle(made, 'owl', 'apex', [0, 0])).toThrow('there is no handle owl apex')
  })
})
