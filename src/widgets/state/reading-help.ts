import * as says from '../../../content/words/reading-help.ts'
import type { Design, Mechanism } from '../../paper/index.ts'
import { topOf } from '../../paper/index.ts'
import type { BenchConfig, ReadingName } from './config.ts'
import { readingNames } from './readings.ts'
import { leadOf } from './state.ts'

/** What is said of a reading: of a rise below nothing it is something else. */
export type Said = ReadingName | 'behind'

const pointHelp: Partial<Record<Said, string>> = says.pointHelp

/** What a reading means, in a sentence or two; of a lead that has a ridge to hold a ruler to, and no tip, it says so. */
export function readingHelp(name: Said, lead: Mechanism | undefined, config: BenchConfig): string {
  const help: Readonly<Record<Said, string>> = says.help(lead ? topOf(lead) : says.tip)
  return (config.point && pointHelp[name]) ?? help[name]
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
