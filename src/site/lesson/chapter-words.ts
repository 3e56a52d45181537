/** What a chapter gives a lesson, read from its own text: its questions, mistakes, cautions and codes stand there once. */
import { mdxToMdast } from 'satteri'
import type { ChapterWords } from '../../class/words.ts'
import type { Design } from '../../paper/index.ts'
import type { Leaf } from '../cells/grammar.ts'
import type { Ask } from '../cells/number.ts'
import { answer, inText } from '../cells/number.ts'

/** Gives the design of a dummy by its name. */
export type DummyOf = (name: string) => Design

interface Reading {
  readonly design: Design
  readonly dummy: DummyOf
}

const named = (node: Leaf, name: string): readonly Leaf[] => [
  ...(node.name === name ? [node] : []),
  ...(node.children ?? []).flatMap((child) => named(child, name)),
]

/** The first of a name that is deepest in none of its like. Throws an Error that names it. */
function cell(tree: Leaf, name: string): Leaf {
  const [found] = named(tree, name)
  if (!found) throw new Error(`the chapter has no <${name}>`)
  return found
}

/** What stands in braces as an author writes it: a number, or names with numbers. */
function inBraces(text: string): unknown {
  return JSON.parse(text.replace(/([{,]\s*)([A-Za-z]\w*)\s*:/g, '$1"$2":'))
}

function attribute(node: Leaf, name: string): unknown {
  const value = node.attributes?.find((one) => one.name === name)?.value
  if (typeof value !== 'object' || value === null) return value
  return inBraces(String((value as { value?: unknown }).value))
}

const has = (node: Leaf, name: string): boolean => node.attributes?.some((one) => one.name === name) ?? false

/** The number that a chapter takes from the kernel, as its page shows it. */
function numberIn(node: Leaf, { design, dummy }: Reading): string {
  const given = (node.attributes ?? []).flatMap(({ name }) => (name === undefined ? [] : [name]))
  const {
    decimals,
    bare,
    dummy: of,
    ...ask
  } = Object.fromEntries(given.map((name) => [name, attribute(node, name)])) as Record<string, unknown>
  return inText(
    answer(typeof of === 'string' ? dummy(of) : design, ask as unknown as Ask),
    typeof decimals === 'number' ? decimals : undefined,
    bare !== undefined,
  )
}

/** Plain text in one line, numbers from the kernel. */
function plain(node: Leaf, reading: Reading): string {
  if (node.type === 'text' || node.type === 'inlineCode') return String(node.value)
  if (node.name === 'Num') return numberIn(node, reading)
  if (node.name === 'Formula') return ''
  return (node.children ?? [])
    .map((child) => plain(child, reading))
    .join(node.type === 'root' || node.type === 'mdxJsxFlowElement' ? ' ' : '')
}

const line = (node: Leaf, reading: Reading): string => plain(node, reading).replace(/\s+/g, ' ').trim()

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
  const tree = mdxToMdast(body, { features: { frontmatter: true } }) as Leaf
  const teachers = cell(tree, 'ForTeachers')
  const recall = named(cell(tree, 'Recall'), 'Question').map((question) => {
    const guesses = named(question, 'Guess')
    const right = guesses.find((guess) => has(guess, 'right'))
    if (!right) throw new Error(`“${String(attribute(question, 'asks'))}” has no right guess`)
    return {
      asks: String(attribute(question, 'asks')),
      choices: guesses.map((guess) => String(attribute(guess, 'says'))),
      answer: `${String(attribute(right, 'says'))}. ${line(right, reading).replace(/^Yes\.\s*/, '')}`,
    }
  })
  return {
    title,
    ask: ask ?? null,
    recall,
    slips: named(cell(tree, 'GoesWrong'), 'Slip').map((slip) => ({
      sign: String(attribute(slip, 'sign')),
      cure: line(slip, reading),
    })),
    misconceptions: under(teachers, /^Misconceptions[^.]*\./, reading).list,
    standards: under(teachers, /^Standards[^.]*\./, reading).list.flatMap((said) => {
      const [, code, says] = /^([^:]+):\s*(.+)$/.exec(said) ?? []
      return code && says ? [{ code, says }] : []
    }),
    safety: under(teachers, /^Safety\./, reading).said,
  }
}
