/** How hard the steps of a sheet are to read where they stand: of two sheets with as many pages the easier one is taken. */
import type { SheetMark } from '../marks/setting.ts'
import { extent } from '../marks/setting.ts'
import { fittings, STEPS } from './sections.ts'

/** Type: the usual one costs nothing, a close one little, one with capitals of less than 2 mm much. */
function ofType(size: number): number {
  if (size >= fittings.roomy.body.size) return 0
  return size >= fittings.close.body.size ? 0.4 : 2
}

/** Lines so long and no longer, mm: five words a line, or three. */
function ofLines(longest: number): number {
  if (longest < 46) return 1.5
  return longest < 68 ? 0.3 : 0
}

/** Each page on which one has to look for them first. */
const LATER = 0.2

/** More than this is worth another try. */
export const HARD = 0.9

/** By the pages of a sheet, or by some of them; nought where these have no steps. */
export function hardship(pages: readonly { readonly marks: readonly SheetMark[] }[]): number {
  const steps = pages.map(({ marks }) =>
    marks.flatMap((mark) => (mark.mark === 'word' && mark.of === STEPS ? [mark] : [])),
  )
  const all = steps.flat()
  if (all.length === 0) return 0
  const longest = Math.max(...all.map(extent).map(([left, , right]) => right - left))
  const least = Math.min(...all.map(({ size }) => size))
  return ofType(least) + ofLines(longest) + LATER * steps.findIndex((words) => words.length > 0)
}
