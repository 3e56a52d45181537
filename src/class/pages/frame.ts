/** A page of words for a class: a margin with its labels, a red line, and the text beside it. Lengths in mm. */
import * as says from '../../../content/words/class/pages.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { Painting } from '../../sheet/marks/painting.ts'
import type { Block, Run, SheetMark, Type } from '../../sheet/marks/setting.ts'
import { moved, paragraph, toldAs } from '../../sheet/marks/setting.ts'
import { SAFE } from '../../sheet/pages/fit.ts'
import type { Paper } from '../../sheet/pages/paper-sizes.ts'

/** Shapes that are painted under a block's marks, as a picture is. */
export interface Pictured extends Block {
  readonly panels?: Painting['panels']
}

/** How large all is, and how far apart. */
export interface Look {
  readonly title: Type
  readonly body: Type
  readonly small: Type
  readonly label: Type
  /** Between rows, and between cells. */
  readonly row: number
  readonly cell: number
  /** Of the margin's labels; 0: they stand over their text. */
  readonly margin: number
}

/** Ordinary print; and large, at 16 points and half as much again from line to line. Common practice, no source. */
export const LOOKS: Readonly<Record<'usual' | 'large', Look>> = {
  usual: {
    title: { size: 7, leading: 8.4 },
    body: { size: 3.7, leading: 5.2 },
    small: { size: 3.1, leading: 4.3 },
    label: { size: 3.9, leading: 5 },
    row: 1.9,
    cell: 6,
    margin: 33,
  },
  large: {
    title: { size: 9, leading: 11 },
    body: { size: 5.7, leading: 8.6 },
    small: { size: 5.2, leading: 7.8 },
    label: { size: 6, leading: 8 },
    row: 4.2,
    cell: 9,
    margin: 0,
  },
}

const EDGE = 13

const FOOT = 9

const GAP = 5

/** Something with a label in the margin: rows, none of which is parted between pages. */
export interface Cell {
  readonly label: string
  rows(width: number): readonly Pictured[]
  /** All of it stays on one page. */
  readonly whole?: boolean
}

/** What stands at the top of the first page of a run, and at the foot of each. */
export interface Headed {
  readonly paper: Paper
  readonly look: Look
  readonly head: (width: number) => Pictured
  /** The same on the pages after the first; nothing if left out. */
  readonly again?: (width: number) => Pictured
  readonly foot: string
  readonly says: string
}

/** How wide the text of a page is. */
export const textWidth = ({ width }: Paper, { margin }: Look): number =>
  width - 2 * EDGE - (margin > 0 ? margin + GAP : 0)

export const bold = (text: string): Run => ({ text, bold: true })

export const said = (text: string, type: Type, width: number): Block => paragraph([{ text }], type, width)

/** A page of words and pictures: no pieces lie on it. */
export const pageOf = (
  paper: Paper,
  marks: readonly SheetMark[],
  panels: Painting['panels'],
  says: string,
): SheetPage => ({
  box: [0, 0, paper.width, paper.height],
  unit: 'mm',
  paper,
  placed: [],
  painting: panels.length > 0 ? { panels, seams: [], areas: [], bands: [] } : null,
  marks,
  says,
})

/** Panels moved along with what they lie under. */
export const shifted = (panels: Painting['panels'], dx: number, dy: number): Painting['panels'] =>
  panels.map((panel) => ({
    ...panel,
    outline: panel.outline.map(([x, y]) => [x + dx, y + dy] as const),
    shapes: panel.shapes.map((shape) => ({
      ...shape,
      runs: shape.runs.map((run) => run.map(([x, y]) => [x + dx, y + dy] as const)),
    })),
  }))

/** Blocks one below another, pictures among them. */
export function piled(blocks: readonly Pictured[], gap: number): Pictured {
  const marks: SheetMark[] = []
  const panels: Painting['panels'][number][] = []
  let y = 0
  for (const block of blocks) {
    marks.push(...block.marks.map((mark) => moved(mark, 0, y)))
    panels.push(...shifted(block.panels ?? [], 0, y))
    y += block.height + gap
  }
  return {
    width: Math.max(0, ...blocks.map((block) => block.width)),
    height: Math.max(0, y - gap),
    ...{ marks, panels },
  }
}

/** Two blocks side by side, the second `at` to the right. */
export const sideBySide = (left: Pictured, right: Pictured, at: number): Pictured => ({
  width: at + right.width,
  height: Math.max(left.height, right.height),
  marks: [...left.marks, ...right.marks.map((mark) => moved(mark, at, 0))],
  panels: [...(left.panels ?? []), ...shifted(right.panels ?? [], at, 0)],
})

/** How near cells and rows come to one another where that spares a page, as shares of their usual distance. */
const CLOSER = [1, 0.85, 0.7] as const

interface Draft {
  readonly marks: SheetMark[]
  readonly panels: Painting['panels'][number][]
  y: number
}

