import { describe, expect, test } from 'vitest'
import type { PathMark, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import type { Piece } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import type { SheetFace, SheetPage } from '../../src/sheet/index.ts'
import { fitOn, layOut, paperOf } from '../../src/sheet/index.ts'
import { CARE, faceSentence, PRINT, sizesOf, stepsFor } from '../../src/sheet/marks/instructions.ts'
import { clipped } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummy, moth, shelf } from './designs.ts'

const faces: readonly SheetFace[] = ['inside', 'outside']

/** Every design of the shelf on every paper that takes it, printed on either side. */
const sheets = shelf.flatMap(({ name, design }) =>
  (['a4', 'letter', 'a3'] as const)
    .filter((paper) => fitOn(design, paperOf(paper)).ok)
    .flatMap((paper) =>
      faces.map((face) => ({
        name: `${name}, ${paper}, ${face}`,
        design,
        face,
        pages: layOut(design, { paper, face }),
      })),
    ),
)

const words = (page: SheetPage): WordMark[] => page.marks.filter((mark) => mark.mark === 'word')

const paths = (page: SheetPage): PathMark[] => page.marks.filter((mark) => mark.mark === 'path')

const segments = (path: PathMark): [Point, Point][] =>
  path.runs.flatMap((run) => {
    const ends = path.closed ? [...run, run[0] as Point] : run
    return ends.slice(1).map((point, k): [Point, Point] => [ends[k] as Point, point])
  })

test('there is a design for every situation', () => {
  expect(sheets.length).toBeGreaterThan(40)
  expect(sheets.some(({ pages }) => pages.length > 1)).toBe(true)
})

describe.each(sheets)('$name', ({ design, face, pages }) => {
  test('nothing lies nearer the edge than a printer reaches', () => {
    const beyond = pages.flatMap(({ box: [, , width, height], marks }) =>
      marks.filter((mark) => {
        const [left, top, right, bottom] = extent(mark)
        return Math.min(left, top, width - right, height - bottom) < 6.5 - 1e-9
      }),
    )
    expect(beyond).toEqual([])
  })

  test('no words touch other words, a line or the card', () => {
    const touching = pages.flatMap((page) => {
      const boxes = words(page).map((word) => ({ text: word.text, box: extent(word) }))
      const lines = paths(page).flatMap((path) => segments(path).map((ends) => ({ path, ends })))
      return boxes.flatMap(({ text, box: a }, k) => [
        ...boxes
          .slice(k + 1)
          .filter(
            ({ box: b }) =>
              Math.min(a[2], b[2]) - Math.max(a[0], b[0]) > 1e-9 &&
              Math.min(a[3], b[3]) - Math.max(a[1], b[1]) > 1e-9,
          )
          .map((other) => `${text} / ${other.text}`),
        ...lines
          .filter(({ ends: [p, q] }) => clipped(p, q, a) !== null)
          .map(({ path }) => `${text} / ${path.role} ${path.of}`),
      ])
    })
    expect(touching).toEqual([])
  })

  test('every section is said once, and all of it', () => {
    const said = pages.flatMap((page) => words(page).map((word) => word.text)).join(' ')
    const count = (label: string): number => said.split(label).length - 1
    for (const label of ['Make it', 'Take care', 'Lines', 'Sizes in mm', 'Check the size'])
      expect(count(label), label).toBe(1)
    // Lines break where they must: compare without spaces.
    const bare = (text: string): string => text.normalize('NFC').replaceAll(/\s/g, '')
    for (const text of [PRINT, CARE, faceSentence[face], design.title, ...stepsFor(design, face).slice(1)])
      expect(bare(said), text).toContain(bare(text))
    for (const m of design.mechanisms)
      expect(bare(said)).toContain(
        bare(
          sizesOf(m)
            .map((run) => run.text)
            .join(''),
        ),
      )
  })

  test('a page with pieces carries both check lines, at their length', () => {
    for (const page of pages.filter(({ placed }) => placed.length > 0)) {
      for (const [of, length] of [
        ['check-100mm', 100],
        ['check-4in', 101.6],
      ] as const) {
        const lines = paths(page).filter((path) => path.of === of)
        expect(lines.length, of).toBe(1)
        const [a, b] = lines[0]?.runs[0] ?? []
        expect(Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0))).toBeCloseTo(
          length,
          9,
        )
      }
    }
  })

  test('every piece lies on one page, its points where the kernel says', () => {
    const placed = pages.flatMap((page) => page.placed.map((one) => ({ ...one, page })))
    expect(placed.map(({ piece }) => piece).sort()).toEqual(
      pieces(design)
        .map(({ id }) => id)
        .sort(),
    )
    const lost = placed.flatMap(({ piece: id, place, page }) => {
      const piece = pieces(design).find((one) => one.id === id) as Piece
      const back = ([x, y]: Point): Point => [
        (x - place.origin[0]) * (place.mirrored ? -1 : 1),
        place.origin[1] - y,
      ]
      const drawn = paths(page).flatMap((path) => path.runs.map((run) => ({ path, run: run.map(back) })))
      return piece.lines.filter(
        (line) =>
          // The card's edge and gutter may run off what can be printed.
          line.of !== 'page' &&
          line.of !== 'gutter' &&
          !drawn.some(
            ({ path, run }) =>
              path.of === line.of && path.closed === (line.closed ?? false) && sameRun(run, line.points),
          ),
      )
    })
    expect(lost).toEqual([])
  })
})

