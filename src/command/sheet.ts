import { extname } from 'node:path'
import { notFile, notNumber, notOneOf } from '../../content/words/command/options.ts'
import * as says from '../../content/words/command/sheet.ts'
import type { Design } from '../paper/index.ts'
import { visibleText } from '../paper/index.ts'
import { fontOnDisk } from '../sheet/files/font-on-disk.ts'
import type { Paper, SheetArt, SheetLines, SheetPage } from '../sheet/index.ts'
import {
  faultSays,
  fitOn,
  layOut,
  ownPaper,
  paperNamed,
  papers,
  paperUse,
  pdfOf,
  printedOn,
  svgsOf,
  TooLargeError,
  UnprintableError,
  useSays,
  usualArt,
} from '../sheet/index.ts'
import type { Command } from './command.ts'
import { Refusal } from './refusal.ts'
import { sizeIn } from './size-in.ts'
import { withAskedTabs } from './tabs.ts'
import { writeOut } from './write-out.ts'

/** The template at true size, to print and cut. */
export const sheet: Command = {
  name: 'sheet',
  usage: says.usage,
  help: says.help(papers.map((one) => one.name)),
  options: {
    paper: { type: 'string' },
    out: { type: 'string' },
    lines: { type: 'string' },
    art: { type: 'string' },
    measured: { type: 'string' },
    tiled: { type: 'boolean' },
    copies: { type: 'string' },
    tabs: { type: 'string' },
  },
  async run(read, options, place) {
    const design = withAskedTabs(read, options)
    const out = outOf(options.out)
    const lines = oneOf(options.lines, LINES, 'front', 'lines')
    const art = oneOf(options.art, ARTS, usualArt(design), 'art')
    const measured = numberOf(options.measured, 'measured', 100)
    const copies = numberOf(options.copies, 'copies', 1)
    const tiled = options.tiled === true
    try {
      const paper = paperOf(options.paper)
      const fault = faultSays(design)
      const asked = { paper, lines, art, measured, tiled, copies, fault }
      const pages = layOut(design, asked)
      for (const { file, content } of await filesOf(design, pages, out)) {
        writeOut(file, place(file), content)
        console.log(says.printIt(visibleText(file), paper.label))
      }
      console.log(`${useSays(paperUse(design, pages, asked))}.`)
      const { sentence } = fitOn(design, printedOn(asked))
      if (sentence !== '' && !tiled) console.log(sentence)
      if (fault !== '') console.log(says.doNotCut(fault))
    } catch (error) {
      if (error instanceof TooLargeError || error instanceof UnprintableError)
        throw new Refusal(error.message)
      throw error
    }
    return 0
  },
}

function paperOf(text: string | boolean | undefined): Paper {
  const paper = typeof text === 'string' ? paperNamed(text) : undefined
  if (paper) return paper
  const own = typeof text === 'string' ? sizeIn(text) : null
  if (own) return ownPaper(...own)
  throw new Refusal(
    says.notPaper(
      papers.map((one) => one.name),
      text,
    ),
  )
}

function numberOf(text: string | boolean | undefined, name: string, usual: number): number {
  if (text === undefined) return usual
  const value = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN
  if (Number.isFinite(value)) return value
  throw new Refusal(notNumber(name, text))
}

const ENDINGS: readonly string[] = ['.pdf', '.svg']

const LINES: readonly SheetLines[] = ['front', 'ticks', 'back']

const ARTS: readonly SheetArt[] = ['colour', 'lines', 'none']

function oneOf<T extends string>(
  text: string | boolean | undefined,
  all: readonly T[],
  usual: T,
  name: string,
): T {
  const found = text === undefined ? usual : all.find((one) => one === text)
  if (found) return found
  throw new Refusal(notOneOf(name, all, text))
}

function outOf(text: string | boolean | undefined): string {
  if (typeof text === 'string' && ENDINGS.includes(extname(text).toLowerCase())) return text
  throw new Refusal(notFile('out', ENDINGS, text))
}

interface Written {
  readonly file: string
  readonly content: Uint8Array | string
}

/** A PDF holds all pages in one file; of SVG there is a file a page, the second named with a 2. */
async function filesOf(design: Design, pages: readonly SheetPage[], out: string): Promise<Written[]> {
  const font = await fontOnDisk()
  if (extname(out).toLowerCase() === '.pdf') return [{ file: out, content: await pdfOf(pages, design, font) }]
  return svgsOf(pages, font).map((content, k) => ({
    file: k === 0 ? out : `${out.slice(0, -4)}-${k + 1}${out.slice(-4)}`,
    content,
  }))
}
