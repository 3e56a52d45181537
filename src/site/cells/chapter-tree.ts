/** A chapter's own text as a tree, for whoever takes words from it: what stands there once is written nowhere else. */
import { mdxToMdast } from 'satteri'
import type { Design } from '../../paper/index.ts'
import type { Leaf } from './grammar.ts'
import type { Ask } from './number.ts'
import { answer, inText } from './number.ts'

/** The text of a chapter, with its front matter or without. */
export const chapterTree = (body: string): Leaf =>
  mdxToMdast(body, { features: { frontmatter: true } }) as Leaf

/** Gives the design of a dummy by its name. */
export type DummyOf = (name: string) => Design

/** Where the numbers of a text come from. */
export interface Reading {
  readonly design: Design
  readonly dummy: DummyOf
}

/** For cells that take their numbers from their chapter's own card alone. Throws an Error that names the chapter's file. */
export const ownNumbers = (design: Design, slug: string, cell: string): Reading => ({
  design,
  dummy: (name) => {
    throw new Error(
      `content/chapters/${slug}.mdx: a ${cell} takes its numbers from its own card, not from ${name}.`,
    )
  },
})

/** Every cell or word of a name within a part of the text. */
export const named = (node: Leaf, name: string): readonly Leaf[] => [
  ...(node.name === name ? [node] : []),
  ...(node.children ?? []).flatMap((child) => named(child, name)),
]

/** The first of a name that is deepest in none of its like. Throws an Error that names it. */
export function cell(tree: Leaf, name: string): Leaf {
  const [found] = named(tree, name)
  if (!found) throw new Error(`the chapter has no <${name}>`)
  return found
}

/** What stands in braces as an author writes it: a number, or names with numbers. */
function inBraces(text: string): unknown {
  return JSON.parse(text.replace(/([{,]\s*)([A-Za-z]\w*)\s*:/g, '$1"$2":'))
}

/** What an attribute holds: words, or what stands in its braces. */
export function attribute(node: Leaf, name: string): unknown {
  const value = node.attributes?.find((one) => one.name === name)?.value
  if (typeof value !== 'object' || value === null) return value
  return inBraces(String((value as { value?: unknown }).value))
}

/** Whether an attribute stands there, bare or not. */
export const has = (node: Leaf, name: string): boolean =>
  node.attributes?.some((one) => one.name === name) ?? false

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

/** A part of the text in one line, numbers as its page shows them. */
export const line = (node: Leaf, reading: Reading): string => plain(node, reading).replace(/\s+/g, ' ').trim()
