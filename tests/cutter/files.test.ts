// The files for a cutting machine, read by parsers of others: DXF by dxf-parser (MIT), SVG by saxes (ISC).
import { polygonContains } from 'd3'
import DxfParser from 'dxf-parser'
import fc from 'fast-check'
import { SaxesParser } from 'saxes'
import { describe, expect, test } from 'vitest'
import type { CutOptions, CutSheet, Layer } from '../../src/cutter/index.ts'
import {
  cutSvg,
  LAYERS,
  mainFold,
  sheetDxf,
  sheetsToCut,
  TooLargeToCutError,
  USUAL,
} from '../../src/cutter/index.ts'
import { roomiest } from '../../src/cutter/names.ts'
import type { Design, Piece } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import { areaOf } from '../paper/shared/areas.ts'
import { runs } from '../paper/shared/designs.ts'
import { gardens } from '../paper/shared/gardens.ts'
import { beak, card, dummies, dummy, moth } from '../sheet/designs.ts'

type Flat = readonly [number, number]

interface ReadLine {
  readonly layer: string
  readonly points: readonly Flat[]
  readonly closed: boolean
}

const A4 = { width: 210, height: 297, margin: 5 } as const

const A3 = { width: 297, height: 420, margin: 5 } as const

const usual = (more: Partial<CutOptions> = {}): CutOptions => ({ ...USUAL, stock: A3, ...more })

interface DxfLine {
  readonly type: string
  readonly layer: string
  readonly shape?: boolean
  readonly vertices?: readonly { readonly x: number; readonly y: number }[]
}

interface DxfText {
  readonly type: string
  readonly layer: string
  readonly text: string
  readonly textHeight: number
  readonly startPoint: { readonly x: number; readonly y: number }
  readonly endPoint: { readonly x: number; readonly y: number }
  readonly halign: number
  readonly valign: number
}

function readDxf(sheet: CutSheet) {
  const file = new DxfParser().parseSync(sheetDxf(sheet))
  if (!file) throw new Error('dxf-parser reads nothing')
  const all = file.entities as unknown as readonly DxfLine[]
  const lines = all
    .filter(({ type }) => type !== 'TEXT')
    .map(({ type, layer, shape = false, vertices = [] }): ReadLine & { readonly type: string } => ({
      type,
      layer,
      closed: shape,
      points: vertices.map(({ x, y }) => [x, y] as const),
    }))
  const names = all.filter(({ type }) => type === 'TEXT') as unknown as readonly DxfText[]
  return { header: file.header, lines, names, tables: file.tables }
}

function readSvg(sheet: CutSheet): {
  readonly attributes: Record<string, string>
  readonly lines: (ReadLine & { readonly piece: string; readonly group: number })[]
} {
  const parser = new SaxesParser()
  const lines: (ReadLine & { readonly piece: string; readonly group: number })[] = []
  let layer = ''
  let piece = ''
  let group = 0
  let isTitle = false
  let attributes: Record<string, string> = {}
  parser.on('opentag', ({ name, attributes: found }) => {
    const of = found as Record<string, string>
    if (name === 'svg') attributes = of
    if (name === 'g') layer = of.id ?? layer
    if (name === 'g') group += 1
    isTitle = name === 'title'
    if (name !== 'path') return
    const numbers = (of.d ?? '').match(/-?\d+(?:\.\d+)?/g)?.map(Number) ?? []
    const points = Array.from(
      { length: numbers.length / 2 },
      (_, k): Flat => [numbers[2 * k] as number, sheet.height - (numbers[2 * k + 1] as number)],
    )
    lines.push({ layer, piece, group, points, closed: (of.d ?? '').endsWith('Z') })
  })
  parser.on('text', (text) => {
    if (isTitle) piece = text
    isTitle = false
  })
  parser.write(cutSvg(sheet)).close()
  return { attributes, lines }
}

const lengthOf = ({ points, closed }: Pick<ReadLine, 'points' | 'closed'>): number =>
  points.reduce((sum, [x, y], k) => {
    const next = points[k + 1] ?? (closed ? points[0] : undefined)
    return next ? sum + Math.hypot(next[0] - x, next[1] - y) : sum
  }, 0)

