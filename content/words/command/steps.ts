import { doNotCut as warning } from '../sheet.ts'
import { given, tabsHelp } from './options.ts'

export const usage = '[--out FILE.txt | --out FILE.pdf [--paper PAPER] [--per-page N]] [--tabs flat|slit]'

/** `paper`, `perPage`: what is taken where nothing is said. */
export const help = (
  papers: readonly string[],
  paper: string,
  counts: readonly number[],
  perPage: number,
): string =>
  `Tell how the card is made, step by step: what to cut, fold, push through and glue, with cautions and with heights to check by ruler. In words, to a file or here; or as a booklet with a figure for each step. PAPER: ${papers.join(', ')} (${paper}). N, the steps on a page: ${counts.join(', ')} (${perPage}). ${tabsHelp}`

export const isForBooklet = (option: string, got: string | boolean | undefined): string =>
  `--${option} is for a booklet: --out must name a file that ends in .pdf${given(got)}.`

export const booklet = (file: string, pages: number): string =>
  `${file}: the steps on ${pages} ${pages === 1 ? 'page' : 'pages'}.`

/** `fault`: a sentence on what does not work yet. */
export const doNotCut = (fault: string): string => `${warning} ${fault} The steps say so too.`

export const inWords = (file: string): string => `${file}: the steps in words.`
