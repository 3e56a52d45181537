import readability from 'text-readability'
import type { Leaf } from '../../src/site/cells/grammar.ts'

/** A stretch of a chapter that is read in one go: a paragraph, a list item, a heading. */
export interface Stretch {
  readonly line: number
  readonly text: string
}

export interface Counts {
  readonly words: number
  readonly sentences: number
  readonly syllables: number
}

/** Flesch-Kincaid grade: Kincaid, Fishburne, Rogers, Chissom 1975. */
export const grade = ({ words, sentences, syllables }: Counts): number =>
  (0.39 * words) / sentences + (11.8 * syllables) / words - 15.59

/**
 * Words and syllables by the readability library, unrounded (its own grade rounds both averages down
 * first, which can hide a whole grade). A stretch without a full stop is one sentence.
 */
export function counts(texts: readonly string[]): Counts {
  let [words, sentences, syllables] = [0, 0, 0]
  for (const text of texts) {
    for (const sentence of text.split(/(?<=[.!?])['"’”)]*\s+/)) {
      const count = readability.lexiconCount(sentence)
      if (count === 0) continue
      words += count
      sentences += 1
      syllables += readability.syllableCount(sentence)
    }
  }
  return { words, sentences, syllables }
}

/** What is not read by the pupil: the teacher's cell, and the maths that is folded away. */
const NOT_READ = ['ForTeachers', 'Formula']

/** Attributes that stand on the page as words. */
const SPOKEN = ['says', 'sign', 'title', 'question']

const BLOCKS = ['paragraph', 'heading', 'tableCell']

const textOf = (node: Leaf): string => {
  if (node.type === 'text' || node.type === 'inlineCode') return String(node.value)
  if (node.name === 'Num') return '30 mm'
  if (node.name === 'Sign') return 'x'
  if (node.name === 'Formula') return ''
  return (node.children ?? []).map(textOf).join('')
}

const isElement = (node: Leaf): boolean =>
  node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement'

/** The stretches that a pupil reads, of a chapter's tree or a part of it. */
export function stretches(node: Leaf): Stretch[] {
  const line = node.position?.start.line ?? 1
  if (isElement(node) && NOT_READ.includes(node.name ?? '')) return []
  const spoken = isElement(node)
    ? (node.attributes ?? []).flatMap(({ name = '', value }) =>
        SPOKEN.includes(name) && typeof value === 'string' ? [{ line, text: value }] : [],
      )
    : []
  if (BLOCKS.includes(node.type)) return [...spoken, { line, text: textOf(node) }]
  const children = node.children ?? []
  // Words written on the same line as their tag have no paragraph round them.
  const loose = children.some((child) => child.type === 'text' && String(child.value).trim() !== '')
  if (loose) return [...spoken, { line, text: textOf(node) }]
  return [...spoken, ...children.flatMap(stretches)]
}
