/** What the book's search looks through: pure text of chapters, cell by cell, and what else has a place of its own. */

import lookedUp from '../../content/looked-up.json' with { type: 'json' }
import * as says from '../../content/words/site/findable.ts'
import type { Findable } from '../widgets/search/findable.ts'
import { anchorOf } from './anchor.ts'
import type { CellWord } from './cells/names.ts'
import { CELL_NAMES } from './cells/names.ts'

/** The cells that are looked through. What answers a guess is not: it stays covered. */
const CELLS: readonly CellWord[] = ['TryIt', 'Why', 'MakeIt', 'MeasureYours', 'Challenge', 'ForTeachers']

/** What one looks up with a pencil in the hand, and where it stands on its page. */
export const LOOKED_UP: readonly { readonly title: string; readonly text: string; readonly at: string }[] =
  lookedUp

/** A text of a chapter without its marks: words alone. Sums and numbers that the model gives are left out. */
export const plain = (text: string): string =>
  text
    .replace(/<(Answer|Guess|Formula)\b[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]*?\bsays="([^"]*)"[^>]*>/g, ' $1. ')
    .replace(/<(?:"[^"]*"|\{[^}]*\}|[^>])*>/g, ' ')
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/[*_`#]/g, '')
    .replace(/\s+/g, ' ')
    .replace(/ ([.,:;?])/g, '$1')
    .trim()

/** The cells of a chapter as places to find. */
export const cellsOf = (chapter: {
  readonly title: string
  readonly href: string
  readonly lead: string
  readonly body: string
}): readonly Findable[] => [
  { title: chapter.title, where: says.chapter, text: chapter.lead, href: chapter.href },
  ...CELLS.flatMap((tag): Findable[] => {
    const name = CELL_NAMES[tag]
    const text = new RegExp(`<${tag}\\b[^>]*>([\\s\\S]*?)</${tag}>`).exec(chapter.body)?.[1]
    if (text === undefined) return []
    const href = `${chapter.href}#${anchorOf(name)}`
    return [{ title: name, where: chapter.title, text: plain(text), href }]
  }),
]
