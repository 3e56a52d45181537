import { readFileSync } from 'node:fs'
import type { Choice } from '../../src/class/choice.ts'
import { USUAL } from '../../src/class/choice.ts'
import type { Order } from '../../src/class/class.ts'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { chaptersOnDisk, lessonOnDisk, packWordsOnDisk } from '../../src/site/lesson/on-disk.ts'

export const dummy = (name: string): Design =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

export const chapters = chaptersOnDisk()

export const words = packWordsOnDisk()

/** A lesson about a chapter's card. */
export function orderFor(slug: string, choice: Partial<Choice> = {}): Order {
  const chapter = chapters.find((one) => one.slug === slug)
  if (!chapter) throw new Error(`there is no chapter ${slug}`)
  const all = { ...USUAL, ...choice }
  const { design, subject, point } = chapter
  return {
    ...{ design, choice: all, words, lesson: lessonOnDisk(all.ages), chapter: chapter.words() },
    ...(subject === undefined ? {} : { lead: subject }),
    ...(point === undefined ? {} : { point }),
  }
}