/** Cells one after another, on as many pages as they take. */
function drafted(
  cells: readonly Cell[],
  { paper, look, head, again }: Headed,
  share: number,
): readonly Draft[] {
  const [between, apart] = [share * look.row, share * look.cell]
  const left = look.margin > 0 ? EDGE + look.margin + GAP : EDGE
  const width = textWidth(paper, look)
  const bottom = paper.height - EDGE - FOOT
  const drafts: Draft[] = []
  const put = (block: Pictured, x: number): void => {
    const page = drafts.at(-1) as Draft
    page.marks.push(...block.marks.map((mark) => moved(mark, x, page.y)))
    page.panels.push(...shifted(block.panels ?? [], x, page.y))
  }
  const next = (): void => {
    const first = drafts.length === 0
    drafts.push({ marks: [], panels: [], y: EDGE })
    const top = (first ? head : again)?.(width)
    if (!top) return
    put(top, left)
    ;(drafts.at(-1) as Draft).y += top.height + apart
  }
  next()
  for (const cell of cells) {
    const rows = cell.rows(width)
    if (rows.length === 0) continue
    const label = paragraph(
      [{ text: cell.label, bold: true, role: 'dimension' }],
      look.label,
      look.margin > 0 ? look.margin : width,
    )
    const above = look.margin > 0 || cell.label === '' ? 0 : label.height + between
    const needed = cell.whole
      ? rows.reduce((sum, row) => sum + row.height + between, above)
      : above + (rows[0]?.height ?? 0)
    let page = drafts.at(-1) as Draft
    const begin = (): void => {
      page = drafts.at(-1) as Draft
      if (cell.label === '') return
      put(label, EDGE)
      page.y += above
    }
    const isTop = page.marks.length === 0
    if (!isTop && page.y + needed > bottom) next()
    begin()
    for (const [k, row] of rows.entries()) {
      if (k > 0 && page.y + row.height > bottom) {
        next()
        begin()
      }
      put(row, left)
      page.y += row.height + between
    }
    page.y += apart - between
  }
  return drafts
}

/** Cells one after another, on as few pages as they take: closer where a last page would hold little. */
export function pagesOf(cells: readonly Cell[], headed: Headed): SheetPage[] {
  const { paper, look, foot, says: shows } = headed
  const left = look.margin > 0 ? EDGE + look.margin + GAP : EDGE
  const width = textWidth(paper, look)
  const drafts = CLOSER.reduce<readonly Draft[]>((best, share) => {
    if (best.length === 1) return best
    const made = drafted(cells, headed, share)
    return best.length === 0 || made.length < best.length ? made : best
  }, [])
  return drafts.map(({ marks, panels }, k) => {
    const numbered = (what: string): string =>
      drafts.length > 1 ? says.which(what, k + 1, drafts.length) : what
    const line = toldAs(
      paragraph(
        [{ text: numbered(foot), role: 'guide' }],
        { size: look.small.size * 0.9, leading: look.small.leading },
        width,
      ),
      'Artifact',
    )
    const at = paper.height - EDGE - line.height
    const all = [
      ...marks,
      ...(look.margin > 0 ? [marginLine(paper)] : []),
      ...line.marks.map((mark) => moved(mark, left, at)),
    ]
    return pageOf(paper, all, panels, `${numbered(shows)}.`)
  })
}

const marginLine = (paper: Paper): SheetMark => ({
  mark: 'path',
  runs: [
    [
      [EDGE + LOOKS.usual.margin + GAP / 2, SAFE],
      [EDGE + LOOKS.usual.margin + GAP / 2, paper.height - SAFE],
    ],
  ],
  closed: false,
  role: 'dimension',
  of: 'margin-line',
})

/** Words with a dotted line behind them to write on, and what stands at its end. */
export function toFill(
  words: string,
  type: Type,
  width: number,
  long: number,
  after = '',
  of = 'fill',
): Block {
  const text = paragraph([{ text: words }], type, width - 20)
  const lines = Math.max(1, Math.round((text.height - 0.888 * type.size) / type.leading) + 1)
  const y = 0.668 * type.size + (lines - 1) * type.leading
  const last = text.marks.at(-1)
  const from =
    words === '' ? 0 : lines === 1 ? text.width + 2 : Math.min(width - long, lastWidth(last, type) + 2)
  const to = Math.min(width - (after === '' ? 0 : 3 * type.size), from + long)
  const end = paragraph([{ text: after }], type, 30)
  return {
    width: to + end.width,
    height: Math.max(text.height, 0.888 * type.size) + 1.2,
    marks: [
      ...text.marks,
      {
        mark: 'path',
        runs: [
          [
            [from, y + 0.9],
            [to, y + 0.9],
          ],
        ],
        closed: false,
        role: 'guide',
        of,
      },
      ...(after === '' ? [] : end.marks.map((mark) => moved(mark, to + 1.5, y - 0.668 * type.size))),
    ],
  }
}

function lastWidth(mark: SheetMark | undefined, { size }: Type): number {
  return mark?.mark === 'word'
    ? mark.at[0] + paragraph([{ text: mark.text }], { size, leading: size }, 1e4).width
    : 0
}

/** Empty lines to write on. */
export const emptyLines = (count: number, { leading }: Type, width: number): readonly Block[] =>
  Array.from({ length: count }, () => ({
    width,
    height: leading * 1.45,
    marks: [
      {
        mark: 'path',
        runs: [
          [
            [0, leading * 1.4],
            [width, leading * 1.4],
          ],
        ],
        closed: false,
        role: 'guide',
        of: 'line',
      },
    ],
  }))
