import { extname } from 'node:path'
import { notFile, notOneOf } from '../../content/words/command/options.ts'
import * as says from '../../content/words/command/steps.ts'
import type { PerPage } from '../booklet/book-pages.ts'
import { PER_PAGE } from '../booklet/book-pages.ts'
import { stepsText } from '../booklet/index.ts'
import { visibleText } from '../paper/index.ts'
import { fontOnDisk } from '../sheet/files/font-on-disk.ts'
import { faultSays, paperNamed, papers } from '../sheet/index.ts'
import type { PaperName } from '../sheet/pages/paper-sizes.ts'
import type { Command, Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { withAskedTabs } from './tabs.ts'
import { writeOut } from './write-out.ts'

/** Booklets are read at a table: on these papers their words are neither tiny nor lost. */
const PAPERS: readonly PaperName[] = ['a4', 'letter']

const USUAL = { paper: 'a4', perPage: 4 } as const

const labels = papers.filter(({ name }) => PAPERS.includes(name)).map(({ name }) => name)

/** How a card is made: in words, or as a booklet with its figures. */
export const steps: Command = {
  name: 'steps',
  usage: says.usage,
  help: says.help(labels, USUAL.paper, PER_PAGE, USUAL.perPage),
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
      throw new Refusal(notFile('out', ['.txt', '.pdf'], out))
    const fault = faultSays(design)
    const warn = (): void => {
      if (fault !== '') console.log(says.doNotCut(fault))
    }
    if (ending === '.pdf') {
      const name = String(out)
      const { bookPdf } = await import('../booklet/book-pdf.ts')
      const { bytes, pages } = await bookPdf(design, { ...chosen(options), fault }, await fontOnDisk())
      writeOut(name, place(name), bytes)
      console.log(says.booklet(visibleText(name), pages))
      warn()
      return 0
    }
    for (const one of ['paper', 'per-page'])
      if (options[one] !== undefined) throw new Refusal(says.isForBooklet(one, out))
    const text = stepsText(design, fault)
    if (typeof out !== 'string') console.log(text.trimEnd())
    else {
      writeOut(out, place(out), text)
      console.log(says.inWords(visibleText(out)))
      warn()
    }
    return 0
  },
}

function chosen({ paper = USUAL.paper, 'per-page': count = String(USUAL.perPage) }: Options) {
  const named = paperNamed(String(paper))?.name
  if (named === undefined || !PAPERS.includes(named)) throw new Refusal(notOneOf('paper', labels, paper))
  const perPage = PER_PAGE.find((one) => String(one) === count)
  if (perPage === undefined) throw new Refusal(notOneOf('per-page', PER_PAGE, count))
  return { paper: named, perPage: perPage satisfies PerPage }
}
