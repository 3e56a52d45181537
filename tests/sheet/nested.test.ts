// Pieces of a print by their true outlines: what two of them share by polyclip-ts, on random designs. Rectangles by hand.
import fc from 'fast-check'
import { union } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import { largestFree } from '../../src/making/raster.ts'
import type { Design, Flat } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { fitOn, layOut, paperOf } from '../../src/sheet/index.ts'
import { onPage } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import type { Ring } from '../paper/shared/areas.ts'
import { areaOf, ring, shared } from '../paper/shared/areas.ts'
import { runs } from '../paper/shared/designs.ts'
import { gardens } from '../paper/shared/gardens.ts'
import { dummy } from './designs.ts'

const small = ({ placed }: SheetPage) => placed.filter(({ piece }) => piece !== 'card' && piece !== 'cover')

/** The outlines of the pieces of a page that are glued on. */
function outlinesOn(design: Design, page: SheetPage): readonly (readonly Flat[])[] {
  const flat = new Map(pieces(design).map((piece) => [piece.id, piece.outline]))
  return small(page).map(({ piece, place }) => (flat.get(piece) ?? []).map((p) => onPage(place, p)))
}

const words = ({ marks }: SheetPage) => marks.filter((mark) => mark.mark === 'word')

const rectangle = ([l, t, r, b]: readonly [number, number, number, number]): Flat[] => [
  [l, t],
  [r, t],
  [r, b],
  [l, b],
]

describe('random designs', () => {
  test('no two pieces overlap, all lie within the margins, none is lost, and no word lies on an edge', () => {
    fc.assert(
      fc.property(
        gardens(6),
        fc.constantFrom<SheetLines>('front', 'ticks', 'back'),
        fc.constantFrom('a4' as const, 'letter' as const),
        (design, lines, paper) => {
          if (!fitOn(design, paperOf(paper)).ok) return
          const pages = layOut(design, { paper, lines, care: [] })
          const placed = pages.flatMap((page) => page.placed.map(({ piece }) => piece)).sort()
          const all = pieces(design).map(({ id }) => id)
          const left = all.filter((id) => id === 'cover' && !placed.includes(id))
          expect([...placed, ...left].sort()).toEqual(all.sort())
          for (const page of pages) {
            const [, , width, height] = page.box
            const outlines = outlinesOn(design, page)
            // One that takes its page alone may lie nearer to its edge.
            if (outlines.length < 2) continue
            const boxes = words(page).map((word) => rectangle(extent(word)))
            outlines.forEach((one, k) => {
              for (const [x, y] of one)
                expect(Math.min(x, width - x, y, height - y)).toBeGreaterThanOrEqual(8 - 1e-6)
              for (const two of outlines.slice(k + 1)) expect(shared(one, two)).toBe(0)
              for (const box of boxes) {
                const part = shared(box, one)
                expect(part < 1e-6 || Math.abs(part - areaOf(box)) < 1e-6).toBe(true)
              }
            })
          }
        },
      ),
      runs(40),
    )
  })
})

describe('the whole night garden', () => {
  const design = dummy('night-garden')

  test('is laid out in a second and a half, its small pieces on one sheet of A4', () => {
    layOut(dummy('pond'), { paper: 'a4', care: [] })
    // Time of the processor, and the least of three: other work on the machine only adds to it.
    const times = [1, 2, 3].map(() => {
      const before = process.cpuUsage()
      layOut(design, { paper: 'a4', care: [] })
      return process.cpuUsage(before).user / 1000
    })
    expect(Math.min(...times)).toBeLessThan(1500)
    const pages = layOut(design, { paper: 'a4', care: [] })
    expect(pages.filter((page) => small(page).length > 0)).toHaveLength(1)
  })

  test.each(['front', 'back'] as const)(
    'printed on the %s, pieces and their words fill more than half of the paper that they take',
    (lines) => {
      const page = layOut(design, { paper: 'a4', lines, care: [] }).find((one) => small(one).length > 0)
      if (!page) throw new Error('there are pieces')
      const outlines = outlinesOn(design, page)
      const low = Math.max(...outlines.flat().map(([, y]) => y))
      const top = Math.min(...outlines.flat().map(([, y]) => y))
      // From margin to margin, from the highest piece to the lowest.
      const taken = (page.box[2] - 16) * (low - top)
      const own = words(page)
        .filter(({ of, at: [, y] }) => of !== undefined && y > top && y < low)
        .map((word) => ring(rectangle(extent(word))))
      const [first, ...others] = [...outlines.map(ring), ...own]
      const filled = union(first as [Ring], ...others).reduce((sum, [outer = []]) => sum + areaOf(outer), 0)
      // Names keep 4 mm from what is not theirs: that paper is not counted.
      expect(filled / taken).toBeGreaterThan(0.54)
      // Pieces alone.
      const alone = outlines.reduce((sum, one) => sum + areaOf(one), 0)
      expect(alone / taken).toBeGreaterThan(0.5)
    },
  )
})

describe('free paper', () => {
  const least = { width: 10, height: 10 }

  test('of an empty room it is all, beside a rectangle the larger part, less what is to be kept clear', () => {
    expect(largestFree([], { width: 60, height: 40 }, 0, least)).toEqual({
      x: 0,
      y: 0,
      width: 60,
      height: 40,
    })
    const left = rectangle([0, 0, 20, 40])
    // Squares of 1 mm; those that the edge touches are not free.
    const beside = largestFree([left], { width: 60, height: 40 }, 0, least)
    expect(beside?.x).toBeGreaterThanOrEqual(20)
    expect(beside?.x).toBeLessThanOrEqual(22)
    expect((beside?.x ?? 0) + (beside?.width ?? 0)).toBe(60)
    expect(beside?.height).toBe(40)
    const clear = largestFree([left], { width: 60, height: 40 }, 5, least)
    expect(clear?.x).toBeGreaterThanOrEqual(25)
    expect(clear?.x).toBeLessThanOrEqual(27)
  })

  test('what is too small is none', () => {
    expect(largestFree([], { width: 60, height: 9 }, 0, least)).toBeNull()
    expect(largestFree([], { width: 9, height: 40 }, 0, least)).toBeNull()
    expect(largestFree([], { width: 10, height: 10 }, 0, least)).not.toBeNull()
  })
})
