/** Words that say nothing of what is looked for. */
import * as language from '../../../content/words/looked-for.ts'

const IDLE = new Set(language.idle.split(' '))

/** A word as it is looked for: small, without an ending that changes nothing; null for one that says nothing. */
export const term = (word: string): string | null => {
  const small = word.toLowerCase()
  return IDLE.has(small) ? null : language.withoutEnding(small)
}

/** How near a word must come: its beginning will do, and a slip of a letter in a long one. */
export const NEAR = {
  prefix: (word: string): boolean => word.length > 2,
  fuzzy: (word: string): number | false => (word.length > 5 ? 0.2 : false),
}
