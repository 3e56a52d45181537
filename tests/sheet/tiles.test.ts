// Pieces that are larger than the paper, put together again from what is printed; and prints that make up for a
// printer. The joining is worked out here from the crosses on the sheets alone, areas by polyclip-ts.
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import * as polyclip from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import { signedArea } from '../../src/paper/plane/convex.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { layOut, ownPaper, sheetPdf, sheetSvg, TooLargeError } from '../../src/sheet/index.ts'
import { card, dummy, laid } from './designs.ts'
import { readPdf } from './read-pdf.ts'

type Point = readonly [number, number]

const joined = (pages: readonly SheetPage[]) => pages.filter(({ part }) => part)

/** Middles of the crosses on a sheet: where the middle of one arm lies on the middle of another. */
function crosses({ marks }: SheetPage): readonly Point[] {
  const arms = marks.flatMap((mark) =>
    mark.mark === 'path' && mark.of === 'join'
      ? mark.runs.filter(([a, b]) => a && b && Math.hypot(a[0] - b[0], a[1] - b[1]) < 10)
      : [],
  )
  const middles = arms.map(
    ([a, b]): Point => [((a as Point)[0] + (b as Point)[0]) / 2, ((a as Point)[1] + (b as Point)[1]) / 2],
  )
  return middles.filter(([x, y], k) => middles.findIndex((p) => Math.hypot(p[0] - x, p[1] - y) < 1e-6) === k)
}

/** Every move that brings at least two crosses of one sheet on crosses of another. */
function moves(from: SheetPage, onto: SheetPage): readonly Point[] {
  const tried = crosses(from).flatMap((a) => crosses(onto).map((b): Point => [b[0] - a[0], b[1] - a[1]]))
  return tried.filter(
    (m, k) =>
      tried.filter((n) => Math.hypot(n[0] - m[0], n[1] - m[1]) < 1e-6).length >= 2 &&
      tried.findIndex((n) => Math.hypot(n[0] - m[0], n[1] - m[1]) < 1e-6) === k,
  )
}

const cutOf = ({ part }: SheetPage): readonly Point[] => {
  const found = part?.marks.find((mark) => mark.mark === 'path' && mark.role === 'cut' && mark.closed)
  return found?.mark === 'path' ? ((found.runs[0] ?? []) as readonly Point[]) : []
}

const rectangle = ([l, t, r, b]: readonly [number, number, number, number]): Point[] => [
  [l, t],
  [r, t],
  [r, b],
  [l, b],
]

/** Of rings that polyclip gives: outlines one way round, holes the other. */
const area = (polygons: number[][][][]): number =>
  polygons.flat().reduce((sum, ring) => sum + signedArea(ring as never), 0)

