/** What the book's search looks through: pure text of chapters, cell by cell, and what else has a place of its own. */
import type { Findable } from '../widgets/search/findable.ts'
import { anchorOf } from './anchor.ts'

/** The cells that are looked through, as their pages name them. What answers a guess is not: it stays covered. */
const CELLS: Readonly<Record<string, string>> = {
  TryIt: 'Try it',
  Why: 'Why',
  MakeIt: 'Make it',
  MeasureYours: 'Measure yours',
  Challenge: 'Challenge',
  ForTeachers: 'For teachers',
}

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
  { title: chapter.title, where: 'Chapter', text: chapter.lead, href: chapter.href },
  ...Object.entries(CELLS).flatMap(([tag, name]): Findable[] => {
    const text = new RegExp(`<${tag}\\b[^>]*>([\\s\\S]*?)</${tag}>`).exec(chapter.body)?.[1]
    if (text === undefined) return []
    const href = `${chapter.href}#${anchorOf(name)}`
    return [{ title: name, where: chapter.title, text: plain(text), href }]
  }),
]
