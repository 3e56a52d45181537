// The check lines that show whether a sheet was printed at true size. An inch is 25.4 mm (international inch, 1959).
import { mat3, vec2 } from 'gl-matrix'
import { expect, test } from 'vitest'
import type { PathMark, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import { wordWidth } from '../../src/sheet/marks/letters.ts'
import { RULER_WIDTH, rulers, upright } from '../../src/sheet/marks/rulers.ts'

const block = rulers()

const paths = (of: string): readonly PathMark[] =>
  block.marks.filter((mark): mark is PathMark => mark.mark === 'path' && mark.of === of)

const words = block.marks.filter((mark): mark is WordMark => mark.mark === 'word')

test.each([
  { of: 'check-100mm', length: 100, step: 10, ticks: 11, up: -1, says: '100 mm' },
  { of: 'check-4in', length: 4 * 25.4, step: 25.4, ticks: 5, up: 1, says: '4 in' },
])(
  '$says: one line of that length, a tick at every step, longer ones at its ends',
  ({ of, length, step, ticks, up, says }) => {
    const [line] = paths(of)
    const [a, b] = (line?.runs[0] ?? []) as unknown as readonly [Point, Point]
    expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBe(length)
    expect(a[1]).toBe(b[1])
    expect(line?.closed).toBe(false)
    const [marks] = paths(`${of}-ticks`)
    expect(marks?.runs).toHaveLength(ticks)
    const lengths = marks?.runs.map((run, k) => {
      const [foot, end] = run as readonly [Point, Point]
      // On the line, at its step, square to it, away from the other line.
      expect(foot[0]).toBeCloseTo(k * step, 9)
      expect(foot[1]).toBe(a[1])
      expect(end[0]).toBe(foot[0])
      expect(Math.sign(end[1] - foot[1])).toBe(up)
      return Math.abs(end[1] - foot[1])
    })
    const [first = 0, second = 0] = lengths ?? []
    expect(first).toBeGreaterThan(1.5 * second)
    expect(second).toBeGreaterThan(1)
    expect(lengths).toEqual(
      Array.from({ length: ticks }, (_, k) => (k === 0 || k === ticks - 1 ? first : second)),
    )
    const word = words.find(({ text }) => text === says)
    expect(word).toMatchObject({ anchor: 'start', bold: true, of })
    // Beside the lines' ends, its foot or its head at its own line.
    expect(word?.at[0]).toBeGreaterThan(101.6)
    expect(word?.at[0]).toBeLessThan(104)
    if (up < 0) expect(word?.at[1]).toBe(a[1])
    else expect((word?.at[1] ?? 0) - a[1]).toBeGreaterThan(1.5)
  },
)

test('both lie back to back inside their block, words too, and do not touch', () => {
  const points = block.marks.flatMap((mark) => (mark.mark === 'path' ? mark.runs.flat() : []))
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  expect([Math.min(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([0, 0, block.height])
  for (const { at, text, size, bold } of words) {
    expect(at[0] + wordWidth(text, size, bold)).toBeLessThanOrEqual(block.width + 1e-9)
    expect(at[1] - size * 0.7).toBeGreaterThan(0)
    expect(at[1]).toBeLessThan(block.height)
  }
  const widest = Math.max(...words.map(({ at, text, size, bold }) => at[0] + wordWidth(text, size, bold)))
  expect(widest).toBeCloseTo(block.width, 9)
  expect(RULER_WIDTH).toBe(block.width)
  const [one, two] = [paths('check-100mm')[0], paths('check-4in')[0]].map(
    (mark) => mark?.runs[0]?.[0]?.[1] ?? 0,
  )
  expect((two ?? 0) - (one ?? 0)).toBeGreaterThan(1)
  expect((two ?? 0) - (one ?? 0)).toBeLessThan(2.5)
})

test('upright, it is turned a quarter anticlockwise and moved into the corner, and keeps every length', () => {
  const turned = upright(block)
  expect([turned.width, turned.height]).toEqual([block.height, block.width])
  // gl-matrix: a turn of the page by -90 degrees (y down), then down by the block's width.
  const m = mat3.multiply(
    mat3.create(),
    mat3.fromTranslation(mat3.create(), [0, block.width]) as mat3,
    mat3.fromRotation(mat3.create(), -Math.PI / 2) as mat3,
  )
  const moved = (p: Point): readonly number[] => [...vec2.transformMat3(vec2.create(), [...p], m)]
  block.marks.forEach((mark, k) => {
    const other = turned.marks[k]
    const [from, to] = [mark, other].map((one) =>
      one?.mark === 'path' ? one.runs.flat() : one?.mark === 'word' ? [one.at] : [],
    )
    from?.forEach((p, n) => {
      const wanted = moved(p)
      expect(to?.[n]?.[0]).toBeCloseTo(wanted[0] ?? 9, 4)
      expect(to?.[n]?.[1]).toBeCloseTo(wanted[1] ?? 9, 4)
    })
    if (other?.mark === 'word') expect(other.turn).toBe(-90)
  })
  const twice = upright(turned)
  const word = twice.marks.find((mark) => mark.mark === 'word')
  expect(word?.mark === 'word' && word.turn).toBe(-180)
})
