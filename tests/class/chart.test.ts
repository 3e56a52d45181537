// Where the class's crosses stand.
import { describe, expect, test } from 'vitest'
import { axisFor, readingsChart } from '../../src/drawing/chart/readings-chart.ts'
import type { PathMark, WordMark } from '../../src/drawing/pen/marks.ts'

const drawn = readingsChart(
  { width: 500, height: 300 },
  {
    curve: [
      { size: 20, value: 0 },
      { size: 70, value: 40 },
    ],
    readings: [
      { size: 20, value: 0, code: 'A1' },
      { size: 45, value: 20, code: 'A2' },
      { size: 70, value: 40, code: 'A3' },
    ],
    ...{
      across: 'slit, mm',
      up: 'reading, mm',
      sizes: [20, 70],
      values: [0, 40],
      text: 15,
      unit: 'px',
      sign: 'mm',
    },
  },
)

const paths = (test: (mark: PathMark) => boolean): readonly PathMark[] =>
  drawn.marks.flatMap((mark) => (mark.mark === 'path' && test(mark) ? [mark] : []))

/** The middle of a cross. */
const middle = ({ runs: [run] }: PathMark): readonly number[] => {
  const [[x1, y1] = [0, 0], [x2, y2] = [0, 0]] = run ?? []
  return [(x1 + x2) / 2, (y1 + y2) / 2]
}

describe('a chart of readings', () => {
  const crosses = paths(({ role }) => role === 'dimension').map(middle)

  test('a reading half-way along both axes stands half-way between their ends', () => {
    const [a, b, c] = crosses as [number[], number[], number[]]
    expect(b[0]).toBeCloseTo(((a[0] ?? 0) + (c[0] ?? 0)) / 2, 9)
    expect(b[1]).toBeCloseTo(((a[1] ?? 0) + (c[1] ?? 0)) / 2, 9)
    // Larger is farther right and higher up.
    expect(c[0]).toBeGreaterThan(a[0] ?? 0)
    expect(c[1]).toBeLessThan(a[1] ?? 0)
  })

  test('the curve goes through the readings that are right, and a number on an axis stands at its tick', () => {
    const [curve] = paths(({ role }) => role === 'curve')
    expect(curve?.runs[0]?.[0]?.[0]).toBeCloseTo(crosses[0]?.[0] ?? 0, 9)
    expect(curve?.runs[0]?.at(-1)?.[1]).toBeCloseTo(crosses[2]?.[1] ?? 0, 9)
    const word = drawn.marks.find((mark): mark is WordMark => mark.mark === 'word' && mark.text === '70')
    expect(word?.at[0]).toBeCloseTo(crosses[2]?.[0] ?? 0, 9)
  })

  test('says how many crosses there are, and where the model goes', () => {
    expect(drawn.says).toBe(
      'reading, mm against slit, mm: 3 crosses. The model goes from 0.0 at 20 to 40.0 at 70.',
    )
  })
})

test('an axis ends at round numbers beyond all that it holds', () => {
  const [low, high] = axisFor([19.2, 33.9], true)
  expect(low).toBe(0)
  expect(high).toBeGreaterThanOrEqual(33.9)
  expect(high % 5).toBe(0)
  expect(axisFor([], true)).toEqual([0, 1])
  const [from, to] = axisFor([21, 67], false)
  expect([from <= 21 && from >= 15, to >= 67 && to <= 75]).toEqual([true, true])
})
