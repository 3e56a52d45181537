// The arrow along the grain: where it lies by polyclip-ts, on the cards of the garden and on random designs.
// That most paper has its fibres along its long side, and that folds go best along them: common practice, no source.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { longestFold, mainFold } from '../../src/making/grain.ts'
import type { Design, Flat, Piece } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { fitOn, layOut, paperOf } from '../../src/sheet/index.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import { onPage } from '../../src/sheet/marks/piece-marks.ts'
import { areaOf, shared } from '../paper/shared/areas.ts'
import { runs } from '../paper/shared/designs.ts'
import { gardens } from '../paper/shared/gardens.ts'
import { card, dummies, dummy, laid, moth } from './designs.ts'

/** The arrows of a page: on which piece, from tip to tip. */
const arrowsOn = ({ marks }: SheetPage) =>
  marks.flatMap((mark) =>
    mark.mark === 'path' && mark.role === 'grain' && mark.of !== 'legend'
      ? [{ of: mark.of ?? '', shaft: mark.runs[0] as readonly [Flat, Flat] }]
      : [],
  )

/** A thin rectangle round a stretch. */
function round([[ax, ay], [bx, by]]: readonly [Flat, Flat], half: number): Flat[] {
  const long = Math.hypot(bx - ax, by - ay)
  const [u, v] = [((bx - ax) / long) * half, ((by - ay) / long) * half]
  return [
    [ax - v, ay + u],
    [ax + v, ay - u],
    [bx + v, by - u],
    [bx - v, by + u],
  ]
}

function holds(design: Design, lines: SheetLines): number {
  let count = 0
  const flat = new Map(pieces(design).map((piece) => [piece.id, piece]))
  for (const page of laid(design, { paper: 'a4', lines, care: [] }))
    for (const { of, shaft } of arrowsOn(page)) {
      count += 1
      const piece = flat.get(of.replace(/-grain$/, '')) as Piece
      const place = page.placed.find((one) => one.piece === piece.id)?.place
      if (!place) throw new Error('it lies on a piece')
      const at = (points: readonly Flat[]): Flat[] => points.map((p) => onPage(place, p))
      const arrow = round(shaft, 0.8)
      expect(shared(arrow, at(piece.outline))).toBeCloseTo(areaOf(arrow), 6)
      for (const { points, isTaped } of placesOn(design, piece.id, lines === 'back' ? 'outside' : 'inside'))
        if (!isTaped) expect(shared(arrow, at(points))).toBe(0)
      for (const line of piece.lines.filter(({ kind }) => kind !== 'glue'))
        line.points.slice(1).forEach((end, k) => {
          const [a, b] = at([line.points[k] as Flat, end])
          if (a && b && Math.hypot(b[0] - a[0], b[1] - a[1]) > 1e-6)
            expect(shared(arrow, round([a, b], 0.2))).toBeLessThan(1e-9)
        })
      // It lies along a fold, and along the long side of its page where other pieces lie too.
      const [a, b] = at([...(longestFold(piece) ?? [])]) as [Flat, Flat]
      const [p, q] = shaft
      const cross = (q[0] - p[0]) * (b[1] - a[1]) - (q[1] - p[1]) * (b[0] - a[0])
      expect(Math.abs(cross)).toBeLessThan(1e-6)
    }
  return count
}

describe('the arrow', () => {
  test.each(dummies.map(([name]) => name))(
    '%s: lies on free paper of its piece, along its main fold',
    (name) => {
      const design = dummy(name.replace('.hingebook.json', ''))
      const found = (['front', 'back'] as const).map((lines) => holds(design, lines))
      expect(Math.min(...found)).toBeGreaterThan(0)
    },
  )

  test('on random designs too', () => {
    fc.assert(
      fc.property(gardens(5), fc.constantFrom<SheetLines>('front', 'back'), (design, lines) => {
        if (fitOn(design, paperOf('a4')).ok) holds(design, lines)
      }),
      runs(30),
    )
  })

  test('of a good copy is left out, and that is said', () => {
    const pages = laid(moth(), { paper: 'a4', lines: 'ticks', care: [] })
    expect(pages.flatMap(arrowsOn)).toEqual([])
    // Nor has its key one: beside slits it would look like one of them.
    expect(pages.flatMap(({ marks }) => marks.filter(({ role }) => role === 'grain'))).toEqual([])
    const said = pages.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])),
    )
    expect(said.join(' ')).toContain('best along each longest fold')
  })
})

describe('the grain of printing paper', () => {
  const said = (design: Design): string =>
    laid(design, { paper: 'a4', care: [] })
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])))
      .join(' ')

  test('of a sheet of few words is left out: it has no key that would name it', () => {
    const arrows = (words: 'all' | 'few'): number =>
      layOut(dummy('beak'), { paper: 'a4', words }).flatMap(arrowsOn).length
    expect(arrows('all')).toBeGreaterThan(0)
    expect(arrows('few')).toBe(0)
  })

  test('a card whose fold lies across the long side of its page says so; one along it does not', () => {
    expect(said(card(105, 148))).toContain('where it runs across, as in most paper')
    expect(said(card(90, 250))).not.toContain('where it runs across, as in most paper')
  })

  test('pieces lie with their main folds along the long side of their page, or say that they do not', () => {
    for (const name of ['night-garden', 'garden', 'pond', 'owl', 'hedgehog']) {
      const design = dummy(name)
      const flat = new Map(pieces(design).map((piece) => [piece.id, piece]))
      for (const { placed, box, marks } of laid(design, { paper: 'a4', care: [] })) {
        const words = marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])).join(' ')
        for (const { piece, place } of placed.filter(({ piece: id }) => id !== 'card' && id !== 'cover')) {
          const fold = longestFold(flat.get(piece) as Piece)
          if (!fold || words.includes('across the grain')) continue
          const [[ax, ay], [bx, by]] = [onPage(place, fold[0]), onPage(place, fold[1])]
          expect(Math.abs(box[2] > box[3] ? by - ay : bx - ax)).toBeLessThan(1e-6)
        }
      }
    }
  })
})

describe('the main fold', () => {
  const line = (kind: 'valley' | 'mountain' | 'glue', of: string, ...points: readonly Flat[]) => ({
    kind,
    of,
    points,
  })

  test('is one that moves, however long those of the tabs are; of tabs alone it is theirs', () => {
    const tab = [line('valley', 'a/left', [0, 0], [50, 0]), line('glue', 'a/left', [0, 0], [50, 0], [40, -5])]
    const ridge = line('mountain', 'a/ridge', [10, 0], [10, 20])
    expect(Math.abs(Math.cos(mainFold({ lines: [...tab, ridge] }) ?? 0))).toBeLessThan(1e-9)
    expect(mainFold({ lines: tab })).toBe(0)
    expect(mainFold({ lines: [] })).toBeNull()
  })

  test('is the longest of those that lie in its way', () => {
    const lines = [
      line('valley', 'a', [0, 0], [0, 10]),
      line('valley', 'b', [5, 0], [5, 30]),
      line('valley', 'c', [0, 0], [25, 0]),
    ]
    expect(longestFold({ lines })).toEqual([
      [5, 0],
      [5, 30],
    ])
  })
})