const total = (lines: readonly ReadLine[], ...layers: readonly Layer[]): number =>
  lines
    .filter(({ layer }) => (layers as readonly string[]).includes(layer))
    .reduce((sum, one) => sum + lengthOf(one), 0)

const lengths = (all: readonly Piece[], kind: string): number =>
  all
    .flatMap(({ lines }) => lines)
    .filter((line) => line.kind === kind)
    .reduce((sum, { points, closed = false }) => sum + lengthOf({ points, closed }), 0)

describe('every card of the garden', () => {
  test.each(dummies)('%s: what is read back is as long and as large as its pieces', (_, design) => {
    const all = pieces(design)
    const sheets = sheetsToCut(design, usual())
    for (const read of [readDxf, readSvg]) {
      const lines = sheets.flatMap((sheet): readonly ReadLine[] => read(sheet).lines)
      for (const kind of ['valley', 'mountain'] as const)
        expect(total(lines, kind)).toBeCloseTo(lengths(all, kind), 1)
      const outlines = lines.filter(({ layer, closed }) => layer === 'outline' && closed)
      expect(outlines).toHaveLength(all.length)
      const areas = (list: readonly (readonly Flat[])[]): number[] => list.map(areaOf).sort((a, b) => a - b)
      const wanted = areas(all.map(({ outline }) => outline))
      areas(outlines.map(({ points }) => points)).forEach((area, k) => {
        expect(Math.abs(area - (wanted[k] as number))).toBeLessThan(0.05)
      })
    }
  })

  test('the whole garden is laid out in less than a second', () => {
    const before = performance.now()
    const sheets = sheetsToCut(dummy('night-garden'), usual({ stock: A4 }))
    expect(performance.now() - before).toBeLessThan(1000)
    expect(sheets.reduce((sum, { count }) => sum + count, 0)).toBe(pieces(dummy('night-garden')).length)
  })

  test('ten of it fill their sheets to more than 60 %', () => {
    const sheets = sheetsToCut(dummy('night-garden'), usual({ stock: A4, copies: 10 }))
    const full = sheets.reduce((sum, sheet) => sum + sheet.full, 0) / sheets.length
    expect(full).toBeGreaterThan(0.6)
  })
})

describe('in an SVG each piece has its name', () => {
  // SVG 2, 5.8: the first title within a group is the name of that group.
  test.each([1, 2])(
    '%i of each: every outline stands in a group of its own, and its inner lines bear its name',
    (copies) => {
      const design = dummy('pond')
      const lines = sheetsToCut(design, usual({ copies, glue: true })).flatMap((sheet, k) =>
        readSvg(sheet).lines.map((line) => ({ ...line, group: `${k} ${line.group}` })),
      )
      const outlines = lines.filter(({ layer }) => layer === 'outline')
      expect(new Set(outlines.map(({ group }) => group)).size).toBe(outlines.length)
      const names = [
        'bud',
        'card',
        'cover',
        'lily',
        'pad',
        'pond platform',
        'pond wall 1',
        'pond wall 2',
        'pond wall 3',
      ]
      expect(outlines.map(({ piece }) => piece).sort()).toEqual(
        names.flatMap((name) => Array.from({ length: copies }, () => name)),
      )
      // The pond is as large as no other piece: its name is on its outline.
      const areas = outlines.map(({ piece, points }) => ({ piece, area: areaOf(points) }))
      const { id, outline } = pieces(design).find((one) => one.id === 'pond/platform') as Piece
      expect(id).toBe('pond/platform')
      for (const { piece, area } of areas)
        expect(Math.abs(area - areaOf(outline)) < 0.05, piece).toBe(piece === 'pond platform')
      // The lily has one fold, the card many; a wall two.
      const folds = (name: string): number =>
        lines.filter(({ layer, piece }) => /valley|mountain/.test(layer) && piece === name).length / copies
      expect([folds('lily'), folds('pond wall 1'), folds('pad')]).toEqual([1, 2, 0])
    },
  )
})

/** Pairs of group code and value, as a DXF file has them line by line. */
function pairsOf(dxf: string): readonly (readonly [code: number, value: string])[] {
  const all = dxf.split('\n')
  return Array.from({ length: Math.floor(all.length / 2) }, (_, k) => [
    Number(all[2 * k]),
    all[2 * k + 1] as string,
  ])
}

