import { linkTo } from './address.ts'
import { benchOf, keepWord, recall } from './page.ts'

const nameOf = (slug: string): string => `printed.${slug}`

/** Remembers, when a template was made, of which state of the bench it was. */
export function keepPrinted(slug: string): void {
  const bench = benchOf(slug).peek()
  keepWord(nameOf(slug), bench ? linkTo(bench) : '')
}

/** The link of the state whose template was made last on this device, empty for the chapter's own; null: none was. */
export const printedOf = (slug: string): string | null => recall(nameOf(slug))
