import { describe, expect, it } from 'vitest'
import type { Drawing, PathMark } from '../../src/drawing/pen/marks.ts'
import { arrowHeads } from '../../src/drawing/pen/marks.ts'
import { markSvg, toSvg } from '../../src/drawing/pen/svg.ts'
import { cut, pathData } from '../../src/drawing/pen/svg-values.ts'

const line: PathMark = {
  mark: 'path',
  runs: [
    [
      [0, 0],
      [30, 0],
    ],
  ],
  closed: false,
  role: 'dimension',
  arrow: 'both',
}

describe('the SVG pen', () => {
  it('rounds, and drops idle zeros and minus zero', () => {
    expect([1 / 3, 2, -0.0001, 1e-9, -12.346].map((n) => cut(n, 2))).toEqual([
      '0.33',
      '2',
      '0',
      '0',
      '-12.35',
    ])
  })

  it('draws nothing for no points, a move for one, and closes runs', () => {
    expect(pathData([], true)).toBe('')
    expect(pathData([[]], true)).toBe('')
    expect(pathData([[[1, 2]]], false)).toBe('M1 2')
    expect(
      pathData(
        [
          [
            [0, 0],
            [1, 0],
            [1, 1],
          ],
        ],
        true,
      ),
    ).toBe('M0 0L1 0L1 1Z')
  })

  it('names the role, the card, the face and the light of a surface', () => {
    const facet: PathMark = {
      ...line,
      role: 'facet',
      closed: true,
      of: 'beak/left',
      paint: { card: 1, light: 0.75, face: 'back' },
    }
    expect(markSvg({ ...facet, arrow: undefined } as unknown as PathMark)).toBe(
      '<path class="m-facet c-1 back closed" style="--light:0.75" data-of="beak/left" d="M0 0L30 0Z"/>',
    )
  })

  it('points arrow heads along the line, at its very ends', () => {
    const [right, left] = arrowHeads(line)
    expect(right?.[0]).toEqual([30, 0])
    expect(left?.[0]).toEqual([0, 0])
    for (const p of right?.slice(1) ?? []) expect(p[0]).toBe(21)
    expect(
      arrowHeads({
        ...line,
        runs: [
          [],
          [[1, 1]],
          [
            [2, 2],
            [2, 2],
          ],
        ],
      }),
    ).toEqual([])
  })

  it('keeps words from being read as tags', () => {
    expect(
      markSvg({ mark: 'word', at: [0, 0], text: 'a < b & "c"', role: 'note', anchor: 'start', size: 15 }),
    ).toContain('>a &lt; b &amp; &quot;c&quot;</text>')
  })

  it('gives a drawing in mm its true size', () => {
    const sheet: Drawing = { box: [0, 0, 210, 148], unit: 'mm', marks: [], says: 'A sheet.' }
    expect(toSvg(sheet)).toContain(
      'width="210mm" height="148mm" viewBox="0 0 210 148" role="img" aria-label="A sheet."',
    )
    expect(toSvg({ ...sheet, unit: 'px' })).not.toContain('mm"')
  })
})
