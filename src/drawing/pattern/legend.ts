/** The key of the flat drawing: what each kind of line asks for. */
import * as says from '../../../content/words/drawing/pattern.ts'
import { squareSample } from '../pen/grid.ts'
import { strokes } from '../pen/hatch.ts'
import { textWidth } from '../pen/lettering.ts'
import type { Mark, PathMark, Point, Role } from '../pen/marks.ts'

/** What the legend says of each kind of line. */
const LEGEND: readonly (readonly [Role, string])[] = [
  ['cut', says.cut],
  ['valley', says.valley],
  ['mountain', says.mountain],
  ['glue', says.glue],
  ['behind', says.glueBehind],
  ['crease', says.pressedFlat],
]

/** Where the entries of a legend go. */
export interface LegendPlan {
  readonly items: readonly {
    readonly role: Role
    readonly words: string
    readonly x: number
    readonly row: number
  }[]
  /** Length of a sample line. */
  readonly long: number
  readonly height: number
}

/** Lengths in the legend, in ems: of a sample line, of the square, beside them, between entries. */
const SAMPLE = 1.6

const BOX = 0.93

const NEAR = 0.33

const APART = 0.87

/** The line kinds that are there and the squares, in as few rows as they need; a little closer where that saves one. */
export function legendPlan(kinds: ReadonlySet<Role>, width: number, text: number): LegendPlan {
  const entries: readonly (readonly [Role, string])[] = [
    ...LEGEND.filter(([kind]) => kinds.has(kind)),
    ['square', '10 mm'],
  ]
  const [wide, close] = [legendRows(entries, width, text, 1), legendRows(entries, width, text, 0.75)]
  return close.height < wide.height ? close : wide
}

/** Rows of samples and words, centred, wrapped where the box ends. */
function legendRows(
  entries: readonly (readonly [Role, string])[],
  width: number,
  text: number,
  closeness: number,
): LegendPlan {
  const long = SAMPLE * text * closeness
  const rows: { role: Role; words: string; wide: number }[][] = [[]]
  const apart = APART * text * closeness
  let used = 0
  for (const [role, words] of entries) {
    const wide = (role === 'square' ? BOX * text : long) + NEAR * text + textWidth(words, text)
    const row = rows.at(-1) as (typeof rows)[number]
    if (row.length > 0 && used + apart + wide > width - 12) {
      rows.push([{ role, words, wide }])
      used = wide
    } else {
      used += wide + (row.length > 0 ? apart : 0)
      row.push({ role, words, wide })
    }
  }
  const items = rows.flatMap((row, index) => {
    const total = row.reduce((sum, { wide }) => sum + wide, 0) + apart * (row.length - 1)
    let x = (width - total) / 2
    return row.map(({ role, words, wide }) => {
      const item = { role, words, x, row: index }
      x += wide + apart
      return item
    })
  })
  return { items, long, height: rows.length * text * 1.6 + 8 }
}

export function legendMarks(plan: LegendPlan, top: number, text: number): Mark[] {
  return plan.items.flatMap(({ role, words, x, row }): Mark[] => {
    const y = top + (row + 0.5) * text * 1.6
    const wide = role === 'square' ? BOX * text : plan.long
    const line: readonly Point[] = [
      [x, y],
      [x + wide, y],
    ]
    const sample: PathMark =
      role === 'square' ? squareSample(x, y, wide) : { mark: 'path', runs: [line], closed: false, role }
    const across: Mark[] = role === 'glue' ? [{ ...sample, runs: strokes(line, 7, 6) }] : []
    const at: Point = [x + wide + NEAR * text, y + text * 0.33]
    return [sample, ...across, { mark: 'word', at, text: words, role: 'note', anchor: 'start', size: text }]
  })
}
