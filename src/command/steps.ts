import { extname } from 'node:path'
import type { PerPage } from '../booklet/book-pages.ts'
import { PER_PAGE } from '../booklet/book-pages.ts'
import { stepsText } from '../booklet/index.ts'
import { visibleText } from '../paper/index.ts'
import { fontOnDisk } from '../sheet/files/font-on-disk.ts'
import { paperNamed, papers } from '../sheet/index.ts'
import type { PaperName } from '../sheet/pages/paper-sizes.ts'
import type { Command, Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { TABS_HELP, withAskedTabs } from './tabs.ts'
import { given, writeOut } from './write-out.ts'

/** Booklets are read at a table: on these papers their words are neither tiny nor lost. */
const PAPERS: readonly PaperName[] = ['a4', 'letter']

const USUAL = { paper: 'a4', perPage: 4 } as const

const labels = papers.filter(({ name }) => PAPERS.includes(name)).map(({ name }) => name)

/** How a card is made: in words, or as a booklet with its figures. */
export const steps: Command = {
  name: 'steps',
  usage: '[--out FILE.txt | --out FILE.pdf [--paper PAPER] [--per-page N]] [--tabs flat|slit]',
  help: `Tell how the card is made, step by step: what to cut, fold, push through and glue, with cautions and with heights to check by ruler. In words, to a file or here; or as a booklet with a figure for each step. PAPER: ${labels.join(', ')} (${USUAL.paper}). N, the steps on a page: ${PER_PAGE.join(', ')} (${USUAL.perPage}). ${TABS_HELP}`,
  options: {
    out: { type: 'string' },
    paper: { type: 'string' },
    'per-page': { type: 'string' },
    tabs: { type: 'string' },
  },
  async run(read, options, place) {
    const design = withAskedTabs(read, options)
    const { out } = options
    const ending = typeof out === 'string' ? extname(out).toLowerCase() : ''
    if (out !== undefined && ending !== '.txt' && ending !== '.pdf')
      throw new Refusal(`--out must name a file that ends in .txt or .pdf, not ${out}.`)
    if (ending === '.pdf') {
      const name = String(out)
      const { bookPdf } = await import('../booklet/book-pdf.ts')
      const { bytes, pages } = await bookPdf(design, chosen(options), await fontOnDisk())
      writeOut(name, place(name), bytes)
      console.log(`${visibleText(name)}: the steps on ${pages} ${pages === 1 ? 'page' : 'pages'}.`)
      return 0
    }
    for (const one of ['paper', 'per-page'])
      if (options[one] !== undefined)
        throw new Refusal(`--${one} is for a booklet: --out must name a file that ends in .pdf${given(out)}.`)
    const text = stepsText(design)
    if (typeof out !== 'string') console.log(text.trimEnd())
    else {
      writeOut(out, place(out), text)
      console.log(`${visibleText(out)}: the steps in words.`)
    }
    return 0
  },
}

function chosen({ paper = USUAL.paper, 'per-page': count = String(USUAL.perPage) }: Options) {
  const named = paperNamed(String(paper))?.name
  if (named === undefined || !PAPERS.includes(named))
    throw new Refusal(`--paper must be one of ${labels.join(', ')}, not ${paper}.`)
  const perPage = PER_PAGE.find((one) => String(one) === count)
  if (perPage === undefined)
    throw new Refusal(`--per-page must be one of ${PER_PAGE.join(', ')}, not ${count}.`)
  return { paper: named, perPage: perPage satisfies PerPage }
}
