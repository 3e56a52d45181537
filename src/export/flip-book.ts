/** A strip of pictures to print, cut and bind: leaf over leaf they move under the thumb. Lengths in mm. */
import { PDFDocument } from '@cantoo/pdf-lib'
import * as says from '../../content/words/export/flip-book.ts'
import type { PathMark, Point, Role } from '../drawing/pen/marks.ts'
import { plainText } from '../paper/index.ts'
import { pagesPdf } from '../sheet/files/pdf.ts'
import type { SheetFont, SheetMark } from '../sheet/index.ts'
import { moved, paragraph, stack } from '../sheet/marks/setting.ts'
import type { SheetPage } from '../sheet/pages/layout.ts'
import type { Paper, PaperName } from '../sheet/pages/paper-sizes.ts'
import { paperOf } from '../sheet/pages/paper-sizes.ts'

/** One leaf. Its left part is held or bound; the picture fills the rest but for a white edge. */
const LEAF = { width: 92, height: 48, bound: 22, edge: 2 } as const

/** A picture on a leaf. */
export const FLIP_PICTURE = {
  width: LEAF.width - LEAF.bound - 2 * LEAF.edge,
  height: LEAF.height - 2 * LEAF.edge,
} as const

const GRID = { columns: 2, rows: 5 } as const

export const LEAVES_A_PAGE = GRID.columns * GRID.rows

/** Three pages of A4 or Letter. */
export const LEAVES = 3 * LEAVES_A_PAGE

/** Where the words begin and the leaves, from the top. */
const TOP = { words: 9, leaves: 31 } as const

const TYPE = { size: 3.4, leading: 4.7 } as const

interface Leaf {
  readonly number: number
  readonly x: number
  readonly y: number
}

const line = (role: Role, ...runs: readonly (readonly Point[])[]): PathMark => ({
  mark: 'path',
  runs,
  closed: false,
  role,
})

/** The leaves of one page, in reading order. */
function leavesOn(paper: Paper, first: number, count: number): readonly Leaf[] {
  const left = (paper.width - GRID.columns * LEAF.width) / 2
  return Array.from({ length: count }, (_, k) => ({
    number: first + k,
    x: left + (k % GRID.columns) * LEAF.width,
    y: TOP.leaves + Math.floor(k / GRID.columns) * LEAF.height,
  }))
}

/** Neighbours share a cut: each line is drawn once, from end to end. */
function cuts(leaves: readonly Leaf[]): PathMark {
  const ends = (key: 'x' | 'y', long: number): readonly number[] => [
    ...new Set(leaves.flatMap((leaf) => [leaf[key], leaf[key] + long])),
  ]
  const [xs, ys] = [ends('x', LEAF.width), ends('y', LEAF.height)]
  /** How far the leaves that touch a line reach, the other way. */
  const reach = (key: 'x' | 'y', at: number): readonly [number, number] => {
    const [long, other, far] =
      key === 'x' ? ([LEAF.width, 'y', LEAF.height] as const) : ([LEAF.height, 'x', LEAF.width] as const)
    const there = leaves
      .filter((leaf) => leaf[key] === at || leaf[key] + long === at)
      .map((leaf) => leaf[other])
    return [Math.min(...there), Math.max(...there) + far]
  }
  return line(
    'cut',
    ...xs.map((x): readonly Point[] => reach('x', x).map((y): Point => [x, y])),
    ...ys.map((y): readonly Point[] => reach('y', y).map((x): Point => [x, y])),
  )
}

const leafMarks = ({ number, x, y }: Leaf): readonly SheetMark[] => [
  line('guide', [
    [x + LEAF.bound, y + LEAF.edge],
    [x + LEAF.bound, y + LEAF.height - LEAF.edge],
  ]),
  {
    mark: 'word',
    at: [x + LEAF.bound / 2, y + LEAF.height / 2 + 1.6],
    text: String(number),
    role: 'note',
    anchor: 'middle',
    size: 5,
    bold: true,
  },
]

/** The pages with all but the pictures, and the leaves on each. */
function pagesOf(title: string, count: number, paper: Paper) {
  const pages = Math.ceil(count / LEAVES_A_PAGE)
  return Array.from({ length: pages }, (_, k) => {
    const first = k * LEAVES_A_PAGE + 1
    const leaves = leavesOn(paper, first, Math.min(LEAVES_A_PAGE, count - first + 1))
    const left = leaves[0]?.x ?? 0
    const which = says.page(k + 1, pages, paper.label, first, first + leaves.length - 1, count)
    const words = stack(
      [
        paragraph([{ text: title, bold: true }], { size: 4.6, leading: 6 }, GRID.columns * LEAF.width),
        paragraph([{ text: k === 0 ? `${which} ${says.how}` : which }], TYPE, GRID.columns * LEAF.width),
      ],
      2,
    )
    const page: SheetPage = {
      box: [0, 0, paper.width, paper.height],
      unit: 'mm',
      paper,
      placed: [],
      painting: null,
      says: `${title}. ${which}`,
      marks: [
        ...words.marks.map((mark) => moved(mark, left, TOP.words)),
        cuts(leaves),
        ...leaves.flatMap(leafMarks),
      ],
    }
    return { page, leaves }
  })
}

const pt = (mm: number): number => (mm * 72) / 25.4

/**
 * A flip book as a PDF: pages of the paper's exact size, ten leaves on each, in the order of the pictures.
 * @param pictures each a JPEG file, of the shape of `FLIP_PICTURE`
 */
export async function flipBookPdf(
  pictures: readonly Uint8Array[],
  title: string,
  name: PaperName,
  font: SheetFont,
): Promise<Uint8Array> {
  const pages = pagesOf(plainText(title), pictures.length, paperOf(name))
  const lines = await pagesPdf(
    pages.map(({ page }) => page),
    says.fileTitle(plainText(title)),
    font,
  )
  const pdf = await PDFDocument.load(lines, { updateMetadata: false })
  for (const [k, { leaves }] of pages.entries()) {
    const page = pdf.getPage(k)
    const height = page.getHeight()
    for (const { number, x, y } of leaves) {
      const picture = await pdf.embedJpg(pictures[number - 1] as Uint8Array)
      page.drawImage(picture, {
        x: pt(x + LEAF.bound + LEAF.edge),
        y: height - pt(y + LEAF.edge + FLIP_PICTURE.height),
        width: pt(FLIP_PICTURE.width),
        height: pt(FLIP_PICTURE.height),
      })
    }
  }
  return pdf.save()
}