// AutoCAD DXF Reference, TEXT: 8 layer, 10 and 20 first point, 40 height, 1 the text; 72 is 1 and 73 is 2 where it is
// set about its middle, which 11 and 21 then tell. LAYER: where the colour, 62, is negative, the layer is off.
describe('in a DXF each piece has its name', () => {
  const sheets = sheetsToCut(dummy('pond'), usual({ copies: 2 }))

  test('within its outline, small, and once for each copy', () => {
    const found = sheets.flatMap((sheet) => {
      const { lines, names } = readDxf(sheet)
      const outlines = lines.filter(({ layer }) => layer === 'outline')
      return names.map(({ text, textHeight, endPoint, startPoint, halign, valign }) => {
        expect([halign, valign]).toEqual([1, 2])
        expect(textHeight).toBeGreaterThanOrEqual(1)
        expect(textHeight).toBeLessThanOrEqual(3)
        expect(startPoint.x).toBeLessThan(endPoint.x)
        expect(startPoint.y).toBeCloseTo(endPoint.y - textHeight / 2, 3)
        const [own, ...more] = outlines.filter(({ points }) =>
          polygonContains(
            points.map(([x, y]) => [x, y]),
            [endPoint.x, endPoint.y],
          ),
        )
        expect(more).toEqual([])
        return { text, area: areaOf(own?.points ?? []) }
      })
    })
    const wanted = pieces(dummy('pond')).map(({ id, outline }) => ({ id, area: areaOf(outline) }))
    expect(found).toHaveLength(2 * wanted.length)
    for (const { id, area } of wanted) {
      const text = id.replace(/\/piece$/, '').replace(/[/-]/g, ' ')
      const own = found.filter((one) => one.text === text)
      expect(own, text).toHaveLength(2)
      for (const one of own) expect(Math.abs(one.area - area)).toBeLessThan(0.05)
    }
  })

  test('where there is most room in it', () => {
    // A square of 20 mm with a handle 4 mm wide: in its middle a circle of 10 mm has room, tried in steps of 80 / 24 mm.
    const pan: Flat[] = [
      [0, 0],
      [20, 0],
      [20, 8],
      [80, 8],
      [80, 12],
      [20, 12],
      [20, 20],
      [0, 20],
    ]
    const { at, room } = roomiest(pan)
    expect(Math.hypot(at[0] - 10, at[1] - 10)).toBeLessThan(80 / 24)
    expect(room).toBeGreaterThan(8)
    expect(room).toBeLessThanOrEqual(10)
  })

  test('on a layer of its own that is off, with nothing else on it, and nothing of it elsewhere', () => {
    for (const sheet of sheets) {
      const pairs = pairsOf(sheetDxf(sheet))
      let entity = ''
      let name = ''
      for (const [code, value] of pairs) {
        if (code === 0) entity = value
        if (entity === 'LAYER' && code === 2) name = value
        if (entity === 'LAYER' && code === 62) expect(Number(value) < 0, name).toBe(name === 'names')
        if (['TEXT', 'POLYLINE', 'VERTEX', 'SEQEND'].includes(entity) && code === 8)
          expect(value === 'names', entity).toBe(entity === 'TEXT')
      }
      expect(pairs.filter(([code, value]) => code === 0 && value === 'TEXT')).toHaveLength(sheet.count)
    }
  })

  test('in ASCII, whatever it is called', () => {
    // AutoCAD: a character by its number is written \\U+ and four hexadecimal digits.
    const [sheet] = sheets
    if (!sheet) throw new Error('one sheet')
    const named = sheetDxf({ ...sheet, lying: [{ of: 'k\u0119p', outline: sheet.lying[0]?.outline ?? [] }] })
    expect(pairsOf(named)).toContainEqual([1, 'k\\U+0119p'])
    expect(named).toMatch(/^[\n\x20-\x7e]*$/)
  })
})

