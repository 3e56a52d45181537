/** Words that say nothing of what is looked for. */
const IDLE = new Set(
  'a an and as at be but by can do does doesn doesn’t don don’t isn isn’t not won won’t i if in into is it its me my of on or so that the there this to too up was what when will with you your'.split(
    ' ',
  ),
)

/** A word as it is looked for: small, without an ending that changes nothing; null for one that says nothing. */
export const term = (word: string): string | null => {
  const small = word.toLowerCase()
  if (IDLE.has(small)) return null
  return small.length > 4 ? small.replace(/(?:ing|es|ed|s)$/, '') : small
}

/** How near a word must come: its beginning will do, and a slip of a letter in a long one. */
export const NEAR = {
  prefix: (word: string): boolean => word.length > 2,
  fuzzy: (word: string): number | false => (word.length > 5 ? 0.2 : false),
}
