/** The steps on paper: two, four or six to a page, figures and words in cells. Lengths in mm. */
import * as says from '../../content/words/booklet/pages.ts'
import type { Drawing, Mark, Point } from '../drawing/pen/marks.ts'
import type { Design } from '../paper/index.ts'
import { plainText } from '../paper/index.ts'
import { faultBlocks } from '../sheet/marks/fault-blocks.ts'
import { CAPITAL, TAIL } from '../sheet/marks/letters.ts'
import type { Block, Run, SheetMark, Type } from '../sheet/marks/setting.ts'
import { moved, paragraph, pictureBlock, stack, toldAs } from '../sheet/marks/setting.ts'
import type { SheetPage } from '../sheet/pages/layout.ts'
import type { PaperName } from '../sheet/pages/paper-sizes.ts'
import { paperOf } from '../sheet/pages/paper-sizes.ts'
import { figureOf } from './figure.ts'
import { orderOf } from './order.ts'
import type { Words } from './words.ts'
import { wordsOf } from './words.ts'

/** So many steps to a page. */
export const PER_PAGE = [2, 4, 6] as const

export type PerPage = (typeof PER_PAGE)[number]

export interface BookOptions {
  readonly paper: PaperName
  /** As many as this go on a page; fewer where their words are long. */
  readonly perPage: PerPage
  /** What does not work yet, in a sentence (`faultSays`); it stands under the title. */
  readonly fault?: string
}

interface Look {
  readonly columns: number
  readonly body: Type
  readonly title: Type
  readonly foot: Type
  /** Type in figures as they are drawn, mm: with shadows beside them they are printed a little smaller. */
  readonly lettering: number
  /** Of a figure: as high as it should be, and as it may be where words need the room; times its width. */
  readonly high: number
  readonly least: number
  /** The figure's share of a cell that has its words beside it; 1: they stand below. */
  readonly share: number
  /** What may lie between rows beside the usual gap, so that a full page is filled. */
  readonly apart: number
}

const SMALL: Type = { size: 2.8, leading: 3.6 }

const LOOKS: Readonly<Record<PerPage, Look>> = {
  2: {
    ...{ columns: 1, high: 0.95, least: 0.6, share: 0.62, apart: 40 },
    ...{ body: { size: 4.9, leading: 6.8 }, title: { size: 6.2, leading: 7.6 } },
    ...{ foot: { size: 3.8, leading: 4.8 }, lettering: 5 },
  },
  4: {
    ...{ columns: 2, high: 0.74, least: 0.5, share: 1, apart: 16 },
    ...{ body: { size: 3.5, leading: 4.7 }, title: { size: 4.3, leading: 5.4 } },
    ...{ foot: SMALL, lettering: 3.4 },
  },
  6: {
    ...{ columns: 2, high: 0.52, least: 0.4, share: 1, apart: 10 },
    ...{ body: { size: 2.95, leading: 3.8 }, title: { size: 3.7, leading: 4.5 } },
    ...{ foot: SMALL, lettering: 3.1 },
  },
}

/** Between the paper's edge and what is printed: any printer reaches that far. */
const EDGE = 12

const HEAD: Type = { size: 7, leading: 8.4 }

/** Between cells, across and down, and between the paragraphs of one. */
const GAP = { across: 8, down: 7, within: 1.9 } as const

/** Figures are drawn so many pixels wide: what lines weigh is told in pixels. */
const PIXELS = 340

const lead = (text: string): Run => ({ text, bold: true })

/** What is said of a step, paragraph by paragraph. */
function paragraphs({ text, letters, check, tools, caution }: Words, body: Type, width: number): Block[] {
  const said = (runs: readonly Run[]): Block => paragraph(runs, body, width)
  return [
    ...text.map((one) => said([{ text: one }])),
    ...(letters === undefined ? [] : [said([lead(says.letters), { text: ` ${letters}` }])]),
    ...(check === undefined ? [] : [said([lead(says.check), { text: ` ${check}` }])]),
    said([lead(says.youNeed), { text: ` ${tools}.` }]),
    ...(caution === undefined
      ? []
      : [said([{ text: says.takeCare, bold: true, role: 'dimension' }, { text: ` ${caution}` }])]),
  ]
}

