import * as says from '../../../../content/words/dummy/model.ts'
import type { Design } from '../../../paper/index.ts'

/** An empty card of two A6 pages, 0.25 mm thick. */
export const EMPTY: Design = {
  hingebook: 1,
  title: says.firstTitle,
  card: { width: 105, height: 148, caliper: 0.25 },
  mechanisms: [],
}

/** An empty card beside these dummies, by their titles: it is called by its number, and as none of them is. */
export function emptyBeside(titles: readonly string[]): Design {
  if (titles.length === 0) return EMPTY
  let number = titles.length + 1
  while (titles.includes(says.nextTitle(number))) number++
  return { ...EMPTY, title: says.nextTitle(number) }
}
