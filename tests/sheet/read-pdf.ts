// Reads a PDF with Mozilla's PDF.js, which shares no code with the library that writes ours.
import type { PDFPageProxy } from 'pdfjs-dist'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface ReadLine {
  /** One run of points for each move, in PDF units from the page's lower left corner. */
  readonly runs: readonly (readonly (readonly [number, number])[])[]
  readonly closed: boolean
  readonly dash: readonly number[]
  /** How far into its dashes it begins. */
  readonly phase: number
  readonly width: number
}

export interface ReadWords {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size: number
  readonly width: number
}

/** A part of a page's structure: its kind, what is said in place of it, and the words in it. */
export interface ReadPart {
  readonly as: string
  readonly alt?: string
  readonly text: string
}

export interface ReadPage {
  readonly box: readonly number[]
  readonly lines: readonly ReadLine[]
  readonly words: readonly ReadWords[]
  readonly fonts: readonly string[]
  /** In reading order; all else on the page is an artifact. */
  readonly parts: readonly ReadPart[]
  /** Words that no part holds. */
  readonly apart: readonly string[]
}

export interface ReadPdf {
  readonly title: string
  readonly printScaling: string | undefined
  /** Whether a reader shows the title rather than the file's name. */
  readonly showsTitle: boolean | undefined
  readonly isMarked: boolean | undefined
  readonly language: string | undefined
  readonly pages: readonly ReadPage[]
}

/** Codes of PDF.js inside one path: move, line, close. */
const [MOVE, LINE, CLOSE] = [0, 1, 4]

function outline(codes: readonly number[]): Pick<ReadLine, 'runs' | 'closed'> {
  const runs: [number, number][][] = []
  let closed = false
  for (let k = 0; k < codes.length; ) {
    const code = codes[k]
    if (code === CLOSE) {
      closed = true
      k += 1
      continue
    }
    if (code !== MOVE && code !== LINE) throw new Error(`a sheet has straight lines only, not code ${code}`)
    if (code === MOVE) runs.push([])
    runs.at(-1)?.push([codes[k + 1] ?? Number.NaN, codes[k + 2] ?? Number.NaN])
    k += 3
  }
  return { runs, closed }
}

interface TreeNode {
  readonly role?: string
  readonly alt?: string
  readonly children?: readonly TreeNode[]
  readonly type?: string
  readonly id?: string
}

/** The structure of a page, with the words of its marked contents. */
async function structure(page: PDFPageProxy): Promise<Pick<ReadPage, 'parts' | 'apart'>> {
  const { items } = await page.getTextContent({ includeMarkedContent: true })
  const said = new Map<string, string>()
  const apart: string[] = []
  const open: (string | undefined)[] = []
  for (const item of items) {
    if ('type' in item) {
      if (item.type === 'endMarkedContent') open.pop()
      else open.push(item.id)
      continue
    }
    if (item.str.trim() === '') continue
    const id = open.findLast((one) => one !== undefined)
    if (id === undefined) apart.push(item.str)
    else said.set(id, [said.get(id), item.str].filter(Boolean).join(' '))
  }
  const textOf = ({ children = [], id }: TreeNode): string =>
    [id === undefined ? '' : (said.get(id) ?? ''), ...children.map(textOf)].filter(Boolean).join(' ')
  const parts: ReadPart[] = []
  const visit = (node: TreeNode): void => {
    const { role = '', alt, children = [] } = node
    const holds = children.some(({ type }) => type === 'content')
    if (holds) parts.push({ as: role, ...(alt === undefined ? {} : { alt }), text: textOf(node) })
    else children.forEach(visit)
  }
  const tree = (await page.getStructTree()) as TreeNode | null
  if (tree) visit(tree)
  return { parts, apart }
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  // PDF.js takes the bytes away from their owner.
  const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
  const preferences = (await pdf.getViewerPreferences()) as {
    PrintScaling?: string
    DisplayDocTitle?: boolean
  } | null
  const marks = (await pdf.getMarkInfo()) as { Marked?: boolean } | null
  const { info } = await pdf.getMetadata()
  const pages: ReadPage[] = []
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number)
    const { fnArray, argsArray } = await page.getOperatorList()
    const lines: ReadLine[] = []
    const fonts = new Set<string>()
    let dash: readonly number[] = []
    let phase = 0
    let width = 1
    // What a picture is made of is no line of the page.
    let within = 0
    fnArray.forEach((operator, k) => {
      const given = argsArray[k] as unknown[]
      if (operator === OPS.paintFormXObjectBegin) within++
      if (operator === OPS.paintFormXObjectEnd) within--
      if (within > 0) return
      if (operator === OPS.setDash) [dash, phase] = given as [number[], number]
      if (operator === OPS.setLineWidth) width = given[0] as number
      if (operator === OPS.setFont) fonts.add(page.commonObjs.get(given[0] as string).name as string)
      if (operator === OPS.constructPath) {
        const [codes] = given[1] as [Record<string, number>]
        lines.push({ ...outline(Object.values(codes)), dash, phase, width })
      }
    })
    const { items } = await page.getTextContent()
    const words = items.flatMap((item): ReadWords[] => {
      if (!('str' in item) || item.str.trim() === '') return []
      // Words that run up the page have their size in the third number, others in the fourth.
      const [, , c, d, x, y] = item.transform as [number, number, number, number, number, number]
      return [{ text: item.str, x, y, size: Math.hypot(c, d), width: item.width }]
    })
    pages.push({ box: page.view, lines, words, fonts: [...fonts], ...(await structure(page)) })
  }
  await pdf.destroy()
  return {
    title: String((info as { Title?: unknown }).Title),
    printScaling: preferences?.PrintScaling,
    showsTitle: preferences?.DisplayDocTitle,
    isMarked: marks?.Marked,
    language: (info as { Language?: string }).Language,
    pages,
  }
}