describe('a card larger than the paper', () => {
  const large = card(210, 297)

  test('is refused, and parted where that is asked for', () => {
    expect(() => layOut(large, { paper: 'a5' })).toThrow(TooLargeError)
    expect(joined(laid(large, { paper: 'a5', tiled: true })).length).toBeGreaterThan(3)
    expect(joined(laid(card(60, 90), { paper: 'a4', tiled: true }))).toHaveLength(0)
  })

  test('takes no more sheets than its size asks for', () => {
    // Open 420 by 297 mm and 2 mm of rim, on A4 lying: 284 by 171 mm of window, 12 of them shared: 2 by 2.
    expect(joined(laid(large, { paper: 'a4', tiled: true }))).toHaveLength(4)
  })

  test('comes together where the crosses of its sheets meet', () => {
    const [first, ...rest] = joined(laid(large, { paper: 'a4', tiled: true })) as [SheetPage, ...SheetPage[]]
    const at = new Map<SheetPage, Point>([[first, [0, 0]]])
    for (const page of rest)
      for (const [known, [dx, dy]] of [...at]) {
        if (at.has(page)) continue
        // Where two ways would do, the sheets' outlines must fall on one another in one of them.
        const found = moves(page, known).find(([mx, my]) => {
          const [a, b] = [cutOf(page)[0] as Point, cutOf(known)[0] as Point]
          return Math.hypot(a[0] + mx - b[0], a[1] + my - b[1]) < 1e-6
        })
        if (found) at.set(page, [found[0] + dx, found[1] + dy])
      }
    expect(at.size).toBe(4)
    const shown = [...at].map(([{ part }, [dx, dy]]) =>
      rectangle(part?.clip as readonly [number, number, number, number]).map(([x, y]) => [x + dx, y + dy]),
    )
    const outline = cutOf(first).map(([x, y]) => [x, y])
    const [head, ...tail] = shown.map((ring) => [[...ring, ring[0] as number[]]])
    const whole = polyclip.union(head as never, ...(tail as never[]))
    const seen = polyclip.intersection([[...outline, outline[0]]] as never, whole as never)
    expect(Math.abs(area(seen as never))).toBeCloseTo(420 * 297, 6)
  })

  test('keeps every window within what a printer reaches, and neighbours share 12 mm', () => {
    for (const paper of ['a5', 'letter'] as const)
      for (const { box, part } of joined(laid(large, { paper, tiled: true }))) {
        const [l, t, r, b] = part?.clip ?? [0, 0, 0, 0]
        expect(l).toBeGreaterThanOrEqual(6.5)
        expect(t).toBeGreaterThanOrEqual(6.5)
        expect(r).toBeLessThanOrEqual(box[2] - 6.5 + 1e-9)
        expect(b).toBeLessThanOrEqual(box[3] - 6.5 - 20)
      }
    const [a, b] = joined(laid(large, { paper: 'a4', tiled: true })) as [SheetPage, SheetPage]
    const [move] = moves(b, a).filter(([, y]) => Math.abs(y) < 1e-6) as [Point]
    const lap = (a.part?.clip[2] ?? 0) - ((b.part?.clip[0] ?? 0) + move[0])
    expect(lap).toBeCloseTo(12, 9)
  })

  test('says on each sheet which it is and what it is laid on', () => {
    const words = joined(laid(large, { paper: 'a4', tiled: true })).map(({ marks }) =>
      marks.flatMap((mark) => (mark.mark === 'word' && mark.of === 'tile' ? [mark.text] : [])).join(' '),
    )
    // A joint's name begins with a letter: no sheet is called so.
    const plans = joined(laid(large, { paper: 'a4', tiled: true })).map(({ marks }) =>
      marks.flatMap((mark) => (mark.mark === 'word' && mark.of === 'plan' ? [mark] : [])),
    )
    for (const plan of plans) expect(plan.map(({ text }) => text)).toEqual(['1', '2', '3', '4'])
    expect(plans.map((plan) => plan.find(({ bold }) => bold)?.text)).toEqual(['1', '2', '3', '4'])
    expect(words[0]).toContain('Card, sheet 1 of 4. Larger than the paper: join its 4 sheets')
    expect(words[3]).toContain('Card, sheet 4 of 4.')
    expect(words[1]).toContain('Cut along the left dotted line. Lay it on sheet 1,')
    expect(words[2]).toContain('Cut along the upper dotted line. Lay it on sheet 1,')
    expect(words[3]).toContain('Cut along the left and upper dotted line. Lay it on sheets 3 and 2,')
  })

  test('leaves no word of the sheet out', () => {
    const text = (tiled: boolean, paper: 'a4' | 'a3') =>
      laid(large, { paper, tiled })
        .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])))
        .join(' ')
    for (const head of ['Check the size', 'Lines', 'Make it', 'Take care', 'Sizes in mm'])
      expect(text(true, 'a4')).toContain(head)
  })

  test('is clipped in SVG and PDF', async () => {
    const [svg = ''] = sheetSvg(large, { paper: 'a4', tiled: true })
    expect(svg).toContain('<clipPath id="part">')
    expect(svg).toMatch(/<g clip-path="url\(#part\)">[\s\S]*m-cut[\s\S]*<\/g>[\s\S]*of="join"/)
    const bytes = await sheetPdf(large, { paper: 'a4', tiled: true }, await fontOnDisk())
    const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
    const { fnArray } = await (await pdf.getPage(1)).getOperatorList()
    expect(fnArray.filter((one) => one === OPS.clip)).toHaveLength(1)
    expect(fnArray.filter((one) => one === OPS.save)).toHaveLength(
      fnArray.filter((one) => one === OPS.restore).length,
    )
  })

  test.each([
    ['front', 'heron'],
    ['back', 'heron'],
    ['front', 'hedgehog'],
  ] as const)('joins beside its folds: dots on dashes would read as another fold (%s, %s)', (lines, name) => {
    for (const { marks, part } of joined(laid(dummy(name), { paper: 'a5', tiled: true, lines })))
      for (const join of marks) {
        if (join.mark !== 'path' || join.of !== 'join') continue
        const [[a, b] = []] = join.runs
        const axis = a && b && a[0] === b[0] ? 0 : 1
        const folds = (part?.marks ?? []).flatMap((mark) =>
          mark.mark === 'path' && ['valley', 'mountain', 'cut'].includes(mark.role)
            ? mark.runs.flatMap((run) =>
                run
                  .slice(1)
                  .flatMap((p, k) => (Math.abs(p[axis] - (run[k] as Point)[axis]) < 0.01 ? [p[axis]] : [])),
              )
            : [],
        )
        expect(folds.length).toBeGreaterThan(0)
        for (const at of folds) expect(Math.abs(at - (a as Point)[axis])).toBeGreaterThan(1.99)
      }
  })

  test('has a cover parted as well, which no paper had room for before', () => {
    const ids = joined(laid(dummy('hedgehog'), { paper: 'a5', tiled: true })).map(
      ({ placed }) => placed[0]?.piece,
    )
    expect(new Set(ids)).toEqual(new Set(['card', 'cover']))
  })
})

