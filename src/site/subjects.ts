/** The index: what the book is about, from A to Z, and where. It is put together from the content when the site is built. */

import said from '../../content/index-words.json' with { type: 'json' }
import { language } from '../../content/words/site/book.ts'
import { isPlural, signNamed, sortedBy, thingsIn } from '../../content/words/site/index-language.ts'
import { anchorOf, wordAnchor } from './anchor.ts'
import { attribute, chapterTree, named } from './cells/chapter-tree.ts'
import type { Leaf } from './cells/grammar.ts'
import { CELL_NAMES } from './cells/names.ts'

/** A place that an entry leads to. */
export interface Place {
  readonly label: string
  readonly href: string
  /** The chapter's title, where the label has its number alone. */
  readonly title?: string
}

export interface Subject {
  readonly name: string
  readonly places: readonly Place[]
}

/** What the index reads of a chapter. */
export interface Indexed {
  readonly number: number
  readonly title: string
  readonly href: string
  readonly materials: readonly string[]
  readonly body: string
}

/** A word of the glossary. */
export interface Word {
  readonly id: string
  readonly forms: readonly string[]
}

/** A sign of a fault, by its key in the chapters. */
export interface Sign {
  readonly id: string
  readonly see: string
}

const inCell = ({ number, title, href }: Indexed, name: string): Place => ({
  label: `${number}, ${name}`,
  href: `${href}#${anchorOf(name)}`,
  title,
})

/** A chapter's cells with their names on the page, in their order. */
function cellsIn(body: string): readonly { readonly name: string; readonly node: Leaf }[] {
  const names: Readonly<Record<string, string>> = CELL_NAMES
  return (chapterTree(body).children ?? []).flatMap((node) => {
    const name = names[node.name ?? '']
    return name === undefined ? [] : [{ name, node }]
  })
}

const textOf = (node: Leaf): string =>
  node.type === 'text' ? String(node.value) : (node.children ?? []).map(textOf).join('')

/** The word that a `Term` stands for, in small letters. */
const termOf = (term: Leaf): string => {
  const word = attribute(term, 'word')
  return (typeof word === 'string' ? word : textOf(term)).trim().toLowerCase()
}

/** Each word of the trade, and where each chapter first speaks of it. */
function words(glossary: readonly Word[], chapters: readonly Indexed[]): readonly Subject[] {
  const read = chapters.map((chapter) => ({
    chapter,
    cells: cellsIn(chapter.body).map(({ name, node }) => ({
      name,
      terms: new Set(named(node, 'Term').map(termOf)),
    })),
  }))
  return glossary.map(({ id, forms }) => {
    const all = [id, ...forms].map((form) => form.toLowerCase())
    return {
      name: id,
      places: [
        { label: said.means, href: `/words/#${wordAnchor(id)}` },
        ...read.flatMap(({ chapter, cells }) => {
          const first = cells.find(({ terms }) => all.some((form) => terms.has(form)))
          return first ? [inCell(chapter, first.name)] : []
        }),
      ],
    }
  })
}

/** Where a word of the glossary has a form that nobody would look for beside it: `facet` leads to `panel`. */
const otherWords = (glossary: readonly Word[]): readonly Subject[] =>
  glossary.flatMap(({ id, forms }) =>
    forms
      .filter((form) => form[0]?.toLowerCase() !== id[0]?.toLowerCase() && !isPlural(form, forms))
      .map((form) => ({
        name: form,
        places: [{ label: said.see.replace('{word}', id), href: `#${subjectAnchor(id)}` }],
      })),
  )

/** What has to lie on the table, and which chapters want it. */
const things = (chapters: readonly Indexed[]): readonly Subject[] =>
  chapters.flatMap((chapter) =>
    chapter.materials
      .flatMap(thingsIn)
      .map((name) => ({ name, places: [inCell(chapter, CELL_NAMES.MakeIt)] })),
  )

/** What the paragraphs of a chapter's reasons are about, where it says so in bold at their head. */
const heads = (chapters: readonly Indexed[]): readonly Subject[] =>
  chapters.flatMap((chapter) =>
    cellsIn(chapter.body)
      .filter(({ name }) => name === CELL_NAMES.Why)
      .flatMap(({ name, node }) =>
        (node.children ?? []).flatMap(({ type, children = [] }) => {
          const [first] = children
          return type === 'paragraph' && first?.type === 'strong'
            ? [{ name: textOf(first).replace(/\.$/, ''), places: [inCell(chapter, name)] }]
            : []
        }),
      ),
  )

/** Rows of this one have nothing in common: each stands for itself. */
const ELSE = 'else'

/** What a maker may see go wrong, and every row of a chapter that tells of it. */
function troubles(signs: readonly Sign[], chapters: readonly Indexed[]): readonly Subject[] {
  const rows = chapters.flatMap(({ number, title, href, body }) =>
    named(chapterTree(body), 'Slip').map((slip) => {
      const sign = String(attribute(slip, 'sign'))
      const said = sign.replace(/\.$/, '')
      const isElse = attribute(slip, 'fault') === ELSE
      return {
        fault: attribute(slip, 'fault'),
        said,
        at: {
          label: `${number}, ${isElse ? CELL_NAMES.GoesWrong : said}`,
          href: `${href}#${anchorOf(sign)}`,
          title,
        },
      }
    }),
  )
  return [
    ...signs
      .filter(({ id }) => id !== ELSE)
      .map(({ id, see }) => ({
        name: signNamed(see),
        places: rows.filter(({ fault }) => fault === id).map(({ at }) => at),
      })),
    ...rows.filter(({ fault }) => fault === ELSE).map(({ said, at }) => ({ name: said, places: [at] })),
  ]
}

export { sortedBy, thingsIn }

export const subjectAnchor = (name: string): string => anchorOf(name)

const order = new Intl.Collator(language, { sensitivity: 'base', numeric: true }).compare

/** One entry for each name, however it is spelled, its places in the order in which they came, each once. */
function merged(subjects: readonly Subject[]): readonly Subject[] {
  const byName = new Map<string, { name: string; places: Map<string, Place> }>()
  for (const { name, places } of subjects) {
    if (places.length === 0) continue
    const key = name.toLowerCase()
    const one = byName.get(key) ?? { name, places: new Map<string, Place>() }
    for (const place of places) one.places.set(place.href, place)
    byName.set(key, one)
  }
  return [...byName.values()].map(({ name, places }) => ({ name, places: [...places.values()] }))
}

/**
 * All of the index, in its order.
 * @param others what has a place of its own elsewhere: mechanisms, cards, what one looks up
 */
export const subjectsOf = (
  chapters: readonly Indexed[],
  glossary: readonly Word[],
  signs: readonly Sign[],
  others: readonly Subject[],
): readonly Subject[] =>
  merged([
    ...words(glossary, chapters),
    ...otherWords(glossary),
    ...others,
    ...things(chapters),
    ...heads(chapters),
    ...troubles(signs, chapters),
  ]).toSorted((a, b) => order(sortedBy(a.name), sortedBy(b.name)))

/** The index by first letters. */
export function byLetter(subjects: readonly Subject[]): readonly (readonly [string, readonly Subject[]])[] {
  const letters = new Map<string, Subject[]>()
  for (const subject of subjects) {
    const letter = (sortedBy(subject.name)[0] ?? '').toUpperCase()
    letters.set(letter, [...(letters.get(letter) ?? []), subject])
  }
  return [...letters]
}
