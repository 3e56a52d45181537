// The pieces in colour: clipped to their panels, and white round every line, letter and glue place. The PDF is read
// by PDF.js and drawn by poppler, where the machine has it: neither is our writer.
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { SaxesParser } from 'saxes'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { PAPERS } from '../../src/drawing/pen/papers.ts'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { artWays, layOut, sheetPdf, sheetSvg, usualArt } from '../../src/sheet/index.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { gluedMoth, vFold } from '../paper/shared/designs.ts'
import { dummy } from './designs.ts'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

const square = (on: string, from: number, to: number, more: object = {}) => ({
  on,
  shape: [
    [from, from],
    [to, from],
    [to, to],
    [from, to],
  ],
  fill: 'amber',
  ...more,
})

const made = (art: readonly object[], mechanisms: readonly object[] = [], papers?: object): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Card',
    card: { width: 105, height: 148 },
    mechanisms,
    art,
    ...(papers ? { papers } : {}),
  })

const ways: readonly SheetLines[] = ['front', 'ticks', 'back']

const first = (design: Design, lines: SheetLines = 'front'): SheetPage =>
  layOut(design, { paper: 'a4', lines, art: 'colour' })[0] as SheetPage

describe('what is painted', () => {
  test('only where it is asked for, and never a line of the picture besides', () => {
    const one = made([square('page/right', 20, 30)])
    for (const art of ['lines', 'none'] as const)
      for (const page of layOut(one, { paper: 'a4', art })) expect(page.painting).toBeNull()
    expect(first(one).painting?.panels.map(({ of }) => of)).toEqual(['page/right'])
    expect(first(one).marks.some(({ role }) => role === 'picture')).toBe(false)
    const said = first(one).marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    expect(said).not.toContain('Picture')
  })

  test('the paper that the design names, under the shapes in their order', () => {
    const one = made([square('page/left', 20, 30), square('page/left', 25, 35, { fill: 'rust' })], [], {
      page: 'dusk',
    })
    const [left] = first(one).painting?.panels ?? []
    expect(left?.paper).toBe(PAPERS.dusk)
    expect(left?.shapes.map(({ fill }) => fill)).toEqual([PAPERS.amber, PAPERS.rust])
  })

  test('where the panel lies on the page: the left page is the mirror of the right, the back of the front', () => {
    const xs = (on: string, lines: SheetLines, face: 'front' | 'back'): number[] => {
      const page = first(made([square(on, 20, 30, { face })]), lines)
      const gutter = page.placed[0]?.place.origin[0] ?? Number.NaN
      return (page.painting?.panels ?? []).flatMap(({ shapes }) =>
        shapes.flatMap(({ runs }) => runs.flat().map(([x]) => Number((x - gutter).toFixed(6)))),
      )
    }
    const ends = (list: readonly number[]) => [Math.min(...list), Math.max(...list)]
    expect(ends(xs('page/right', 'front', 'front'))).toEqual([20, 30])
    expect(ends(xs('page/left', 'ticks', 'front'))).toEqual([-30, -20])
    // Turned over, left and right change places.
    expect(ends(xs('page/right', 'back', 'back'))).toEqual([-30, -20])
    // What is on one face is not printed on the other.
    expect(xs('page/right', 'back', 'front')).toEqual([])
    expect(xs('page/right', 'front', 'back')).toEqual([])
  })

  test('glue holds on bare paper: places that are glued on this face stay white, tabs that show are painted', () => {
    const one = made([square('moth/left', 4, 12)], [{ ...gluedMoth(), tab: 10 }], {
      page: 'dusk',
      moth: 'lilac',
    })
    const [card, piece] = layOut(one, { paper: 'a4', art: 'colour' }) as [SheetPage, SheetPage]
    // On the card two tabs are glued on its inside; of the moth they are glued by their backs.
    const glued = (page: SheetPage) =>
      page.marks.filter(({ mark, role }) => mark === 'path' && role === 'glue')
    expect(glued(card).length).toBeGreaterThan(0)
    const white = (card.painting?.areas ?? []).map((points) =>
      extent({ mark: 'path', runs: [points], closed: true, role: 'glue' }),
    )
    for (const mark of glued(card).filter(({ of }) => of !== 'legend-hatch')) {
      const [l, t, r, b] = extent(mark)
      expect(white.some(([x, y, u, v]) => x <= l && y <= t && u >= r && v >= b)).toBe(true)
    }
    const tabs = piece.painting?.panels.filter(
      ({ shapes, paper }) => shapes.length === 0 && paper === PAPERS.lilac,
    )
    expect(tabs?.map(({ of }) => of)).toEqual(expect.arrayContaining(['moth/left', 'moth/right']))
  })

  test.each(['garden', 'heron', 'pond', 'owl'])(
    '%s: white under every line and letter over its pieces',
    (name) => {
      for (const lines of ways)
        for (const { marks, painting } of layOut(dummy(name), { paper: 'a4', lines, art: 'colour' })) {
          if (!painting) continue
          const banded = new Map(
            painting.bands.flatMap((band) => band.runs.map((run) => [run, band.width] as const)),
          )
          for (const mark of marks) {
            const box = extent(mark)
            if (mark.mark === 'word')
              expect(
                painting.areas.some((points) => {
                  const [l, t, r, b] = extent({ mark: 'path', runs: [points], closed: true, role: 'place' })
                  return l < box[0] && t < box[1] && r > box[2] && b > box[3]
                }),
                mark.text,
              ).toBe(true)
            // The outer edge has the white sheet beside it.
            else if (!(mark.role === 'cut' && mark.closed && !banded.has(mark.runs[0] ?? [])))
              for (const run of mark.runs)
                expect(banded.get(run), `${mark.role} ${mark.of}`).toBeGreaterThan(1)
          }
        }
    },
  )
})

