// How tightly a card is framed: nothing that is seen is cut off, and nothing jumps.
import { describe, expect, it } from 'vitest'
import { section } from '../../src/drawing/section/section.ts'
import { openingsNear } from '../../src/drawing/view/camera.ts'
import { view } from '../../src/drawing/view/view.ts'
import { compile } from '../../src/paper/index.ts'
import { beak, moth, owl } from './garden.ts'

const size = { width: 400, height: 300 }
const camera = { turn: -20, tilt: 32, far: 1.6 }

const framed = (design: typeof beak, opening: number, stand: 'gutter' | 'edge' = 'gutter') =>
  view(compile(design), opening, camera, size, { frame: openingsNear(100, opening), stand })

describe('the openings that a tight picture has room for', () => {
  it('hold the present one and home, and no impossible one', () => {
    for (const home of [20, 100, 175])
      for (let opening = 0; opening <= 180; opening += 5) {
        const openings = openingsNear(home, opening)
        expect(Math.min(...openings)).toBeLessThanOrEqual(Math.min(home, opening))
        expect(Math.max(...openings)).toBeGreaterThanOrEqual(Math.max(home, opening))
        expect(Math.min(...openings)).toBeGreaterThanOrEqual(0)
        expect(Math.max(...openings)).toBeLessThanOrEqual(180)
      }
  })

  it('are the same while the card stays near home', () => {
    expect(openingsNear(100, 92)).toEqual(openingsNear(100, 108))
  })
})

describe('a tight picture', () => {
  it.each([
    ['beak', beak],
    ['moth', moth],
    ['owl', owl],
  ] as const)('cuts nothing of the %s off, at any opening', (_, design) => {
    for (const stand of ['gutter', 'edge'] as const)
      for (let opening = 0; opening <= 180; opening += 12)
        for (const mark of framed(design, opening, stand).marks)
          if (mark.mark === 'path' && mark.role === 'facet')
            for (const [x, y] of mark.runs.flat()) {
              expect(x).toBeGreaterThanOrEqual(-1e-6)
              expect(x).toBeLessThanOrEqual(size.width + 1e-6)
              expect(y).toBeGreaterThanOrEqual(-1e-6)
              expect(y).toBeLessThanOrEqual(size.height + 1e-6)
            }
  })

  it('moves by little for a degree: nothing jumps under a hand', () => {
    for (let opening = 1; opening <= 180; opening++) {
      const [a, b] = [
        framed(beak, opening - 1).toScreen([0, 0, 0]),
        framed(beak, opening).toScreen([0, 0, 0]),
      ]
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(6)
    }
  })

  it('shows the card larger than one that has room for the whole motion', () => {
    const wide = view(compile(beak), 100, camera, size)
    const long = (drawn: typeof wide) => {
      const [a, b] = [drawn.toScreen([0, 0, 0]), drawn.toScreen([0, 148, 0])]
      return Math.hypot(a[0] - b[0], a[1] - b[1])
    }
    expect(long(framed(beak, 100))).toBeGreaterThan(1.1 * long(wide))
  })
})

describe('a tight section', () => {
  it('is larger, and holds all that stands in the card', () => {
    const options = { frame: openingsNear(96, 96) }
    const [tight, wide] = [section(beak, 96, 'beak', size, options), section(beak, 96, 'beak', size)]
    const long = ({ toScreen }: typeof tight) => toScreen([10, 0])[0] - toScreen([0, 0])[0]
    expect(long(tight)).toBeGreaterThan(1.2 * long(wide))
    for (const mark of tight.marks)
      if (mark.mark === 'path' && mark.role === 'slice' && !mark.of?.startsWith('page/'))
        for (const [x, y] of mark.runs.flat()) {
          expect(x).toBeGreaterThan(0)
          expect(x).toBeLessThan(size.width)
          expect(y).toBeGreaterThan(0)
          expect(y).toBeLessThan(size.height)
        }
  })
})
