// A picture laid on a face: printed where it lies, in colour alone. The PDF is read by PDF.js, which is not our writer.
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import { pictureMatrix } from '../../src/drawing/pen/svg-values.ts'
import { view } from '../../src/drawing/view/view.ts'
import type { Design } from '../../src/paper/index.ts'
import { compile, parseDesign } from '../../src/paper/index.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { layOut, sheetPdf, sheetSvg } from '../../src/sheet/index.ts'

const dots = await sharp({ create: { width: 6, height: 4, channels: 3, background: '#f5b83d' } })
  .png()
  .toBuffer()

const picture = `data:image/png;base64,${dots.toString('base64')}`

const FRAME = [
  [20, 30],
  [50, 30],
  [50, 50],
  [20, 50],
]

const made = (more: object = {}): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Moon',
    card: { width: 105, height: 148 },
    mechanisms: [],
    art: [{ on: 'page/right', shape: FRAME, picture, ...more }],
  })

describe('where a picture lies', () => {
  test('is told by its corners: a square 1 wide and 1 high, y downwards', () => {
    // 30 wide, 20 high, its upper left corner at 5, 7 of a page whose y runs down.
    const corners = [
      [5, 27],
      [35, 27],
      [35, 7],
      [5, 7],
    ] as const
    expect(pictureMatrix(corners)).toEqual([30, 0, 0, 20, 5, 7])
    // Turned a quarter to the left: what was its right edge is its upper one.
    const turned = [
      [20, 30],
      [20, 0],
      [0, 0],
      [0, 30],
    ] as const
    expect(pictureMatrix(turned)).toEqual([0, -30, 20, 0, 0, 30])
    // A frame that is no quite even one: each corner is off by as much.
    expect(
      pictureMatrix([
        [0, 10],
        [12, 10],
        [10, 0],
        [0, 0],
      ]),
    ).toEqual([11, 0, 1, 10, -0.5, 0])
  })
})

/** The matrices under which a PDF's pictures are painted, in points. */
async function paintedIn(pdf: Uint8Array): Promise<number[][]> {
  const page = await (await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise).getPage(1)
  const { fnArray, argsArray } = await page.getOperatorList()
  const found: number[][] = []
  let last: number[] = []
  fnArray.forEach((operator, k) => {
    if (operator === OPS.transform) last = [...(argsArray[k] as number[])]
    if (operator === OPS.paintImageXObject) found.push(last)
  })
  return found
}

const PT = 72 / 25.4

describe('on the sheet', () => {
  test('it is printed at its true size and place', async () => {
    const design = made()
    const options = { paper: 'a4', art: 'colour' } as const
    const page = layOut(design, options)[0]
    const fold = page?.marks.find(
      (mark) => mark.mark === 'path' && mark.role === 'valley' && mark.runs[0]?.length === 2,
    )
    if (fold?.mark !== 'path') throw new Error('the card has a fold')
    // The gutter runs from the reader's end to the far one: the picture is 20 mm from it, 30 mm from the reader's end.
    const [ends] = fold.runs
    const xs = new Set(ends?.map(([x]) => Math.round(1e6 * x)))
    const ys = ends?.map(([, y]) => y) ?? []
    expect(xs.size, 'the card stands upright on the page').toBe(1)
    const gutter = ends?.[0]?.[0] ?? 0
    const low = Math.max(...ys)
    const [matrix] = await paintedIn(await sheetPdf(design, options, await fontOnDisk()))
    const height = page?.box[3] ?? 0
    const wanted = [30, 0, 0, 20, gutter + 20, height - (low - 30)].map((mm) => mm * PT)
    matrix?.forEach((n, k) => {
      expect(n).toBeCloseTo(wanted[k] as number, 2)
    })
    const [svg] = sheetSvg(design, options)
    const found = /<image transform="matrix\(([^)]*)\)" href="([^"]*)"/.exec(svg ?? '')
    expect(found?.[2]).toBe(picture)
    const [a, b, c, d, e, f] = (found?.[1] ?? '').split(' ').map(Number)
    expect([a, b, c, d]).toEqual([30, 0, 0, 20])
    expect(e).toBeCloseTo(gutter + 20, 2)
    expect(f).toBeCloseTo(low - 50, 2)
  })

  test('it is not printed among lines, nor where it only lies to be drawn after', async () => {
    for (const [design, art] of [
      [made(), 'lines'],
      [made(), 'none'],
      [made({ trace: true }), 'colour'],
    ] as const) {
      expect(sheetSvg(design, { paper: 'a4', art }).join('')).not.toContain('<image')
      expect(await paintedIn(await sheetPdf(design, { paper: 'a4', art }, await fontOnDisk()))).toEqual([])
    }
    // Nor is its frame a line to colour in.
    const lines = layOut(made(), { paper: 'a4', art: 'lines' }).flatMap(({ marks }) => marks)
    expect(lines.filter(({ role }) => role === 'picture')).toEqual([])
  })
})

describe('on the standing card', () => {
  const seen = (design: Design): string =>
    toSvg(view(compile(design), 120, { turn: 20, tilt: 40 }, { width: 400, height: 300 }, {}))

  test('it lies on its page, and what is only drawn after does not', () => {
    expect(seen(made())).toContain(`href="${picture}"`)
    expect(seen(made({ trace: true }))).not.toContain('<image')
  })
})