interface Step {
  readonly title: Block
  readonly figure: Drawing
  readonly said: readonly Block[]
}

/** One step in a cell, its figure so many times as high as wide. */
interface Cell {
  readonly step: Step
  height(share: number): number
  marks(share: number): readonly SheetMark[]
}

const stacked = (blocks: readonly Block[]): Block => stack(blocks, GAP.within)

/** Round all that the figures show, px. */
const ROOM = 6

/** What a mark takes up, as far as its box goes: of a word its height. */
const spotsOf = (mark: Mark): readonly Point[] =>
  mark.mark === 'path'
    ? mark.runs.flat()
    : [[mark.at[0], mark.at[1] - (mark.mark === 'word' ? mark.size : mark.radius)], mark.at]

/**
 * The figures without the empty table above and below, and with the shadows that fall on it at their sides: all cut
 * alike, so that they lie side by side.
 */
function cropped(figures: readonly Drawing[]): readonly Drawing[] {
  const spots = figures.flatMap(({ marks }) => marks.flatMap(spotsOf))
  const across = spots.map(([x]) => x)
  const down = spots.map(([, y]) => y)
  const [first, last] = [Math.min(...across) - ROOM, Math.max(...across) + ROOM]
  const [upper, lower] = [Math.min(...down) - ROOM, Math.max(...down) + ROOM]
  return figures.map((figure) => {
    const [x, y, width, height] = figure.box
    const [left, right] = [Math.min(x, first), Math.max(x + width, last)]
    const [top, bottom] = [Math.max(y, upper), Math.min(y + height, lower)]
    return { ...figure, box: [left, top, right - left, bottom - top] }
  })
}

/** A figure is made smaller where there is less room. */
function figureIn(figure: Drawing, width: number, share: number): Block {
  const [, , wide, high] = figure.box
  const fits = (share * wide) / high
  const block = pictureBlock(figure, width * Math.min(1, fits))
  return { ...block, marks: block.marks.map((mark) => moved(mark, (width - block.width) / 2, 0)), width }
}

function cellOf(step: Step, { share: beside }: Look, width: number): Cell {
  const words = stacked(step.said)
  const around = (share: number): { height: number; marks: readonly SheetMark[] } => {
    const top = step.title.height + 2
    const figure = figureIn(step.figure, beside < 1 ? width * beside : width, share)
    const [x, y] = beside < 1 ? [figure.width + GAP.across, top] : [0, top + figure.height + 2.2]
    return {
      height: Math.max(top + figure.height, y + words.height),
      marks: [
        ...step.title.marks,
        ...figure.marks.map((mark) => moved(mark, 0, top)),
        ...words.marks.map((mark) => moved(mark, x, y)),
      ],
    }
  }
  return { step, height: (share) => around(share).height, marks: (share) => around(share).marks }
}

const inRows = (cells: readonly Cell[], columns: number): Cell[][] =>
  Array.from({ length: Math.ceil(cells.length / columns) }, (_, k) =>
    cells.slice(k * columns, (k + 1) * columns),
  )

const heightOf = (rows: readonly (readonly Cell[])[], share: number): number =>
  rows.reduce(
    (sum, row) => sum + Math.max(...row.map((cell) => cell.height(share))),
    GAP.down * (rows.length - 1),
  )

/** So many lines of a long paragraph stay together. */
const TOGETHER = 10

/** A long paragraph in parts, one under another. */
function inParts(block: Block, { leading, size }: Type): readonly Block[] {
  const lines = Math.round((block.height - size) / leading) + 1
  if (lines <= TOGETHER) return [block]
  const partOf = (y: number): number => Math.floor(Math.round((y - CAPITAL * size) / leading) / TOGETHER)
  return Array.from({ length: Math.ceil(lines / TOGETHER) }, (_, part): Block => {
    const own = block.marks.filter((mark) => mark.mark === 'word' && partOf(mark.at[1]) === part)
    const count = Math.min(TOGETHER, lines - part * TOGETHER)
    return {
      width: block.width,
      height: (CAPITAL + TAIL) * size + (count - 1) * leading,
      marks: own.map((mark) => moved(mark, 0, -part * TOGETHER * leading)),
    }
  })
}

