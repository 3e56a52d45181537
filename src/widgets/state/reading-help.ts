import type { Design, Mechanism } from '../../paper/index.ts'
import { topOf } from '../../paper/index.ts'
import type { BenchConfig, ReadingName } from './config.ts'
import { readingNames } from './readings.ts'
import { leadOf } from './state.ts'

/** What is said of a reading: of a rise below nothing it is something else. */
export type Said = ReadingName | 'behind'

const help: Readonly<Record<Said, string>> = {
  rise: 'How far the tip stands from the page below it. Stand a ruler on the page, square to it, and read the tip.',
  reach: 'How far along the gutter the tip has come, measured from the reader’s end of the card.',
  'stand-off': 'How far the tip is from the gutter itself.',
  gape: 'How far the two tips are from each other.',
  wedge: 'The angle at the apex between the gutter and a fold.',
  slit: 'How deep the slit goes from the fold, on each page.',
  lean: 'How far the end of the slit is shifted along the gutter.',
  depth: 'How deep the cuts go from the fold.',
  margin:
    'With the card shut: the least distance from the pop-up to the card’s edge. If it sticks out, the card cannot hide it.',
  opening: 'The angle between the two pages: 0 is shut, 180 is flat.',
  highest: 'The opening at which the tip stands highest over its page.',
  stop: 'How far the card opens before this piece is pulled tight. 180° is flat.',
  behind: 'How far the tip lies behind its page, where no ruler reaches it from the inside of the card.',
}

/** Of the point of a bare card. */
const pointHelp: Partial<Record<Said, string>> = {
  gape: 'How far the point is from its twin on the other page, straight through the air.',
  'stand-off': 'How far the point is from the gutter. Watch it: it never changes as the card opens.',
  reach: 'How far along the gutter the point lies. Opening the card never changes it.',
}

/** What a reading means, in a sentence or two; of a lead that has a ridge to hold a ruler to, and no tip, it says so. */
export function readingHelp(name: Said, lead: Mechanism | undefined, config: BenchConfig): string {
  const says = (config.point && pointHelp[name]) ?? help[name]
  return lead && name !== 'behind' ? says.replaceAll(/\btip\b/g, topOf(lead)) : says
}

/** What is said of all readings that a bench shows: it comes with the page, and not with what draws them. */
export function readingHelps(design: Design, config: BenchConfig): Partial<Record<Said, string>> {
  const names: readonly Said[] = readingNames(design, config)
  const lead = leadOf(design, config)
  return Object.fromEntries(
    (names.includes('rise') ? [...names, 'behind' as const] : names).map((name) => [
      name,
      readingHelp(name, lead, config),
    ]),
  )
}
