/** What a lesson is made of, read from the files of content/: for the command line. */
import { readdirSync, readFileSync } from 'node:fs'
import type { Ages, ChapterWords, Lesson, PackWords } from '../../class/words.ts'
import type { Design, Flat } from '../../paper/index.ts'
import { parseDesign } from '../../paper/index.ts'
import { chapterWords } from './chapter-words.ts'

const CONTENT = new URL('../../../content/', import.meta.url)

const text = (path: string): string => readFileSync(new URL(path, CONTENT), 'utf8')

const dummy = (name: string): Design => parseDesign(JSON.parse(text(`dummies/${name}.hingebook.json`)))

export const lessonOnDisk = (ages: Ages): Lesson => JSON.parse(text(`lessons/ages-${ages}.json`)) as Lesson

export function packWordsOnDisk(): PackWords {
  const glossary = JSON.parse(text('glossary.json')) as readonly { id: string; says: string }[]
  const words = JSON.parse(text('lessons/pack.json')) as Omit<PackWords, 'glossary'>
  return { ...words, glossary: Object.fromEntries(glossary.map(({ id, says }) => [id, says])) }
}

export interface ChapterOnDisk {
  readonly slug: string
  readonly number: number
  readonly design: Design
  readonly subject: string | undefined
  readonly point: Flat | undefined
  words(): ChapterWords
}

/** A line of the front matter. */
const front = (source: string, key: string): string | undefined =>
  new RegExp(`^\\s*${key}:\\s*(.+)$`, 'm').exec(source.split('\n---\n')[0] ?? '')?.[1]

/** All chapters in their order. */
export function chaptersOnDisk(): readonly ChapterOnDisk[] {
  return readdirSync(new URL('chapters/', CONTENT))
    .filter((file) => file.endsWith('.mdx'))
    .map((file): ChapterOnDisk => {
      const body = text(`chapters/${file}`)
      const design = dummy(front(body, 'dummy') ?? '')
      const [, asks, answer] = /asks: "([^"]+)", answer: "([^"]+)"/.exec(front(body, 'ask') ?? '') ?? []
      const point = front(body, 'point')
      return {
        slug: file.replace(/\.mdx$/, ''),
        number: Number(front(body, 'number')),
        design,
        subject: front(body, 'subject'),
        point: point === undefined ? undefined : (JSON.parse(point) as Flat),
        words: () =>
          chapterWords(
            { title: front(body, 'title') ?? '', ask: asks && answer ? { asks, answer } : undefined, body },
            { design, dummy },
          ),
      }
    })
    .sort((a, b) => a.number - b.number)
}
