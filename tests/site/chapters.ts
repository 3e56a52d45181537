import { readdirSync, readFileSync } from 'node:fs'
import { runInNewContext } from 'node:vm'
import { mdxToMdast } from 'satteri'
import type { Design, Flat } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import type { Leaf } from '../../src/site/cells/grammar.ts'
import type { Goal } from '../../src/widgets/challenge/judge.ts'
import type { BenchConfig } from '../../src/widgets/state/config.ts'

const CONTENT = new URL('../../content/', import.meta.url)

export const slugs = readdirSync(new URL('chapters/', CONTENT))
  .filter((file) => file.endsWith('.mdx'))
  .map((file) => file.replace(/\.mdx$/, ''))

export const dummy = (name: string): Design =>
  parseDesign(JSON.parse(readFileSync(new URL(`dummies/${name}.hingebook.json`, CONTENT), 'utf8')))

export interface WrittenChapter {
  readonly tree: Leaf
  readonly design: Design
  readonly config: BenchConfig
}

/** A chapter's file as it stands. */
export const sourceOf = (slug: string): string =>
  readFileSync(new URL(`chapters/${slug}.mdx`, CONTENT), 'utf8')

/** A chapter as its author wrote it, with the design and the part of the bench that goals need. */
export function chapter(slug: string): WrittenChapter {
  const source = sourceOf(slug)
  const front = (key: string): string | undefined =>
    new RegExp(`^\\s*${key}:\\s*(.+)$`, 'm').exec(source.split('\n---\n')[0] ?? '')?.[1]
  const point = front('point')
  const subject = front('subject')
  return {
    tree: mdxToMdast(source, { features: { frontmatter: true } }) as Leaf,
    design: dummy(front('dummy') ?? ''),
    config: {
      opening: Number(front('opening')),
      ...(subject === undefined ? {} : { lead: subject }),
      ...(point === undefined ? {} : { point: JSON.parse(point) as Flat }),
    },
  }
}

/** Every word of one name, in the order of the page. */
export const all = (node: Leaf, name: string): Leaf[] => [
  ...(node.name === name ? [node] : []),
  ...(node.children ?? []).flatMap((child) => all(child, name)),
]

/** Plain text, each number of the kernel as `#`. */
export const plain = (node: Leaf): string => {
  if (node.type === 'text' || node.type === 'inlineCode') return String(node.value)
  if (node.name === 'Num') return '#'
  const text = (node.children ?? []).map(plain).join('')
  return node.type === 'paragraph' || node.type === 'listItem' ? `${text}\n` : text
}

/** An attribute's value; what stands in braces is run as the build runs it. */
export function attribute(node: Leaf, name: string): unknown {
  const value = node.attributes?.find((one) => one.name === name)?.value
  if (typeof value !== 'object' || value === null) return value
  return runInNewContext(`(${String((value as { value?: unknown }).value)})`)
}

export const goals = (tree: Leaf): readonly { goal: Goal; text: string }[] =>
  all(tree, 'Goal').map((node) => ({ goal: attribute(node, 'wants') as Goal, text: plain(node) }))
