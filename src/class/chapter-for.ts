import type { Design } from '../paper/index.ts'
import { isRead, nameOf } from '../paper/index.ts'
import type { ChapterWords } from './words.ts'

/** A chapter by what its own card shows. */
export interface Taught {
  readonly slug: string
  /** The kind of what is read on its card; none on a bare one. */
  readonly kind: string | undefined
}

/** What is read first on a design: the mechanism of that id, else the first that is read. */
export function leadIn(design: Design, id?: string): Design['mechanisms'][number] | undefined {
  return design.mechanisms.find((m) => m.id === id) ?? design.mechanisms.find((_, k) => isRead(design, k))
}

/** The chapter whose words go with a design: the first that leads with the same kind; the first of all if none does. */
export const chapterFor = <T extends Taught>(chapters: readonly T[], design: Design): T | undefined =>
  chapters.find(({ kind }) => kind === leadIn(design)?.kind) ?? chapters[0]

/** Sentence by sentence. */
const SENTENCE = /(?<=[.?])\s+/

/** What a chapter says that is true of a card: nothing that speaks of a part which only the chapter's own card has. */
export function wordsOn(words: ChapterWords, design: Design): ChapterWords {
  const has = new Set(design.mechanisms.map(({ id }) => nameOf(id)))
  const lacks = words.parts.filter((part) => !has.has(part))
  if (lacks.length === 0) return words
  const absent = new RegExp(`\\b(?:${lacks.join('|')})s?\\b`, 'i')
  const isOn = (...said: readonly string[]): boolean => !said.some((one) => absent.test(one))
  const { ask, guesses, recall, slips, misconceptions, standards, safety } = words
  const asks =
    ask !== null && isOn(ask.asks, ask.answer, ...guesses.map(({ says }) => says)) ? { ask, guesses } : null
  return {
    ...words,
    ...(asks ?? { ask: null, guesses: [] }),
    recall: recall.filter((one) => isOn(one.asks, one.answer, ...one.choices)),
    slips: slips.filter(({ sign, cure }) => isOn(sign, cure)),
    misconceptions: misconceptions.filter((one) => isOn(one)),
    standards: standards.filter(({ says }) => isOn(says)),
    safety: safety
      .split(SENTENCE)
      .filter((one) => isOn(one))
      .join(' '),
  }
}