describe('a printer that prints 100 mm as 98 mm', () => {
  const design = card(70, 100)

  test('gets all of it larger by 100 in 98, on pages of the same size', async () => {
    const font = await fontOnDisk()
    const [plain, made] = await Promise.all(
      [undefined, 98].map(async (measured) => {
        const bytes = await sheetPdf(design, { paper: 'a4', ...(measured ? { measured } : {}) }, font)
        const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
        const { fnArray, argsArray } = await (await pdf.getPage(1)).getOperatorList()
        const scales = fnArray.flatMap((one, k) => (one === OPS.transform ? [argsArray[k] as number[]] : []))
        return { read: await readPdf(bytes), scales }
      }),
    )
    expect(plain?.scales).toEqual([])
    expect(made?.scales).toEqual([[100 / 98, 0, 0, 100 / 98, 0, 0].map((n) => expect.closeTo(n, 6))])
    expect(made?.read.pages[0]?.box).toEqual(plain?.read.pages[0]?.box.map((n) => expect.closeTo(n, 3)))
    // Times 98 in 100 by the printer, the line is 100 mm long again: 283.4646 units (ISO 32000-1:2008, 8.3.2.3).
    const long = made?.read.pages[0]?.lines.flatMap(({ runs }) =>
      runs.flatMap(([a, b]) => (a && b && runs.length === 1 ? [Math.hypot(a[0] - b[0], a[1] - b[1])] : [])),
    )
    expect(long).toContainEqual(expect.closeTo(((283.464567 / 98) * 100 * 98) / 100, 2))
    const said = made?.read.pages.flatMap(({ words }) => words.map(({ text }) => text)).join(' ')
    expect(said).toContain('drawn 2 % larger')
    expect(said).toContain('come out as 98 mm')
  })

  test('gets an SVG whose width and height in mm are the paper’s, and whose units are larger', () => {
    const [svg = ''] = sheetSvg(design, { paper: 'a4', measured: 98 })
    const [, width, height, view] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg) ?? []
    const sides = [Number(width), Number(height)].sort((a, b) => a - b)
    expect(sides).toEqual([expect.closeTo(210, 3), expect.closeTo(297, 3)])
    const [, , wide = 0] = (view ?? '').split(' ').map(Number)
    expect(Number(width) / wide).toBeCloseTo(100 / 98, 5)
  })

  test('and one that prints too large gets it smaller', () => {
    const said = laid(design, { paper: 'a4', measured: 101 })
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])))
      .join(' ')
    expect(said).toContain('drawn 1 % smaller')
  })

  test('is believed from 95 to 105 mm only', () => {
    for (const measured of [94.9, 105.1, 0, -100, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => layOut(design, { paper: 'a4', measured })).toThrow(/can measure 95 to 105 mm/)
    for (const measured of [95, 105]) expect(laid(design, { paper: 'a4', measured })).not.toHaveLength(0)
  })

  test('reaches as near to the edge as ever: what is printed larger is drawn that much farther out', () => {
    // The lawn's lines end 6.5 mm and a hair from the edge of A4; printed 1.0256 times as large they do so still.
    expect(laid(dummy('night-garden'), { paper: 'a4', measured: 97.5 })).not.toHaveLength(0)
  })

  test('has no room for what fills the paper to its edge', () => {
    const full = card(148.5, 210)
    expect(laid(full, { paper: 'a4' })).not.toHaveLength(0)
    expect(() => layOut(full, { paper: 'a4', measured: 98 })).toThrow(/too wide.*It fits on A3/)
  })
})

describe('paper of one’s own', () => {
  test('lies as it is told, the longer side along', () => {
    const paper = ownPaper(300, 200)
    expect([paper.width, paper.height]).toEqual([200, 300])
    for (const { box } of laid(card(60, 90), { paper }))
      expect([box[2], box[3]].sort((a, b) => a - b)).toEqual([200, 300])
  })

  test('is 90 to 1200 mm long and wide', () => {
    expect(() => ownPaper(89.9, 200)).toThrow('The paper’s width must be 90 to 1200 mm.')
    expect(() => ownPaper(200, 1200.1)).toThrow('The paper’s height must be 90 to 1200 mm.')
    expect(() => ownPaper(Number.NaN, 200)).toThrow(/width/)
    expect(ownPaper(90, 1200).height).toBe(1200)
  })
})

describe('copies', () => {
  const ids = (copies: number): string[] =>
    laid(dummy('hedgehog'), { paper: 'a3', copies }).flatMap(({ placed }) => placed.map(({ piece }) => piece))

  test('give so many of each piece', () => {
    const once = ids(1)
    const thrice = ids(3)
    for (const id of new Set(once)) {
      expect(thrice.filter((one) => one === id)).toHaveLength(3)
    }
    expect(thrice).toHaveLength(3 * once.length)
  })

  test('fill sheets up: two small cards share one', () => {
    const pages = laid(card(50, 60), { paper: 'a4', copies: 5 })
    expect(pages.length).toBeLessThan(5)
  })

  test('are 1 to 60, whole', () => {
    for (const copies of [0, 61, 1.5, Number.NaN])
      expect(() => layOut(card(50, 60), { paper: 'a4', copies })).toThrow(/whole number from 1 to 60/)
  })
})