/** Words that no page holds together, parted between paragraphs and within long ones. */
function parted(step: Step, room: number, look: Look, least: number, width: number): Cell[] {
  const cells: Cell[] = []
  let rest = step.said.flatMap((block) => inParts(block, look.body))
  while (rest.length > 0) {
    let count = rest.length
    const upTo = (n: number): Cell => cellOf({ ...step, said: rest.slice(0, n) }, look, width)
    while (count > 1 && upTo(count).height(least) > room) count--
    cells.push(upTo(count))
    rest = rest.slice(count)
  }
  return cells
}

/** The pages of a booklet. `draw` makes the figures. */
export function bookPages(
  design: Design,
  { paper: asked, perPage, fault }: BookOptions,
  draw: typeof figureOf = figureOf,
): readonly SheetPage[] {
  const paper = paperOf(asked)
  const look = LOOKS[perPage]
  const { columns, body, title, foot: footing, lettering, share: beside } = look
  const within = paper.width - 2 * EDGE
  const width = (within - GAP.across * (columns - 1)) / columns
  const wide = beside < 1 ? width * beside : width
  const name = paragraph([{ text: says.title(plainText(design.title)), bold: true }], HEAD, within)
  const head = stack([name, ...faultBlocks(fault, body, within)], 4)
  const bottom = paper.height - EDGE - footing.leading - 3
  const top = (page: number): number => EDGE + (page === 0 ? head.height + 6 : 0)
  const room = (page: number): number => bottom - top(page)
  const size = { width: PIXELS, height: Math.round(PIXELS * look.high) }
  const text = (lettering * PIXELS) / wide
  const works = orderOf(design)
  const figures = cropped(works.map((work) => draw(design, work, size, text)))
  const tall = Math.min(...figures.map(({ box }) => box[3] / box[2]))
  const least = Math.min(look.least, tall)
  const cells = works.flatMap((work, k): Cell[] => {
    const words = wordsOf(design, work)
    const step: Step = {
      title: toldAs(paragraph([{ text: says.step(k + 1, words.title), bold: true }], title, width), 'H2'),
      figure: figures[k] as Drawing,
      said: paragraphs(words, body, beside < 1 ? width - wide - GAP.across : width),
    }
    const whole = cellOf(step, look, width)
    return whole.height(least) <= room(0) ? [whole] : parted(step, room(0), look, least, width)
  })
  const pages: (readonly Cell[][])[] = []
  for (let from = 0; from < cells.length; ) {
    let count = Math.min(perPage, cells.length - from)
    const rows = (): Cell[][] => inRows(cells.slice(from, from + count), columns)
    while (count > 1 && heightOf(rows(), least) > room(pages.length)) count--
    pages.push(rows())
    from += count
  }
  return pages.map((rows, k): SheetPage => {
    let high = tall
    while (high > least && heightOf(rows, high) > room(k)) high = Math.max(least, high - 0.01)
    const which = says.page(plainText(design.title), k + 1, pages.length)
    const foot = toldAs(paragraph([{ text: which, role: 'guide' }], footing, within), 'Artifact')
    const full = perPage / columns
    // A page that is full is filled; on others cells lie as close as on those.
    const free = rows.length === full ? room(k) - heightOf(rows, high) : 0
    const apart = GAP.down + Math.min(look.apart, free / Math.max(1, rows.length - 1))
    let y = top(k)
    const marks: SheetMark[] = k === 0 ? head.marks.map((mark) => moved(mark, EDGE, EDGE)) : []
    for (const row of rows) {
      row.forEach((cell, n) => {
        const x = EDGE + n * (width + GAP.across)
        const at = y
        marks.push(...cell.marks(high).map((mark) => moved(mark, x, at)))
      })
      y += Math.max(...row.map((cell) => cell.height(high))) + apart
    }
    marks.push(...foot.marks.map((mark) => moved(mark, EDGE, paper.height - EDGE - foot.height)))
    return {
      box: [0, 0, paper.width, paper.height],
      unit: 'mm',
      ...{ paper, marks, placed: [], painting: null },
      says: `${which}.`,
    }
  })
}
