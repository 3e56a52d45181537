import { extname } from 'node:path'
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
import { TABS_HELP, withAskedTabs } from './tabs.ts'
import { given, writeOut } from './write-out.ts'

/** The template at true size, to print and cut. */
export const sheet: Command = {
  name: 'sheet',
  usage:
    '--paper PAPER --out FILE.pdf [--lines front|ticks|back] [--art colour|lines|none] [--measured MM] [--tiled] [--copies N] [--tabs flat|slit]',
  help: `Write the template at true size, and say how many sheets it takes and how full they are. PAPER: ${papers.map((one) => one.name).join(', ')}, or a size of your own in mm as 200x300. FILE may end in .svg too. LINES: front (every line, to practise), ticks (ends of folds only, for a good copy), back (every line on the other face, mirrored, mountain and valley swapped). ART: what is drawn on the design in colour, as lines to colour in (lines, unless said), or not at all (none). MM: how long the 100 mm check line came out on your last print; this one makes up for it. --tiled: what is larger than the paper is parted over several sheets that are joined. N: so many of each piece, sheets filled up. ${TABS_HELP}`,
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
    const lines = oneOf(options.lines, LINES, 'front', '--lines')
    const art = oneOf(options.art, ARTS, usualArt(design), '--art')
    const measured = numberOf(options.measured, '--measured', 100)
    const copies = numberOf(options.copies, '--copies', 1)
    const tiled = options.tiled === true
    try {
      const paper = paperOf(options.paper)
      const fault = faultSays(design)
      const asked = { paper, lines, art, measured, tiled, copies, fault }
      const pages = layOut(design, asked)
      for (const { file, content } of await filesOf(design, pages, out)) {
        writeOut(file, place(file), content)
        console.log(`${visibleText(file)}: print it on ${paper.label} at 100 %, actual size.`)
      }
      console.log(`${useSays(paperUse(design, pages, asked))}.`)
      const { sentence } = fitOn(design, printedOn(asked))
      if (sentence !== '' && !tiled) console.log(sentence)
      if (fault !== '') console.log(`Do not cut yet. ${fault} The sheet says so too.`)
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
    `--paper must be one of ${papers.map((one) => one.name).join(', ')}, or a size in mm as 200x300${given(text)}.`,
  )
}

function numberOf(text: string | boolean | undefined, name: string, usual: number): number {
  if (text === undefined) return usual
  const value = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN
  if (Number.isFinite(value)) return value
  throw new Refusal(`${name} must be a number${given(text)}.`)
}

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
  throw new Refusal(`${name} must be one of ${all.join(', ')}${given(text)}.`)
}

function outOf(text: string | boolean | undefined): string {
  if (typeof text === 'string' && ['.pdf', '.svg'].includes(extname(text).toLowerCase())) return text
  throw new Refusal(`--out must name a file that ends in .pdf or .svg${given(text)}.`)
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