describe('a card with a beak', () => {
  const design = card(60, 100, [beak(70, -30, 25)])
  const [sheet] = sheetsToCut(design, usual({ stock: A4 }))

  test('is scored first, cut inside next, and freed last', () => {
    if (!sheet) throw new Error('one sheet')
    const order = sheet.layers.map(({ layer }) => layer)
    expect(order).toEqual(LAYERS.filter((layer) => order.includes(layer)))
    expect(order.at(-1)).toBe('outline')
    const read = readDxf(sheet).lines.map(({ layer }) => layer)
    expect(read.indexOf('outline')).toBe(read.length - 1)
    expect(read).toContain('inner-cut')
  })

  test('is a DXF in millimetres whose layers are known by their dashes', () => {
    if (!sheet) throw new Error('one sheet')
    const { header, lines, tables } = readDxf(sheet)
    expect(header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4 })
    expect(new Set(lines.map(({ type }) => type))).toEqual(new Set(['POLYLINE']))
    const { lineType, layer } = tables as unknown as {
      readonly lineType: {
        readonly lineTypes: Record<string, { readonly pattern: readonly number[] | undefined }>
      }
      readonly layer: { readonly layers: Record<string, unknown> }
    }
    expect(Object.keys(layer.layers)).toEqual(['names', ...sheet.layers.map((one) => one.layer)])
    expect(lineType.lineTypes.VALLEY?.pattern).toEqual([3, -1.5])
    expect(lineType.lineTypes.MOUNTAIN?.pattern).toEqual([4, -1.5, 0.75, -1.5])
  })

  test('is an SVG whose size and unit are those of the sheet', () => {
    if (!sheet) throw new Error('one sheet')
    expect(readSvg(sheet).attributes).toMatchObject({
      width: '210mm',
      height: '297mm',
      viewBox: '0 0 210 297',
    })
  })

  test('bridges leave their width of the outline uncut, and nothing else', () => {
    const [held] = sheetsToCut(design, usual({ stock: A4, bridge: 0.8 }))
    if (!sheet || !held) throw new Error('one sheet')
    const [whole, left] = [sheet, held].map((one) => total(readDxf(one).lines, 'outline')) as [number, number]
    // 2 * (120 + 100) mm round it, a bridge for about every 90 mm: 5.
    expect(whole).toBeCloseTo(440, 3)
    expect(left).toBeCloseTo(440 - 5 * 0.8, 3)
    expect(readDxf(held).lines.filter(({ layer }) => layer === 'outline')).toHaveLength(5)
    expect(total(readDxf(held).lines, 'inner-cut')).toBeCloseTo(total(readDxf(sheet).lines, 'inner-cut'), 6)
    // No bridge at a corner: each of the four lies within a run.
    const corners = readDxf(held)
      .lines.filter(({ layer }) => layer === 'outline')
      .flatMap(({ points }) => points.slice(1, -1))
    expect(corners).toHaveLength(4)
  })

  test('a perforated fold is cut for its share of the way and ends uncut', () => {
    const [scored] = sheetsToCut(design, usual({ stock: A4, perforate: { cut: 3, gap: 1.5 } }))
    if (!sheet || !scored) throw new Error('one sheet')
    const whole = readDxf(sheet).lines.filter(({ layer }) => layer === 'valley')
    const parts = readDxf(scored).lines.filter(({ layer }) => layer === 'valley')
    const wanted = whole.reduce((sum, one) => {
      const long = lengthOf(one)
      // So many cuts of 3 mm as go into it with a gap of 1.5 before each and one behind, all stretched alike.
      const count = Math.max(1, Math.round((long - 1.5) / 4.5))
      return sum + (long * 3 * count) / (3 * count + 1.5 * (count + 1))
    }, 0)
    expect(parts.length).toBeGreaterThan(whole.length)
    expect(total(parts, 'valley')).toBeCloseTo(wanted, 2)
    for (const { points } of whole)
      for (const end of [points[0], points.at(-1)])
        for (const part of parts)
          for (const [x, y] of part.points)
            expect(Math.hypot(x - (end?.[0] ?? 0), y - (end?.[1] ?? 0))).toBeGreaterThan(1)
  })

  test('too large for its stock is told by name and size', () => {
    expect(() => sheetsToCut(design, usual({ stock: { width: 90, height: 110, margin: 5 } }))).toThrow(
      TooLargeToCutError,
    )
    expect(() => sheetsToCut(design, usual({ stock: { width: 90, height: 110, margin: 5 } }))).toThrow(
      'The card, 120.0 by 100.0 mm flat, does not go on 90 by 110 mm with a margin of 5 mm.',
    )
    expect(() => sheetsToCut(design, usual({ copies: 2001 }))).toThrow(/At most 2000 pieces .* 2000 copies/)
  })
})

