import { escaped } from '../drawing/pen/svg.ts'
import type { Reading } from './cells/chapter-tree.ts'
import { attribute, chapterTree, line, named } from './cells/chapter-tree.ts'
import type { Leaf } from './cells/grammar.ts'
import { mathml } from './cells/tex.ts'

/** A formula as a chapter's file has it. */
export interface ShownFormula {
  readonly title: string
  /** MathML. */
  readonly formula: string
  /** What its letters mean, HTML. */
  readonly says: string
  readonly source: string
}

/** A part of the text as HTML: words, numbers and signs; what else stands in it is its words. */
function html(node: Leaf, reading: Reading, place: string): string {
  if (node.name === 'Sign') return mathml(attribute(node, 'tex') as string, place, false)
  if (node.type === 'text' || node.name === 'Num') return escaped(textOf(node, reading))
  const inner = (node.children ?? []).map((child) => html(child, reading, place)).join('')
  return node.type === 'paragraph' ? `<p>${inner}</p>` : inner
}

const textOf = (node: Leaf, reading: Reading): string =>
  node.type === 'text' ? String(node.value) : line(node, reading)

/** All formulas of a chapter's text, in its order. */
export const formulasOf = (body: string, reading: Reading, place: string): readonly ShownFormula[] =>
  named(chapterTree(body), 'Formula').map((formula) => ({
    title: attribute(formula, 'title') as string,
    formula: mathml(attribute(formula, 'tex') as string, place, true),
    says: (formula.children ?? []).map((child) => html(child, reading, place)).join(''),
    source: attribute(formula, 'source') as string,
  }))

/** The words of the glossary that a chapter uses, as it writes them. */
export const termsOf = (body: string): readonly string[] =>
  named(chapterTree(body), 'Term').map((term) => {
    const word = attribute(term, 'word')
    const text = (term.children ?? []).map(({ value }) => String(value ?? '')).join('')
    return (typeof word === 'string' ? word : text).trim().toLowerCase()
  })
