import { describe, expect, it } from 'vitest'
import type { Drawing } from '../../src/drawing/pen/marks.ts'
import { stepMotion } from '../../src/drawing/steps/motion.ts'
import { stepFigure, stepStates } from '../../src/drawing/steps/steps.ts'
import { dummy } from '../sheet/designs.ts'
import { beak, heron, moth, owl, pond } from './garden.ts'

const size = { width: 340, height: 250 }

const of = ({ marks }: Drawing, name: string) => marks.filter((mark) => mark.of?.startsWith(name))

describe('step figures', () => {
  it('keep all paper in the picture, whatever the state', () => {
    const figures = [
      ...(['piece', 'folded', 'glued', 'closing', 'taping'] as const).flatMap((state) =>
        ['back', 'spines', 'moon', 'pond', 'lily'].map((id) => stepFigure(pond, state, size, { of: [id] })),
      ),
      ...(['piece', 'folded', 'glued', 'closing', 'popping', 'taping'] as const).flatMap((state) =>
        ['body', 'left-wing', 'tail'].map((id) => stepFigure(owl, state, size, { of: [id] })),
      ),
      ...(['cutting', 'creased', 'reversing'] as const).map((state) =>
        stepFigure(heron, state, size, { of: ['left-eye', 'right-eye'] }),
      ),
    ]
    for (const { marks, says } of figures)
      for (const mark of marks) {
        if (mark.mark !== 'path' || mark.role !== 'facet') continue
        for (const [x, y] of mark.runs.flat()) {
          expect(x, says).toBeGreaterThan(-1)
          expect(x, says).toBeLessThan(size.width + 1)
          expect(y, says).toBeGreaterThan(-1)
          expect(y, says).toBeLessThan(size.height + 1)
        }
      }
  })

  it('show hosts standing and guests lying, and no guest of a later step', () => {
    const cutting = stepFigure(heron, 'cutting', size, { of: ['left-eye'] })
    expect(of(cutting, 'left-eye').length).toBeGreaterThan(0)
    expect(of(cutting, 'right-eye')).toEqual([])
    expect(of(cutting, 'beak').length).toBeGreaterThan(0)
    const body = stepFigure(owl, 'glued', size, { of: ['body'] })
    expect(of(body, 'left-wing')).toEqual([])
    const wing = stepFigure(owl, 'glued', size, { of: ['left-wing'] })
    expect(of(wing, 'body').length).toBeGreaterThan(0)
  })

  it('draw the joints on the flat card and none of the pieces', () => {
    const flat = stepFigure(moth, 'flat', size)
    expect(flat.marks.filter(({ role }) => role === 'place')).toHaveLength(2)
    expect(of(flat, 'moth/')).toEqual([])
  })

  it('draw a dot on each page where the words tell to draw two, and none elsewhere', () => {
    const gap = (state: 'flat' | 'open', opening: number): number => {
      const { marks, says } = stepFigure(dummy('card'), state, size, { opening, dot: [60, 74] })
      expect(says).toContain('dot on each page')
      const dots = marks.flatMap((mark) => (mark.mark === 'dot' ? [mark.at] : []))
      expect(dots).toHaveLength(2)
      const [[ax, ay], [bx, by]] = dots as [readonly [number, number], readonly [number, number]]
      expect(ax).toBeGreaterThan(bx)
      return Math.hypot(ax - bx, ay - by)
    }
    // At 90° the gap is the side of a square whose diagonal it is in the flat card (Euclid I.47); the eye is near.
    expect(gap('open', 90) / gap('flat', 180)).toBeCloseTo(Math.SQRT1_2, 1)
    expect(stepFigure(dummy('card'), 'flat', size).marks.filter(({ mark }) => mark === 'dot')).toEqual([])
  })

  it('hold a card over its cover, of which the rim alone is hatched, and that only on its own card', () => {
    for (const design of [dummy('beak'), dummy('hedgehog')]) {
      const { marks, says } = stepFigure(design, 'covering', size)
      expect(says).toMatch(/over its cover/)
      const runs = (name: string) =>
        marks.flatMap((mark) =>
          mark.mark === 'path' && mark.role === 'facet' && mark.of?.startsWith(name) ? mark.runs.flat() : [],
        )
      const lowest = (points: readonly (readonly [number, number])[]) => Math.max(...points.map(([, y]) => y))
      // It is larger all round and lies beneath: nearer to the lower edge of the picture.
      expect(lowest(runs('cover/'))).toBeGreaterThan(lowest(runs('page/')) + 10)
      for (const name of ['cover/left', 'cover/right'])
        expect(marks.some((mark) => mark.role === 'glue' && mark.of === name)).toBe(true)
      expect(marks.filter((mark) => mark.role === 'glue' && !mark.of?.startsWith('cover/'))).toEqual([])
      for (const [x, y] of [...runs('cover/'), ...runs('page/')]) {
        expect(Math.min(x, y)).toBeGreaterThan(-1)
        expect(x).toBeLessThan(size.width + 1)
        expect(y).toBeLessThan(size.height + 1)
      }
    }
    expect(() => stepFigure(beak, 'covering', size)).toThrow(/needs a card with a cover/)
  })

  it('show what is drawn on the pages where the sheet is coloured and where the card is done, and there alone', () => {
    const pictured = ({ marks }: Drawing): boolean =>
      marks.some(
        (mark) =>
          mark.mark === 'path' && mark.of?.startsWith('page/') && mark.on?.some(({ mark }) => mark === 'art'),
      )
    const card = dummy('hedgehog')
    const shown = stepStates.filter((state) =>
      pictured(stepFigure(card, state, size, { of: ['body', 'head'] })),
    )
    expect(shown).toEqual(['coloured', 'open', 'covering'])
    expect(pictured(stepFigure(card, 'open', size, { plain: true }))).toBe(false)
    const moving = stepMotion(card, 'open', size)
    expect(moving && pictured(moving.at(0.5))).toBe(true)
    expect(pictured(stepMotion(card, 'closing', size)?.at(0.1) as Drawing)).toBe(false)
  })

  it('are refused in a sentence where there is nothing to show', () => {
    expect(() => stepFigure(pond, 'popping', size, { of: ['moon'] })).toThrow(/moon has one state only/)
    expect(() => stepFigure(beak, 'piece', size)).toThrow(/own card/)
  })
})
