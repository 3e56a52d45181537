import MiniSearch from 'minisearch'
import type { Findable } from './findable.ts'
import { NEAR, term } from './words.ts'

/** A place that was found, with the sentence in which most of what was asked for stands. */
export interface Found extends Findable {
  readonly sentence: string
}

const sentencesOf = (text: string): readonly string[] => text.match(/[^.?!]+[.?!]*/g) ?? [text]

/** A sentence of fewer words is a heading: it tells less than what stands under it. */
const HEADING = 3

/** Of a text the sentence that holds most of some words; headings only where nothing else holds as many. */
function sentenceWith(text: string, words: readonly string[]): string {
  const worth = (sentence: string): number => {
    const all = sentence.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '')
    const own = new Set(all.map(term))
    return words.filter((word) => own.has(term(word))).length + (all.length < HEADING ? 0 : 0.5)
  }
  const all = sentencesOf(text)
  const best = all.reduce((a, b) => (worth(b) > worth(a) ? b : a), all[0] ?? '')
  return best.trim()
}

/** So many answers: more would be a list to read. */
const MOST = 12

/** Looks through the book: likeliest first, each place once. */
export function lookThrough(places: readonly Findable[]): (words: string) => readonly Found[] {
  const index = new MiniSearch<Findable & { readonly id: number }>({
    fields: ['title', 'where', 'text'],
    processTerm: term,
    searchOptions: { boost: { title: 3 }, combineWith: 'OR', ...NEAR },
  })
  index.addAll(places.map((place, id) => ({ ...place, id })))
  return (words) =>
    index
      .search(words)
      .slice(0, MOST)
      .flatMap(({ id, terms }): Found[] => {
        const place = places[id as number]
        return place ? [{ ...place, sentence: sentenceWith(place.text, terms) }] : []
      })
}
