import * as says from '../../../content/words/sheet/papers.ts'

/**
 * Papers to print on, upright, mm. ISO 216:2007 A series; US sizes of ANSI/ASME Y14.1 (A is letter, B is
 * tabloid) and, for legal, the trade: exact inches times 25.4.
 */
export interface Paper {
  readonly name: PaperName | 'own'
  /** As it stands on the packet. */
  readonly label: string
  readonly width: number
  readonly height: number
  /** What is laid out on it is printed so many times as large, to make up for a printer; 1 if left out. */
  readonly stretch?: number
}

export type PaperName = 'a5' | 'a4' | 'a3' | 'letter' | 'legal' | 'tabloid'

const INCH = 25.4

/** One of the papers that shops have. */
export type NamedPaper = Paper & { readonly name: PaperName }

/** From small to large within each family. */
export const papers: readonly NamedPaper[] = [
  { name: 'a5', label: 'A5', width: 148, height: 210 },
  { name: 'a4', label: 'A4', width: 210, height: 297 },
  { name: 'a3', label: 'A3', width: 297, height: 420 },
  { name: 'letter', label: says.letter, width: 8.5 * INCH, height: 11 * INCH },
  { name: 'legal', label: says.legal, width: 8.5 * INCH, height: 14 * INCH },
  { name: 'tabloid', label: says.tabloid, width: 11 * INCH, height: 17 * INCH },
]

const byName = new Map<string, NamedPaper>(papers.map((paper) => [paper.name, paper]))

/** The paper of that name, or undefined. */
export const paperNamed = (name: string): NamedPaper | undefined => byName.get(name.toLowerCase())

/** The paper of a known name, or one that was described. */
export function paperOf(name: PaperName | Paper): Paper {
  if (typeof name !== 'string') return name
  const paper = byName.get(name)
  if (!paper)
    throw new RangeError(`paper must be one of ${papers.map((p) => p.name).join(', ')}, not ${name}`)
  return paper
}

/** A number that no print has; the message is a sentence that says which and its range. */
export class UnprintableError extends RangeError {}

/** How long and wide a paper of one's own may be, mm: from an index card to a large printer's sheet. */
const OWN = { least: 90, most: 1200 } as const

/** A paper of these sizes, mm, whichever is the longer. Throws an `UnprintableError`. */
export function ownPaper(width: number, height: number): Paper {
  for (const [size, unprintable] of [
    [width, says.paperWidth],
    [height, says.paperHeight],
  ] as const)
    if (!(size >= OWN.least && size <= OWN.most)) throw new UnprintableError(unprintable(OWN.least, OWN.most))
  const [short, long] = width < height ? [width, height] : [height, width]
  return { name: 'own', label: says.ownPaper(short, long), width: short, height: long }
}

/** What the 100 mm check line may have measured on paper, mm: a printer errs by less. */
const MEASURED = { least: 95, most: 105 } as const

/**
 * How many times as large to print, if the 100 mm check line came out `measured` mm long. Throws an `UnprintableError`.
 */
export function stretchFor(measured: number): number {
  if (!(measured >= MEASURED.least && measured <= MEASURED.most))
    throw new UnprintableError(says.checkLine(MEASURED.least, MEASURED.most))
  return 100 / measured
}

/** The paper as large as it is to what is printed larger or smaller on it. */
export const stretched = (paper: Paper, stretch: number): Paper =>
  stretch === 1 ? paper : { ...paper, width: paper.width / stretch, height: paper.height / stretch, stretch }

/**
 * Where letter is the usual paper: Unicode CLDR 48, supplemental/measurementData.json, paperSize
 * "US-Letter". Everywhere else it is A4.
 */
const LETTER_REGIONS = new Set('BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' '))

/**
 * The paper a reader is likely to have, from a BCP 47 locale such as `en-GB`. A locale without a region
 * counts as the region where most of its speakers live; one that cannot be read gives A4.
 */
export function paperForLocale(locale: string): 'a4' | 'letter' {
  try {
    const { region } = new Intl.Locale(locale).maximize()
    return region !== undefined && LETTER_REGIONS.has(region) ? 'letter' : 'a4'
  } catch {
    return 'a4'
  }
}
