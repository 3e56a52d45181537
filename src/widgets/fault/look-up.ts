import MiniSearch from 'minisearch'
import * as language from '../../../content/words/looked-for.ts'
import { NEAR, term } from '../search/words.ts'
import type { Fault, Trouble } from './trouble.ts'

const telling = (word: string): string | null => {
  const found = term(word)
  return found === language.everywhere || found?.length === 1 ? null : found
}

/** A V-fold is one word, however it is written, and a fold besides. */
const words = (text: string): string[] => language.withOneWord(text).split(/[\n\r\p{Z}\p{P}]+/u)

type Placed = Trouble & { readonly id: number; readonly also: string; readonly title: string }

function indexed(faults: readonly Fault[], troubles: readonly Trouble[]): MiniSearch<Placed> {
  const index = new MiniSearch<Placed>({
    fields: ['sign', 'also', 'cure', 'title'],
    tokenize: words,
    processTerm: telling,
    searchOptions: {
      boost: { sign: 2, also: 2.5, title: 2 },
      // Who names the mechanism means it.
      boostTerm: (word) => (word === language.oneWord ? 3 : 1),
      ...NEAR,
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
  return index
}

/**
 * Finds troubles by a maker's own words, likeliest first: by its sign, its fault and the other words for that, its cure,
 * its card. What it looks through is put together when it is first asked.
 */
export function lookUp(
  faults: readonly Fault[],
  troubles: readonly Trouble[],
): (words: string) => readonly Trouble[] {
  let index: MiniSearch<Placed> | null = null
  return (words) => {
    index ??= indexed(faults, troubles)
    return index.search(words).flatMap(({ id }) => troubles[id as number] ?? [])
  }
}
