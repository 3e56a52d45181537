/**
 * A sheet as DXF: text of pairs, a group code and its value. Release 12, which every reader of the format knows, with the
 * units named as millimetres. (DXF Reference, release 12: sections, tables, POLYLINE; $INSUNITS 4, from memory.)
 */
import type { CutSheet, Layer, Run } from './lines.ts'

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

const table = (name: string, entries: readonly string[]): string =>
  `${pairs([0, 'TABLE'], [2, name], [70, entries.length])}${entries.join('')}${pairs([0, 'ENDTAB'])}`

const polyline = (name: Layer, { points, closed }: Run): string =>
  pairs([0, 'POLYLINE'], [8, name], [66, 1], [10, 0], [20, 0], [30, 0], [70, closed ? 1 : 0]) +
  points.map(([x, y]) => pairs([0, 'VERTEX'], [8, name], [10, x], [20, y], [30, 0])).join('') +
  pairs([0, 'SEQEND'], [8, name])

const section = (name: string, content: string): string =>
  `${pairs([0, 'SECTION'], [2, name])}${content}${pairs([0, 'ENDSEC'])}`

/** One sheet as a DXF file; each line type is a layer, in the order in which it is cut. mm, y upwards. */
export function sheetDxf({ width, height, layers }: CutSheet): string {
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
    table(
      'LAYER',
      layers.map((one) => layer(one.layer)),
    )
  const entities = layers.flatMap((one) => one.runs.map((run) => polyline(one.layer, run))).join('')
  return `${section('HEADER', header)}${section('TABLES', tables)}${section('ENTITIES', entities)}${pairs([0, 'EOF'])}`
}
