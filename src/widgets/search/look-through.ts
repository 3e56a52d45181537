import MiniSearch from 'minisearch'
import type { Findable } from './findable.ts'
import { NEAR, term } from './words.ts'

/** A place that was found, with the sentence in which most of what was asked for stands. */
export interface Found extends Findable {
  readonly sentence: string
}

const sentencesOf = (text: string): readonly string[] => text.match(/[^.?!]+[.?!]*/g) ?? [text]

/** Of a text the sentence that holds most of some words. */
function sentenceWith(text: string, words: readonly string[]): string {
  const count = (sentence: string): number => {
    const own = new Set(sentence.split(/[^\p{L}\p{N}]+/u).map(term))
    return words.filter((word) => own.has(term(word))).length
  }
  const all = sentencesOf(text)
  const best = all.reduce((a, b) => (count(b) > count(a) ? b : a), all[0] ?? '')
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
