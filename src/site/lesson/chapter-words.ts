/** What a chapter gives a lesson, read from its own text: its questions, mistakes, cautions and codes stand there once. */
import * as heads from '../../../content/words/site/lesson.ts'
import type { ChapterWords } from '../../class/words.ts'
import { nameOf } from '../../paper/index.ts'
import type { Reading } from '../cells/chapter-tree.ts'
import { attribute, cell, chapterTree, has, line, named } from '../cells/chapter-tree.ts'
import type { Leaf } from '../cells/grammar.ts'

/** Words at the head of a paragraph, up to its first full stop. */
const head = (words: string): RegExp => new RegExp(`^${words}[^.]*\\.`)

const without = (text: string, head: string): string =>
  text.startsWith(head) ? text.slice(head.length).trimStart() : text

/** A paragraph that begins with these bold words, and the list that follows it. */
function under(cell: Leaf, label: RegExp, reading: Reading): { said: string; list: readonly string[] } {
  const children = cell.children ?? []
  const at = children.findIndex((one) => one.type === 'paragraph' && label.test(line(one, reading)))
  if (at < 0) return { said: '', list: [] }
  const next = children[at + 1]
  return {
    said: line(children[at] as Leaf, reading)
      .replace(label, '')
      .trim(),
    list: next?.type === 'list' ? (next.children ?? []).map((item) => line(item, reading)) : [],
  }
}

export interface ChapterSource {
  readonly title: string
  readonly ask?: { readonly asks: string; readonly answer: string } | undefined
  /** The text of the chapter, with its front matter or without. */
  readonly body: string
}

/** Throws an Error if the chapter lacks what every chapter has. */
export function chapterWords({ title, ask, body }: ChapterSource, reading: Reading): ChapterWords {
  const tree = chapterTree(body)
  const teachers = cell(tree, 'ForTeachers')
  const recall = named(cell(tree, 'Recall'), 'Question').map((question) => {
    const guesses = named(question, 'Guess')
    const right = guesses.find((guess) => has(guess, 'right'))
    if (!right) throw new Error(`“${String(attribute(question, 'asks'))}” has no right guess`)
    return {
      asks: String(attribute(question, 'asks')),
      choices: guesses.map((guess) => String(attribute(guess, 'says'))),
      right: String(attribute(right, 'says')),
      answer: `${String(attribute(right, 'says'))}. ${without(line(right, reading), heads.yes)}`,
    }
  })
  return {
    title,
    parts: reading.design.mechanisms.map(({ id }) => nameOf(id)),
    ask: ask ?? null,
    guesses: named(cell(tree, 'Predict'), 'Guess').map((guess) => ({
      says: String(attribute(guess, 'says')),
      right: has(guess, 'right'),
    })),
    recall,
    slips: named(cell(tree, 'GoesWrong'), 'Slip').map((slip) => ({
      sign: String(attribute(slip, 'sign')),
      cure: line(slip, reading),
    })),
    misconceptions: under(teachers, head(heads.misconceptions), reading).list,
    standards: under(teachers, head(heads.standards), reading).list.flatMap((said) => {
      const [, code, says] = /^([^:]+):\s*(.+)$/.exec(said) ?? []
      return code && says ? [{ code, says }] : []
    }),
    safety: under(teachers, head(heads.safety), reading).said,
  }
}
