// By night a flame on the paper lights the paper round it.
import { describe, expect, it } from 'vitest'
import type { Mark, PathMark } from '../../src/drawing/pen/marks.ts'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import { GLOW_REACH, GLOW_STOPS } from '../../src/drawing/pen/svg-values.ts'
import { view } from '../../src/drawing/view/view.ts'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'

const size = { width: 600, height: 460 }
const camera = { turn: -20, tilt: 36 }

const lantern = (fill: string, glows = true): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Lantern',
    card: { width: 105, height: 148, caliper: 0.25 },
    mechanisms: [{ id: 'body', kind: 'cut-layer', on: 'gutter', start: 50, end: 98, left: 30, right: 30 }],
    art: [
      {
        on: 'body/left',
        also: ['body/right'],
        shape: [
          [10, 10],
          [20, 10],
          [15, 24],
        ],
        fill,
        glows,
      },
    ],
  })

/** A lantern of any size, with its flame in the middle of each wall: every length goes with the size. */
const grown = (size: number): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Lantern',
    card: { width: 200, height: 200, caliper: 0.25 },
    mechanisms: [
      { id: 'body', kind: 'cut-layer', on: 'gutter', start: 40, end: 40 + size, left: size, right: size },
    ],
    art: [
      {
        on: 'body/left',
        also: ['body/right'],
        shape: [
          [0.4 * size, 0.4 * size],
          [0.6 * size, 0.4 * size],
          [0.5 * size, 0.6 * size],
        ],
        fill: 'flame',
        glows: true,
      },
    ],
  })

const glows = (marks: readonly Mark[]): ReadonlyMap<string, PathMark> =>
  new Map(
    marks.flatMap((mark) => {
      const found = mark.mark === 'path' && mark.on?.find((one) => one.mark === 'path' && one.role === 'glow')
      return found && mark.of ? [[mark.of, found as PathMark] as const] : []
    }),
  )

const seen = (design: Design, opening = 100, options = {}) => view(design, opening, camera, size, options)

describe('the light of a flame', () => {
  // Lambert, Photometria (1760): as the cosine of the angle it comes in at, over the square of the way it comes.
  it('thins out over a flat surface by the cosine and the inverse square', () => {
    for (const [at, left] of GLOW_STOPS.slice(0, -1)) {
      const r = GLOW_REACH * at
      const way = Math.sqrt(1 + r * r)
      const cosine = 1 / way
      expect(left).toBeCloseTo(cosine / (way * way), 3)
    }
    expect(GLOW_STOPS.at(-1)).toEqual([1, 0])
  })

  it('falls on both pages, as the flame burns before them', () => {
    const lit = glows(seen(lantern('flame')).marks)
    expect([...lit.keys()]).toEqual(expect.arrayContaining(['page/left', 'page/right']))
  })

  it('is equally strong on the two pages of a card that is alike on both sides', () => {
    const lit = glows(seen(lantern('flame')).marks)
    const [left, right] = [lit.get('page/left')?.strength, lit.get('page/right')?.strength]
    expect(left).toBeGreaterThan(0.1)
    expect(left).toBeCloseTo(right as number, 9)
  })

  it('is a quarter as strong at twice the way', () => {
    // A lantern twice as large holds its flame twice as far from the page (similar figures).
    const far = (size: number) => glows(seen(grown(size)).marks).get('page/right')?.strength as number
    expect(far(100) / far(50)).toBeCloseTo(1 / 4, 6)
  })

  it('comes from flames alone: not from the moon, nor from a flame that does not glow', () => {
    for (const design of [lantern('moon'), lantern('flame', false)]) {
      const { marks } = seen(design)
      expect(glows(marks).size).toBe(0)
      expect(marks.some(({ role }) => role === 'haze')).toBe(false)
    }
  })

  it('burns in a picture of one part only if that part is lit', () => {
    expect(glows(seen(lantern('flame'), 100, { lit: ['page'] }).marks).size).toBe(0)
    expect(glows(seen(lantern('flame'), 100, { lit: ['page', 'body'] }).marks).size).toBeGreaterThan(0)
  })

  it('is drawn by one gradient that all its places share', () => {
    const svg = toSvg(seen(lantern('flame')))
    expect(svg.match(/<radialGradient id="[^"]+-glow" class="glow"/g)).toHaveLength(1)
    const own = /<radialGradient id="([^"]+-glow)"/.exec(svg)?.[1]
    expect(svg.split(`url(#${own})`).length - 1).toBeGreaterThan(2)
    expect(toSvg(seen(lantern('moon')))).not.toContain('-glow')
  })
})
