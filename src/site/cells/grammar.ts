import { fileURLToPath } from 'node:url'
import type { MdastPluginDefinition } from 'satteri'
import type { Attribute, Word } from './vocabulary.ts'
import { ANYWHERE, CELLS, CHAPTER, PLAN_CELLS, WORDS } from './vocabulary.ts'

/** What the grammar reads of a chapter's tree; the real nodes carry more. */
export interface Leaf {
  readonly type: string
  readonly name?: string | null
  readonly value?: unknown
  readonly attributes?: readonly { readonly type: string; readonly name?: string; readonly value?: unknown }[]
  readonly children?: readonly Leaf[]
  readonly position?: { readonly start: { readonly line: number; readonly column: number } } | undefined
}

/** The first thing an author got wrong, as a sentence that says what was received and what is expected. */
export interface Blot {
  readonly line: number
  readonly column: number
  readonly sentence: string
}

const isWord = (node: Leaf): boolean =>
  (node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement') && /^[A-Z]/.test(node.name ?? '')

/** Comments, front matter and white space say nothing. */
const isSilent = (node: Leaf): boolean =>
  node.type === 'yaml' ||
  (node.type === 'mdxFlowExpression' && /^\s*(\/\*[\s\S]*\*\/)?\s*$/.test(String(node.value))) ||
  (node.type === 'text' && String(node.value).trim() === '')

const inWords = (list: readonly string[], last = 'or'): string =>
  list.length < 2 ? list.join('') : `${list.slice(0, -1).join(', ')} ${last} ${list.at(-1)}`

const tags = (names: readonly string[], last?: string): string =>
  inWords(
    names.map((name) => `<${name}>`),
    last,
  )

/** The known name that differs least from a mistyped one (edits: Levenshtein 1966), if it is near at all. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  const edits = (a: string, b: string): number => {
    let row = Array.from({ length: b.length + 1 }, (_, j) => j)
    for (let i = 1; i <= a.length; i++) {
      const next = [i]
      for (let j = 1; j <= b.length; j++)
        next.push(
          Math.min(
            (row[j] ?? 0) + 1,
            (next[j - 1] ?? 0) + 1,
            (row[j - 1] ?? 0) + (a[i - 1]?.toLowerCase() === b[j - 1]?.toLowerCase() ? 0 : 1),
          ),
        )
      row = next
    }
    return row[b.length] ?? 0
  }
  const ranked = known.map((word) => ({ word, off: edits(name, word) })).sort((a, b) => a.off - b.off)
  const [best] = ranked
  return best && best.off <= Math.max(2, name.length / 3) ? best.word : undefined
}

const meant = (name: string, known: readonly string[], show: (word: string) => string): string => {
  const near = nearest(name, known)
  return near === undefined ? '' : ` Did you mean ${show(near)}?`
}

class Blotted extends Error {
  readonly node: Leaf
  constructor(node: Leaf, sentence: string) {
    super(sentence)
    this.node = node
  }
}

const literal = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value
  const text = String((value as { value?: unknown }).value).trim()
  if (/^-?(\d+\.?\d*|\.\d+)$/.test(text)) return Number(text)
  if (text === 'true' || text === 'false') return text === 'true'
  const quoted = /^(['"`])([^'"`$]*)\1$/.exec(text)
  return quoted ? quoted[2] : value
}

const expected = ({ takes }: Attribute, name: string): string => {
  if (takes === 'words') return `words, as in ${name}="..."`
  if (takes === 'number') return `a number in braces, as in ${name}={90}`
  if (takes === 'flag') return `nothing after its name: just ${name}`
  if (takes === 'value') return `a value in braces, as in ${name}={{ ... }}`
  return inWords(takes.map((word) => `"${word}"`))
}

const fits = ({ takes }: Attribute, received: unknown): boolean => {
  const value = literal(received)
  const open = typeof value === 'object' && value !== null // an expression: known only when it runs
  if (takes === 'words') return open || (typeof value === 'string' && value.trim() !== '')
  if (takes === 'number') return open || typeof value === 'number'
  if (takes === 'flag') return value === null || value === undefined || typeof value === 'boolean'
  if (takes === 'value') return open
  return typeof value === 'string' && takes.includes(value)
}

const shown = (value: unknown): string => {
  if (value === null || value === undefined) return 'nothing'
  return typeof value === 'object'
    ? `{${String((value as { value?: unknown }).value)}}`
    : `"${String(value)}"`
}

function checkAttributes(node: Leaf, name: string, word: Word): void {
  const known = Object.keys(word.attributes)
  const given = new Set<string>()
  for (const { name: attribute, value } of node.attributes ?? []) {
    if (attribute === undefined)
      throw new Blotted(node, `<${name}> spreads its attributes; write each one by name instead.`)
    const rule = word.attributes[attribute]
    if (!rule) {
      const list = known.length === 0 ? 'It takes none.' : `It takes ${inWords(known, 'and')}.`
      throw new Blotted(
        node,
        `<${name}> has the attribute ${attribute}, which it does not know. ${list}${meant(attribute, known, String)}`,
      )
    }
    if (!fits(rule, value))
      throw new Blotted(
        node,
        `<${name}> has ${attribute} with ${shown(value)}; it expects ${expected(rule, attribute)}.`,
      )
    given.add(attribute)
  }
  for (const [attribute, rule] of Object.entries(word.attributes))
    if (rule.needed && !given.has(attribute))
      throw new Blotted(
        node,
        `<${name}> lacks ${attribute}: ${rule.says} It expects ${expected(rule, attribute)}.`,
      )
}

/** Words that stand directly in a node, looking through paragraphs, lists and emphasis. */
function wordsIn(node: Leaf): Leaf[] {
  return (node.children ?? []).flatMap((child) => (isWord(child) ? [child] : wordsIn(child)))
}

/** Whether text stands in a node beside its words. */
const hasText = (node: Leaf): boolean =>
  (node.children ?? []).some(
    (child) => !isWord(child) && !isSilent(child) && (child.type === 'text' || hasText(child)),
  )

function checkWord(node: Leaf, within: string): void {
  const name = node.name ?? ''
  const word = WORDS[name]
  if (!word)
    throw new Blotted(
      node,
      `<${name}> is not a word of this book.${meant(name, Object.keys(WORDS), (near) => `<${near}>`)} It knows ${inWords(Object.keys(WORDS), 'and')}.`,
    )
  if (!word.stands.includes(within) && !(word.stands.includes(ANYWHERE) && within !== CHAPTER)) {
    const places = word.stands.map((place) =>
      place === CHAPTER
        ? 'at the top level of the chapter'
        : place === ANYWHERE
          ? 'in the text of a cell'
          : `in <${place}>`,
    )
    throw new Blotted(
      node,
      `<${name}> stands ${within === CHAPTER ? 'at the top level of the chapter' : `in <${within}>`}; it belongs ${inWords(places)}.`,
    )
  }
  checkAttributes(node, name, word)
  const inside = wordsIn(node)
  for (const child of inside) checkWord(child, name)
  for (const [needed, least] of Object.entries(word.needs ?? {})) {
    const count = inside.filter((child) => child.name === needed).length
    if (count < least)
      throw new Blotted(
        node,
        `<${name}> holds ${count === 0 ? 'no' : `only ${count}`} <${needed}>; it needs ${least === 1 ? 'one at least' : `at least ${least}`}. ${WORDS[needed]?.says}`,
      )
  }
  for (const first of word.first ?? []) {
    const [place, other] = [
      inside.findIndex((child) => child.name === first),
      inside.findIndex((child) => word.holds?.includes(child.name ?? '') && child.name !== first),
    ]
    const late = inside[place]
    if (late && other >= 0 && place > other)
      throw new Blotted(
        late,
        `<${first}> stands after <${inside[other]?.name}>; in <${name}> it comes first.`,
      )
  }
  if (!word.text && (hasText(node) || inside.length > 0))
    throw new Blotted(
      node,
      `<${name}> holds text, which it cannot show; close it at once, as in <${name} />.`,
    )
}

/** @param cells the cells that it has, each once, in this order */
function checkChapter(root: Leaf, cells: readonly string[]): void {
  const seen: string[] = []
  for (const node of root.children ?? []) {
    if (isSilent(node)) continue
    if (node.type === 'mdxjsEsm')
      throw new Blotted(node, 'The chapter imports or exports something; its words are there without that.')
    if (!isWord(node))
      throw new Blotted(node, `Text stands outside every cell; it belongs in ${tags(cells)}.`)
    checkWord(node, CHAPTER)
    const name = node.name ?? ''
    if (!cells.includes(name))
      throw new Blotted(node, `<${name}> stands in a text that has ${tags(cells, 'and')} alone.`)
    if (seen.includes(name))
      throw new Blotted(node, `<${name}> stands here a second time; a chapter has each cell once.`)
    const before = cells.slice(cells.indexOf(name) + 1).find((later) => seen.includes(later))
    if (before)
      throw new Blotted(
        node,
        `<${name}> stands after <${before}>; the order of cells is ${tags(cells, 'and')}.`,
      )
    seen.push(name)
  }
  const missing = cells.find((cell) => !seen.includes(cell))
  if (missing)
    throw new Blotted(
      root.children?.at(-1) ?? root,
      `The chapter ends without <${missing}>. ${WORDS[missing]?.says} A chapter has ${tags(cells, 'and')}.`,
    )
}

/** What an author got wrong first, or null. */
export function blotOf(root: Leaf, cells = CELLS): Blot | null {
  try {
    checkChapter(root, cells)
    return null
  } catch (error) {
    if (!(error instanceof Blotted)) throw error
    const { line = 1, column = 1 } = error.node.position?.start ?? {}
    return { line, column, sentence: error.message }
  }
}

/** The chapter's path as it is written in messages. */
export function pathOf(file: URL | undefined): string {
  const path = file ? fileURLToPath(file).replaceAll('\\', '/') : 'chapter'
  const from = path.lastIndexOf('/content/')
  return from < 0 ? path : path.slice(from + 1)
}

/** An error that the build shows with file and line. */
export class ChapterError extends Error {
  readonly line: number
  readonly column: number
  constructor(path: string, { line, column, sentence }: Blot) {
    super(`${path}:${line} ${sentence}`)
    this.name = 'ChapterError'
    this.line = line
    this.column = column
  }
}

/**
 * Checks a chapter while it is read, and tells every word where it stands (`place`, as `path:line`),
 * so that what goes wrong only later can still name the line.
 */
export const cellGrammar: MdastPluginDefinition = {
  name: 'hingebook-cells',
  options: { position: true },
  before(root, { fileURL, sourceFormat }) {
    if (sourceFormat !== 'mdx') return
    const path = pathOf(fileURL)
    const blot = blotOf(root as Leaf, path.startsWith('content/plans/') ? PLAN_CELLS : CELLS)
    if (blot) throw new ChapterError(path, blot)
  },
  mdxJsxFlowElement: (node, { fileURL }) => placed(node, fileURL),
  mdxJsxTextElement: (node, context) => {
    const after = placed(node, context.fileURL)
    const next = context.parent(node).children[(context.indexOf(node) ?? 0) + 1]
    const mark =
      (node.name === 'Term' || node.name === 'Phrase') && next?.type === 'text'
        ? (/^[.,;:!?)’”]+/.exec(next.value)?.[0] ?? '')
        : ''
    if (next?.type !== 'text' || mark === '') return after
    // A line must not begin with a full stop: the word takes the mark that follows it.
    context.setProperty(next, 'value', next.value.slice(mark.length))
    return {
      ...after,
      attributes: [...after.attributes, { type: 'mdxJsxAttribute', name: 'mark', value: mark }],
    }
  },
}

function placed<
  N extends {
    name?: string | null
    attributes: unknown[]
    position?: { start: { line: number; column: number } } | undefined
  },
>(node: Readonly<N>, file: URL | undefined): N {
  const { line = 1, column = 1 } = node.position?.start ?? {}
  const place = {
    type: 'mdxJsxAttribute',
    name: 'place',
    value: `${pathOf(file)}:${line}`,
  }
  // Several phrases may stand on one line.
  const nth = node.name === 'Phrase' ? [{ type: 'mdxJsxAttribute', name: 'column', value: `:${column}` }] : []
  return { ...node, attributes: [...node.attributes, place, ...nth] }
}