describe('which way is usual', () => {
  test('lines to colour in where there is a picture; else there is nothing to choose', () => {
    expect(usualArt(dummy('heron'))).toBe('lines')
    expect(artWays(dummy('heron'))).toEqual(['colour', 'lines', 'none'])
    expect(usualArt(dummy('mouth'))).toBe('none')
    expect(artWays(dummy('mouth'))).toEqual(['none'])
  })
})

describe('as SVG', () => {
  test('can be read, and each panel is clipped to its own outline', () => {
    const parser = new SaxesParser({ xmlns: true })
    const clips: string[] = []
    const used: string[] = []
    parser.on('error', (error) => {
      throw error
    })
    parser.on('opentag', ({ name, attributes }) => {
      const value = (key: string): string => String(attributes[key]?.value ?? '')
      if (name === 'clipPath') clips.push(value('id'))
      if (attributes['clip-path']) used.push(value('clip-path'))
    })
    for (const page of sheetSvg(dummy('garden'), { paper: 'a4', art: 'colour' }).slice(0, 1))
      parser.write(page).close()
    expect(clips.length).toBeGreaterThan(5)
    expect(new Set(clips).size).toBe(clips.length)
    expect(used).toEqual(clips.map((id) => `url(#${id})`))
  })
})

const font = await fontOnDisk()

describe('as PDF, by PDF.js', () => {
  test('every clip is closed again, and the colours are those of the papers', async () => {
    const one = made(
      [square('page/right', 20, 30, { curve: true })],
      [vFold('beak', 'gutter', 110, -40, 45)],
      {
        page: 'dusk',
      },
    )
    const bytes = await sheetPdf(one, { paper: 'a4', art: 'colour' }, font)
    const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
    const { fnArray, argsArray } = await (await pdf.getPage(1)).getOperatorList()
    const count = (operator: number): number => fnArray.filter((one) => one === operator).length
    expect(count(OPS.clip)).toBe(2)
    expect(count(OPS.save)).toBe(count(OPS.restore))
    const colours = fnArray.flatMap((operator, k) =>
      operator === OPS.setFillRGBColor ? [String((argsArray[k] as unknown[])[0])] : [],
    )
    expect(colours).toEqual(expect.arrayContaining([PAPERS.dusk, PAPERS.amber]))
    await pdf.destroy()
  })
})

const has = (tool: string): boolean => spawnSync(tool, ['-v']).status === 0

describe.skipIf(!has('pdftoppm'))('as PDF, by poppler', () => {
  let folder: string
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'colour-'))
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  /** The first page's colours, at 200 dots an inch: portable pixmap, binary (netpbm's P6). */
  async function raster(design: Design, lines: SheetLines) {
    const file = join(folder, `${lines}.pdf`)
    writeFileSync(file, await sheetPdf(design, { paper: 'a4', lines, art: 'colour' }, font))
    execFileSync('pdftoppm', ['-r', '200', '-f', '1', '-singlefile', file, file.replace('.pdf', '')])
    const bytes = readFileSync(file.replace('.pdf', '.ppm'))
    const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))
    const [start, width] = [head?.[0].length ?? 0, Number(head?.[1])]
    return ([x, y]: readonly [number, number]): readonly [number, number, number] => {
      const [column, row] = [x, y].map((mm) => Math.floor((mm * 200) / 25.4)) as [number, number]
      const at = start + 3 * (row * width + column)
      return [bytes[at] ?? 0, bytes[at + 1] ?? 0, bytes[at + 2] ?? 0]
    }
  }

  test('paper and picture have their colours, the slit is black on white, beyond the card the sheet is white', async () => {
    const one = made([square('page/right', 60, 80)], [vFold('beak', 'gutter', 110, -40, 45)], {
      page: 'dusk',
    })
    for (const lines of ['front', 'ticks'] as const) {
      const at = await raster(one, lines)
      const [ox, oy] = first(one, lines).placed[0]?.place.origin ?? [0, 0]
      const on = (x: number, y: number) => at([ox + x, oy - y])
      const hex = ([r, g, b]: readonly number[]): string =>
        `#${[r, g, b].map((part) => (part ?? 0).toString(16).padStart(2, '0')).join('')}`
      expect(hex(on(90, 20))).toBe(PAPERS.dusk)
      expect(hex(on(70, 65))).toBe(PAPERS.amber)
      expect(hex(on(110, 60))).toBe('#ffffff')
      // Across the slit at y = 70: dark in the middle, white on either side, the paper's colour farther off.
      const across = Array.from({ length: 41 }, (_, k) => on(30, 68 + 0.1 * k)).map(([r, g, b]) =>
        Math.round((r + g + b) / 3),
      )
      expect(Math.min(...across)).toBeLessThan(40)
      const dark = across.indexOf(Math.min(...across))
      expect(Math.max(...across.slice(Math.max(0, dark - 9), dark))).toBeGreaterThan(240)
      expect(Math.max(...across.slice(dark, dark + 10))).toBeGreaterThan(240)
      expect(Math.abs((across[0] ?? 0) - Math.round((0x33 + 0x47 + 0x7c) / 3))).toBeLessThan(3)
    }
  })
})