describe('what is drawn besides', () => {
  test('places for glue only when they are asked for', () => {
    const layers = (glue: boolean): string[] =>
      sheetsToCut(moth(), usual({ glue })).flatMap((sheet) => sheet.layers.map(({ layer }) => layer))
    expect(layers(false)).not.toContain('glue')
    expect(layers(true)).toContain('glue')
  })

  // By hand: a cover goes behind its card, and what lies flat on a face is glued by its own back.
  test('places for glue on the face that lies up apart from those on the other one', () => {
    const of = (design: Design, wanted: 'glue' | 'glue-behind'): readonly string[] =>
      sheetsToCut(design, usual({ glue: true, stock: { ...A4, width: 420, height: 594 } })).flatMap((sheet) =>
        sheet.layers.flatMap(({ layer, runs }) => (layer === wanted ? runs.map((run) => run.of) : [])),
      )
    expect(new Set(of(dummy('heron'), 'glue'))).toEqual(new Set(['cover']))
    expect(new Set(of(dummy('heron'), 'glue-behind'))).toEqual(new Set(['card']))
    const stars = (wanted: 'glue' | 'glue-behind') => of(moth(), wanted).filter((id) => id.startsWith('star'))
    expect([stars('glue').length, stars('glue-behind').length]).toEqual([0, 1])
    expect(of(moth(), 'glue')).toContain('moth/piece')
  })

  test('pieces of one paper lie together, of two papers never', () => {
    const sheets = sheetsToCut(dummy('garden'), usual({ stock: A4 }))
    const papers = sheets.map(({ paper }) => paper)
    expect(new Set(papers).size).toBeGreaterThan(5)
    expect(sheets.reduce((sum, { count }) => sum + count, 0)).toBe(pieces(dummy('garden')).length)
  })
})

describe('the main fold', () => {
  const line = (kind: 'mountain' | 'valley' | 'cut', ...points: readonly Flat[]) => ({
    kind,
    points,
    of: 'a',
  })
  const piece = (...lines: Piece['lines']): Piece => ({ id: 'a', outline: [], lines })

  test('is the way in which folds are longest together', () => {
    expect(mainFold(piece(line('cut', [0, 0], [90, 0])))).toBeNull()
    const folds = [
      line('mountain', [0, 0], [30, 0]),
      line('valley', [0, 5], [0, 25]),
      line('valley', [9, 25], [9, 5]),
    ]
    expect(Math.abs(Math.cos(mainFold(piece(...folds)) ?? 0))).toBeLessThan(1e-9)
    expect(mainFold(piece(...folds.slice(0, 2)))).toBe(0)
  })
})

describe('random designs', () => {
  test('every cut and fold is there once, none twice', () => {
    fc.assert(
      fc.property(gardens(5), (design) => {
        const all = pieces(design)
        let sheets: readonly CutSheet[]
        try {
          sheets = sheetsToCut(design, usual({ stock: { width: 900, height: 900, margin: 5 } }))
        } catch (error) {
          expect(error).toBeInstanceOf(TooLargeToCutError)
          return
        }
        const lines = sheets.flatMap((sheet) => readDxf(sheet).lines)
        for (const kind of ['valley', 'mountain', 'crease'] as const)
          expect(total(lines, kind)).toBeLessThanOrEqual(lengths(all, kind) + 0.01)
        expect(total(lines, 'outline', 'inner-cut')).toBeLessThanOrEqual(lengths(all, 'cut') + 0.01)
        const sides = lines
          .filter(({ layer }) => layer === 'outline' || layer === 'inner-cut')
          .flatMap(({ points, closed }) =>
            points.flatMap((a, k): string[] => {
              const b = points[k + 1] ?? (closed ? points[0] : undefined)
              if (!b || Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.01) return []
              return [
                [a, b]
                  .map((p) => p.map((n) => n.toFixed(3)).join(' '))
                  .sort()
                  .join(' – '),
              ]
            }),
          )
        expect(new Set(sides).size).toBe(sides.length)
      }),
      runs(60),
    )
  })
})
