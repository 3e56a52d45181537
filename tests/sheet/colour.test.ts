// The pieces in colour: clipped to their panels, and white under letters, glue places and lines that would not show. The PDF is read
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
import { pagesPdf } from '../../src/sheet/files/pdf.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { artWays, sheetPdf, sheetSvg, usualArt } from '../../src/sheet/index.ts'
import { lookOf } from '../../src/sheet/marks/looks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { gluedMoth, vFold } from '../paper/shared/designs.ts'
import { dummy, laid } from './designs.ts'

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
  laid(design, { paper: 'a4', lines, art: 'colour' })[0] as SheetPage

describe('what is painted', () => {
  test('only where it is asked for, and never a line of the picture besides', () => {
    const one = made([square('page/right', 20, 30)])
    for (const art of ['lines', 'none'] as const)
      for (const page of laid(one, { paper: 'a4', art })) expect(page.painting).toBeNull()
    expect(first(one).painting?.panels.map(({ of }) => of)).toEqual(['page/right'])
    expect(first(one).marks.some(({ role }) => role === 'picture')).toBe(false)
    const said = first(one).marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    expect(said).not.toContain('Picture')
  })

  test('the paper that the design names, under the shapes in their order', () => {
    const one = made([square('page/left', 20, 30), square('page/left', 25, 35, { fill: 'rust' })], [], {
      page: 'dusk',
    })
    // The paper of both pages lies under what is drawn on either.
    expect(first(one).painting?.panels.map(({ of, paper }) => [of, paper])).toEqual([
      ['page/left', PAPERS.dusk],
      ['page/right', PAPERS.dusk],
      ['page/left', null],
    ])
    const drawn = first(one).painting?.panels.at(-1)
    expect(drawn?.shapes.map(({ fill }) => fill)).toEqual([PAPERS.amber, PAPERS.rust])
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
    const [card, piece] = laid(one, { paper: 'a4', art: 'colour' }) as [SheetPage, SheetPage]
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

  test.each(['garden', 'heron', 'pond', 'owl'])('%s: white under every letter over its pieces', (name) => {
    for (const lines of ways)
      for (const { marks, painting } of laid(dummy(name), { paper: 'a4', lines, art: 'colour' })) {
        if (!painting) continue
        for (const mark of marks) {
          if (mark.mark !== 'word') continue
          const box = extent(mark)
          expect(
            painting.areas.some((points) => {
              const [l, t, r, b] = extent({ mark: 'path', runs: [points], closed: true, role: 'place' })
              return l < box[0] && t < box[1] && r > box[2] && b > box[3]
            }),
            mark.text,
          ).toBe(true)
        }
      }
  })

  describe('white beside a line', () => {
    const painted = (page: string, art: readonly object[] = []): SheetPage =>
      first(made(art, [vFold('beak', 'gutter', 110, -40, 45)], { page }))
    const stretches = ({ painting }: SheetPage) =>
      (painting?.bands ?? [])
        .flatMap(({ runs }) => runs)
        .map(([[x, y] = [0, 0], [u, v] = [0, 0]]) => ({ xs: [x, u], long: Math.hypot(u - x, v - y) }))
    const sum = (found: readonly { readonly long: number }[]): number =>
      found.reduce((all, { long }) => all + long, 0)
    const long = (page: string): number => sum(stretches(painted(page)))
    const onGutter = (art: readonly object[]): number => {
      const page = painted('cream', art)
      const gutter = page.placed[0]?.place.origin[0] ?? Number.NaN
      return sum(stretches(page).filter(({ xs }) => xs.every((x) => Math.abs(x - gutter) < 1e-6)))
    }
    /** On the right page, so far across, from one way along to another. */
    const strip = (across: readonly [number, number], along: readonly [number, number], fill: string) => ({
      on: 'page/right',
      shape: [
        [across[0], along[0]],
        [across[1], along[0]],
        [across[1], along[1]],
        [across[0], along[1]],
      ],
      fill,
    })

    test('only where it would not show, and no wider than is needed', () => {
      // Black on dusk has a contrast of 2.2, on cream one of 16: WCAG 2.2 asks for 3 (1.4.11).
      expect(long('cream')).toBe(0)
      // The gutter's 148 mm, the slit's 90 mm and two folds of 60.2 mm.
      expect(long('dusk')).toBeGreaterThan(340)
      expect(long('dusk')).toBeLessThan(370)
      for (const { width } of painted('dusk').painting?.bands ?? [])
        expect(width).toBeLessThan(0.4 + 2 * 0.3 + 1e-9)
    })

    test('also where one side alone is dark', () => {
      // Dusk on the right of the gutter, as far as the slit.
      expect(onGutter([strip([0, 105], [-1, 70], 'dusk')])).toBeCloseTo(70, 0)
    })

    test('all along where a good part hides, else from an end: it never comes and goes', () => {
      // The gutter below the slit is 70 mm long: three bars of 5 mm are more than a fifth of it, and two less.
      const bars = (...from: readonly number[]) => from.map((y) => strip([-1, 20], [y, y + 5], 'dusk'))
      expect(onGutter(bars(10, 30, 50))).toBeCloseTo(70, 0)
      expect(onGutter(bars(20, 45))).toBeCloseTo(70, 0)
      // One by the end alone.
      expect(onGutter(bars(3))).toBeCloseTo(8, 0)
      // By an end as well a fifth is the bound: 14 mm.
      expect(onGutter([strip([-1, 20], [-1, 12], 'dusk')])).toBeCloseTo(12, 0)
      expect(onGutter([strip([-1, 20], [-1, 16], 'dusk')])).toBeCloseTo(70, 0)
    })

    test('white edges near one another are joined: a dark line between two folds would be a cut', () => {
      const cover = parseDesign({
        hingebook: 1,
        title: 'Card',
        card: { width: 105, height: 148, caliper: 0.25, cover: true },
        mechanisms: [gluedMoth()],
        papers: { cover: 'night' },
      })
      const page = laid(cover, { paper: 'a4', lines: 'front', art: 'colour' }).find(({ placed }) =>
        placed.some(({ piece }) => piece === 'cover'),
      )
      const middle = page?.placed[0]?.place.origin[0] ?? Number.NaN
      const upright = (page?.painting?.bands ?? []).flatMap(({ runs, width }) =>
        runs.flatMap(([[x, y] = [0, 0], [u, v] = [0, 0]]) =>
          Math.abs(x - u) < 1e-6 && Math.abs(y - v) > 140 && Math.abs(x - middle) < 3
            ? [[x - width / 2, x + width / 2] as const]
            : [],
        ),
      )
      const sorted = upright.toSorted((a, b) => a[0] - b[0])
      expect(sorted.length).toBe(3)
      for (const [k, [left]] of sorted.entries())
        if (k > 0) expect(left).toBeLessThan(sorted[k - 1]?.[1] ?? 0)
    })
  })

  test('a fold is closed with the colour on both its sides, and only there', () => {
    const amber = [square('page/left', 0, 30), square('page/right', 0, 20)]
    const seams = first(made(amber, [], { page: 'dusk' })).painting?.seams ?? []
    const along = (colour: string): number =>
      seams
        .filter((one) => one.colour === colour)
        .flatMap(({ runs }) => runs)
        .reduce((sum, [[, from], [, to]]) => sum + Math.abs(to - from), 0)
    // The gutter is 148 mm: amber meets amber for 20 mm, then amber dusk for 10.
    expect(along(PAPERS.amber)).toBeCloseTo(20, 0)
    expect(along(PAPERS.dusk)).toBeCloseTo(118, 0)
    expect(seams).toHaveLength(2)
  })
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
    // A page that has paper alone needs none.
    expect(count(OPS.clip)).toBe(1)
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

  /** The first page's colours: portable pixmap, binary (netpbm's P6). */
  function coloursOf(pdf: Uint8Array, dots = 200) {
    const file = join(folder, 'page.pdf')
    writeFileSync(file, pdf)
    execFileSync('pdftoppm', ['-r', `${dots}`, '-f', '1', '-singlefile', file, file.replace('.pdf', '')])
    const bytes = readFileSync(file.replace('.pdf', '.ppm'))
    const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))
    const [start, width] = [head?.[0].length ?? 0, Number(head?.[1])]
    return ([x, y]: readonly [number, number]): readonly [number, number, number] => {
      const [column, row] = [x, y].map((mm) => Math.floor((mm * dots) / 25.4)) as [number, number]
      const at = start + 3 * (row * width + column)
      return [bytes[at] ?? 0, bytes[at + 1] ?? 0, bytes[at + 2] ?? 0]
    }
  }

  const raster = async (design: Design, lines: SheetLines) =>
    coloursOf(await sheetPdf(design, { paper: 'a4', lines, art: 'colour' }, font))

  /** WCAG 2.2, relative luminance, plus 0.05. */
  const light = (channels: readonly number[]): number =>
    [0.2126, 0.7152, 0.0722].reduce((sum, share, k) => {
      const part = (channels[k] ?? 0) / 255
      return sum + share * (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
    }, 0.05)

  test.each(['garden', 'heron', 'owl'])(
    '%s: on both its sides every line has paper or colour from which it can be told',
    async (name) => {
      for (const lines of ['ticks', 'back'] as const)
        for (const page of laid(dummy(name), { paper: 'a4', lines, art: 'colour' })) {
          if (!page.painting) continue
          // What lies under the marks alone.
          const at = coloursOf(await pagesPdf([{ ...page, marks: [] }], name, font), 300)
          const hidden: string[] = []
          for (const mark of page.marks) {
            // The margin's red line is pale on white too.
            if (mark.mark === 'word' || mark.role === 'dimension') continue
            const { width, colour } = lookOf(mark.role)
            // Along its outline a piece has the white sheet on one side.
            const isOutline = page.placed.some(
              ({ piece }) => mark.role === 'cut' && mark.of === (piece === 'card' ? 'page' : piece),
            )
            const least = isOutline ? Math.max : Math.min
            const ink = light([1, 3, 5].map((k) => Number.parseInt(colour.slice(k, k + 2), 16)))
            for (const run of mark.runs)
              for (const [k, [x, y]] of run.entries()) {
                const next = run[k + 1] ?? (mark.closed ? run[0] : undefined)
                if (!next) continue
                const [dx, dy] = [next[0] - x, next[1] - y]
                const long = Math.hypot(dx, dy)
                const parts = Math.ceil(long / 0.7)
                for (let n = 0; n < parts; n++) {
                  const t = (n + 0.5) / parts
                  // In a sharp corner both sides are the same.
                  if (Math.min(t, 1 - t) * long < 0.5) continue
                  const off = (width / 2 + 0.15) / long
                  const worst = least(
                    ...[off, -off].map((o) => light(at([x + t * dx - o * dy, y + t * dy + o * dx]))),
                  )
                  if (worst / ink < 2.9) hidden.push(`${mark.role} ${mark.of} ${x} ${y}`)
                }
              }
          }
          expect(hidden).toEqual([])
        }
    },
  )

  test('no hairline lies along a fold whose sides have one colour, at 600 dots an inch', async () => {
    const one = made([square('page/left', -30, 60), square('page/right', 0, 60)], [], { page: 'dusk' })
    const page = first(one, 'ticks')
    const at = coloursOf(await pagesPdf([{ ...page, marks: [] }], 'Card', font), 600)
    const [ox, oy] = page.placed[0]?.place.origin ?? [0, 0]
    const amber = [0xf5, 0xb8, 0x3d]
    for (let y = 8; y < 55; y += 3.1)
      for (let x = -0.4; x <= 0.4; x += 0.04)
        for (const [k, part] of at([ox + x, oy - y]).entries())
          expect(Math.abs(part - (amber[k] ?? 0)), `${x}`).toBeLessThan(6)
  })

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
