/**
 * A sheet as DXF: text of pairs, a group code and its value. Release 12, which every reader of the format knows, with the
 * units named as millimetres. (DXF Reference, release 12: sections, tables, POLYLINE, TEXT; $INSUNITS 4, from memory.)
 */
import type { CutSheet, Layer, Run } from './lines.ts'
import { roomiest, titleOf } from './names.ts'

/** A tenth of a micrometre. */
const number = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0)

const pairs = (...of: readonly (readonly [code: number, value: string | number])[]): string =>
  of.map(([code, value]) => `${code}\n${typeof value === 'number' ? number(value) : value}\n`).join('')

/** Dashes and gaps in turn, gaps negative; none: an unbroken line. */
const LINE_TYPES = {
  CONTINUOUS: [],
  VALLEY: [3, -1.5],
  MOUNTAIN: [4, -1.5, 0.75, -1.5],
  DOTTED: [0.5, -1.5],
} as const satisfies Readonly<Record<string, readonly number[]>>

const lineTypeOf: Readonly<Record<Layer, keyof typeof LINE_TYPES>> = {
  glue: 'DOTTED',
  'glue-behind': 'DOTTED',
  valley: 'VALLEY',
  mountain: 'MOUNTAIN',
  crease: 'DOTTED',
  'inner-cut': 'CONTINUOUS',
  outline: 'CONTINUOUS',
}

const lineType = ([name, dashes]: readonly [string, readonly number[]]): string =>
  pairs(
    [0, 'LTYPE'],
    [2, name],
    [70, 64],
    [3, name.toLowerCase()],
    [72, 65],
    [73, dashes.length],
    [40, dashes.reduce((sum, dash) => sum + Math.abs(dash), 0)],
    ...dashes.map((dash) => [49, dash] as const),
  )

/** Colour 7 is that of the ink on the ground, black or white: lines differ by their dashes. */
const INK = 7

const layer = (name: Layer): string =>
  pairs([0, 'LAYER'], [2, name], [70, 64], [62, INK], [6, lineTypeOf[name]])

/** Names of pieces are for the eye. Their layer is off, by a colour below 0: no machine cuts or draws them unasked. */
const NAMES = 'names'

const namesLayer = pairs([0, 'LAYER'], [2, NAMES], [70, 64], [62, -INK], [6, 'CONTINUOUS'])

/** How high a name is where there is room, and where there is hardly any, mm; and how wide a letter is to its height. */
const HIGH = { usual: 3, least: 1 } as const

const WIDE = 0.9

/** What is no ASCII by its number: the format's own way, which readers of every age show. */
const plain = (text: string): string =>
  text.replace(
    /[^\x20-\x7e]/g,
    (one) => `\\U+${one.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
  )

/** Its middle (72 and 73) on the roomiest place of its piece. */
function nameText({ of, outline }: CutSheet['lying'][number]): string {
  const text = plain(titleOf(of))
  const { at, room } = roomiest(outline)
  const high = Math.max(HIGH.least, Math.min(HIGH.usual, (2 * room) / (WIDE * text.length)))
  const [x, y] = at
  const start = x - (WIDE * high * text.length) / 2
  return pairs(
    [0, 'TEXT'],
    [8, NAMES],
    ...([
      [10, start],
      [20, y - high / 2],
      [30, 0],
    ] as const),
    ...([
      [40, high],
      [1, text],
      [72, 1],
    ] as const),
    ...([
      [11, x],
      [21, y],
      [31, 0],
      [73, 2],
    ] as const),
  )
}

const table = (name: string, entries: readonly string[]): string =>
  `${pairs([0, 'TABLE'], [2, name], [70, entries.length])}${entries.join('')}${pairs([0, 'ENDTAB'])}`

const polyline = (name: Layer, { points, closed }: Run): string =>
  pairs([0, 'POLYLINE'], [8, name], [66, 1], [10, 0], [20, 0], [30, 0], [70, closed ? 1 : 0]) +
  points.map(([x, y]) => pairs([0, 'VERTEX'], [8, name], [10, x], [20, y], [30, 0])).join('') +
  pairs([0, 'SEQEND'], [8, name])

const section = (name: string, content: string): string =>
  `${pairs([0, 'SECTION'], [2, name])}${content}${pairs([0, 'ENDSEC'])}`

/** One sheet as a DXF file; each line type is a layer, in the order in which it is cut; before them the names of pieces. mm, y upwards. */
export function sheetDxf({ width, height, layers, lying }: CutSheet): string {
  const header = pairs(
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, 4],
    [9, '$EXTMIN'],
    [10, 0],
    [20, 0],
    [30, 0],
    [9, '$EXTMAX'],
    [10, width],
    [20, height],
    [30, 0],
  )
  const tables =
    table('LTYPE', Object.entries(LINE_TYPES).map(lineType)) +
    table('LAYER', [namesLayer, ...layers.map((one) => layer(one.layer))])
  const lines = layers.flatMap((one) => one.runs.map((run) => polyline(one.layer, run)))
  const entities = [...lying.map(nameText), ...lines].join('')
  return `${section('HEADER', header)}${section('TABLES', tables)}${section('ENTITIES', entities)}${pairs([0, 'EOF'])}`
}