function sameRun(a: readonly Point[], b: readonly Point[]): boolean {
  return (
    a.length === b.length &&
    a.every(([x, y], k) => Math.hypot(x - (b[k]?.[0] ?? 0), y - (b[k]?.[1] ?? 0)) < 1e-9)
  )
}

const kindsOf = (page: SheetPage | undefined): Record<string, string> =>
  Object.fromEntries(
    (page ? paths(page) : []).filter(({ of }) => of?.includes('/')).map(({ of, role }) => [of, role]),
  )

describe('the outside', () => {
  const [inside] = layOut(dummy('heron'), { paper: 'a4' })
  const [outside] = layOut(dummy('heron'), { paper: 'a4', face: 'outside' })

  test('turns mountains to valleys and valleys to mountains', () => {
    const flip: Record<string, string> = { mountain: 'valley', valley: 'mountain' }
    const [a, b] = [kindsOf(inside), kindsOf(outside)]
    expect(Object.keys(a).length).toBeGreaterThan(8)
    for (const [of, role] of Object.entries(a)) expect(b[of], of).toBe(flip[role])
  })

  test('swaps left and right', () => {
    const middle = (page: SheetPage | undefined, of: string): number => {
      const gutter = page?.placed[0]?.place.origin[0] ?? Number.NaN
      const path = page ? paths(page).find((one) => one.of === of) : undefined
      return (path?.runs[0]?.[1]?.[0] ?? Number.NaN) - gutter
    }
    expect(middle(inside, 'left-eye/ridge')).toBeLessThan(0)
    expect(middle(outside, 'left-eye/ridge')).toBeCloseTo(-middle(inside, 'left-eye/ridge'), 9)
    expect(middle(outside, 'right-eye/ridge')).toBeCloseTo(-middle(inside, 'right-eye/ridge'), 9)
  })

  test('cuts stay cuts', () => {
    const cuts = (page: SheetPage | undefined) =>
      page ? paths(page).filter(({ role }) => role === 'cut').length : 0
    expect(cuts(outside)).toBe(cuts(inside))
  })
})

test('the heron and the lantern keep to one page, on A4 and on letter paper', () => {
  for (const name of ['heron', 'lantern', 'beak', 'layers', 'card'])
    for (const paper of ['a4', 'letter'] as const)
      for (const face of faces)
        expect(layOut(dummy(name), { paper, face }), `${name} ${paper} ${face}`).toHaveLength(1)
})

test('a card as large as the paper says what to trim', () => {
  const design = shelf.find(({ name }) => name === 'a card as large as A4')?.design
  const said = (design ? layOut(design, { paper: 'a4' }) : [])
    .flatMap((page) => words(page).map(({ text }) => text))
    .join(' ')
  // A4 lying is 297 mm wide, two A5 pages are 296 mm: half a millimetre on either side.
  expect(said).toContain('Trim 0.5 mm off the left and right edges of the paper.')
  expect(said).toContain('The upper and lower edges of the paper are the card’s own.')
})

test('glue areas are hatched, on the page and on the piece', () => {
  const hatched = layOut(moth(), { paper: 'a4' }).map((page) =>
    paths(page).filter(({ of, role }) => role === 'glue' && of?.endsWith('-hatch')),
  )
  expect(hatched[0]?.length).toBeGreaterThan(2)
  expect(hatched[1]?.length).toBeGreaterThan(2)
})
