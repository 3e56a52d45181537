/**
 * Papers to print on, upright, mm. ISO 216:2007 A series; US sizes of ANSI/ASME Y14.1 (A is letter, B is
 * tabloid) and, for legal, the trade: exact inches times 25.4.
 */
export interface Paper {
  readonly name: PaperName
  /** As it stands on the packet. */
  readonly label: string
  readonly width: number
  readonly height: number
}

export type PaperName = 'a5' | 'a4' | 'a3' | 'letter' | 'legal' | 'tabloid'

const INCH = 25.4

/** From small to large within each family. */
export const papers: readonly Paper[] = [
  { name: 'a5', label: 'A5', width: 148, height: 210 },
  { name: 'a4', label: 'A4', width: 210, height: 297 },
  { name: 'a3', label: 'A3', width: 297, height: 420 },
  { name: 'letter', label: 'US Letter', width: 8.5 * INCH, height: 11 * INCH },
  { name: 'legal', label: 'US Legal', width: 8.5 * INCH, height: 14 * INCH },
  { name: 'tabloid', label: 'US Tabloid', width: 11 * INCH, height: 17 * INCH },
]

const byName = new Map<string, Paper>(papers.map((paper) => [paper.name, paper]))

/** The paper of that name, or undefined. */
export const paperNamed = (name: string): Paper | undefined => byName.get(name.toLowerCase())

/** The paper of a known name. */
export function paperOf(name: PaperName): Paper {
  const paper = byName.get(name)
  if (!paper)
    throw new RangeError(`paper must be one of ${papers.map((p) => p.name).join(', ')}, not ${name}`)
  return paper
}

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
