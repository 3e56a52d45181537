import { doNotCut as warning } from '../sheet.ts'
import { given, tabsHelp } from './options.ts'

export const usage =
  '--paper PAPER --out FILE.pdf [--lines front|ticks|back] [--art colour|lines|none] [--measured MM] [--tiled] [--copies N] [--tabs flat|slit]'

export const help = (papers: readonly string[]): string =>
  `Write the template at true size, and say how many sheets it takes and how full they are. PAPER: ${papers.join(', ')}, or a size of your own in mm as 200x300. FILE may end in .svg too. LINES: front (every line, to practise), ticks (ends of folds only, for a good copy), back (every line on the other face, mirrored, mountain and valley swapped). ART: what is drawn on the design in colour, as lines to colour in (lines, unless said), or not at all (none). MM: how long the 100 mm check line came out on your last print; this one makes up for it. --tiled: what is larger than the paper is parted over several sheets that are joined. N: so many of each piece, sheets filled up. ${tabsHelp}`

export const notPaper = (papers: readonly string[], got: string | boolean | undefined): string =>
  `--paper must be one of ${papers.join(', ')}, or a size in mm as 200x300${given(got)}.`

export const printIt = (file: string, paper: string): string =>
  `${file}: print it on ${paper} at 100 %, actual size.`

/** `fault`: a sentence on what does not work yet. */
export const doNotCut = (fault: string): string => `${warning} ${fault} The sheet says so too.`
