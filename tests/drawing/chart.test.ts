import { describe, expect, it } from 'vitest'
import type { Chart } from '../../src/drawing/chart/chart.ts'
import { chart } from '../../src/drawing/chart/chart.ts'
import { wordRect } from '../../src/drawing/pen/lettering.ts'
import type { DotMark } from '../../src/drawing/pen/marks.ts'
import { design, vFold } from '../paper/shared/designs.ts'
import { bare, beak, lantern, moth, owl } from './garden.ts'

const size = { width: 340, height: 260 }

const texts = ({ marks }: Chart): readonly string[] =>
  marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))

const dot = ({ marks }: Chart): DotMark =>
  marks.find((mark): mark is DotMark => mark.mark === 'dot' && mark.of === 'opening') as DotMark

describe('chart', () => {
  // Source: a 45/45 V-fold rises highest at 2 atan(sqrt 2) = 109.47 degrees.
  it('marks the opening at which a 45 degree V-fold rises highest', () => {
    const one = design([vFold('beak', 'gutter', 110, -60, 45)])
    const drawn = chart(one, 90, size)
    expect(texts(drawn)).toContain('40.0 mm at 90°')
    const peak = (2 * Math.atan(Math.SQRT2) * 180) / Math.PI
    expect(
      texts(drawn).some((text) => text.endsWith(`at ${peak.toFixed(0)}°`) && text.startsWith('highest')),
    ).toBe(true)
    const mark = drawn.marks.find((m): m is DotMark => m.mark === 'dot' && m.of === 'beak/highest') as DotMark
    expect(drawn.toOpening(mark.at)).toBeCloseTo(peak, 3)
  })

  it('reads the opening back from its dot, and stays from 0 to 180', () => {
    for (const opening of [0, 33.3, 109, 180])
      expect(chart(beak, opening, size).toOpening(dot(chart(beak, opening, size)).at)).toBeCloseTo(opening, 9)
    expect(chart(beak, 90, size).toOpening([-100, 0])).toBe(0)
    expect(chart(beak, 90, size).toOpening([1000, 0])).toBe(180)
  })

  it('draws curves that are one and the same only once', () => {
    const twins = design([vFold('a', 'gutter', 60, -40, 40), vFold('b', 'gutter', 80, 40, 40)])
    const curves = (drawn: Chart) =>
      drawn.marks.filter(({ role, mark }) => role === 'curve' && mark === 'path')
    expect(curves(chart(twins, 90, size, { of: ['a', 'b'] }))).toHaveLength(1)
    expect(
      curves(chart(lantern, 90, size, { of: ['body', 'roof', 'ledge'] })).map(
        (m) => m.mark === 'path' && m.series,
      ),
    ).toEqual([0, 1, 2])
  })

  it('stands still while a slit grows by a little', () => {
    const axis = (cut: number) => {
      const one = design([{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut }])
      return texts(chart(one, 60, size)).filter((text) => /^\d+$/.test(text))
    }
    expect(axis(38)).toEqual(axis(41))
  })

  it('of a bare card says that nothing rises', () => {
    expect(chart(bare, 90, size).says).toBe('Rise against opening: nothing rises yet.')
  })

  it('says of what rises nowhere that it does, and stands on the floor', () => {
    const flat = design([{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 0 }])
    const drawn = chart(flat, 90, size)
    expect(texts(drawn)).toContain('No rise at any opening.')
    expect(texts(drawn).filter((text) => text.startsWith('highest'))).toEqual([])
    expect(drawn.says).toBe('Rise against opening: no rise at any opening.')
    expect(texts(chart(beak, 90, size))).not.toContain('No rise at any opening.')
  })

  it('keeps no room below nothing for a hair that the arithmetic leaves', () => {
    for (const one of [moth, owl, beak, lantern])
      expect(texts(chart(one, 90, size)).filter((text) => text.startsWith('−'))).toEqual([])
  })

  // The box of the small chart beside a card, and the size of its type there.
  it('in small lays no word over another, wherever the dot is', () => {
    for (const one of [beak, moth, owl, lantern])
      for (let opening = 0; opening <= 180; opening += 4) {
        const drawn = chart(one, opening, { width: 184, height: 96 }, { text: 11, brief: true })
        const rects = drawn.marks.flatMap((mark) => (mark.mark === 'word' ? [wordRect(mark)] : []))
        for (const [k, [x, y, w, h]] of rects.entries())
          for (const [x2, y2, w2, h2] of rects.slice(k + 1))
            expect(x < x2 + w2 && x2 < x + w && y < y2 + h2 && y2 < y + h, texts(drawn).join(' / ')).toBe(
              false,
            )
      }
  })

  it('leaves the words of the highest point where they are while the dot goes by', () => {
    const places = [0, 60, 90, 100, 110, 130, 180].map((opening) =>
      chart(beak, opening, size).marks.find((mark) => mark.mark === 'word' && mark.of === 'beak/highest'),
    )
    for (const place of places) expect(place).toEqual(places[0])
  })
})
