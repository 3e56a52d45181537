import MiniSearch from 'minisearch'
import type { Fault, Trouble } from './trouble.ts'

/** Words that say nothing of a fault. */
const IDLE = new Set(
  'a an and as at be but by can do does i if in into is it its me my of on or so that the there this to too up was when will with you your'.split(
    ' ',
  ),
)

/** A word as it is looked for: small, without an ending that changes nothing. */
const term = (word: string): string | null => {
  const small = word.toLowerCase()
  if (IDLE.has(small)) return null
  return small.length > 4 ? small.replace(/(?:ing|es|ed|s)$/, '') : small
}

/** Finds troubles by a maker's own words, likeliest first: by its sign, its fault and the other words for that, its cure, its card. */
export function lookUp(
  faults: readonly Fault[],
  troubles: readonly Trouble[],
): (words: string) => readonly Trouble[] {
  const index = new MiniSearch<
    Trouble & { readonly id: number; readonly also: string; readonly title: string }
  >({
    fields: ['sign', 'also', 'cure', 'title'],
    processTerm: term,
    searchOptions: {
      boost: { sign: 3, also: 2 },
      prefix: (word) => word.length > 2,
      fuzzy: (word) => (word.length > 5 ? 0.2 : false),
    },
  })
  index.addAll(
    troubles.map((one, id) => {
      const fault = faults.find((each) => each.id === one.fault)
      return {
        ...one,
        id,
        title: one.chapter.title,
        also: fault ? [fault.see, ...fault.also].join('. ') : '',
      }
    }),
  )
  return (words) => index.search(words).flatMap(({ id }) => troubles[id as number] ?? [])
}
