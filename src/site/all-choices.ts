import { getCollection } from 'astro:content'
import { chapterTitled } from '../../content/words/site/book.ts'
import * as says from '../../content/words/site/choose.ts'
import { SIDE_BY_SIDE, sideBySide } from '../drawing/view/side-by-side.ts'
import type { Design } from '../paper/index.ts'
import { parseDesign } from '../paper/index.ts'
import type { Choice } from './Choices.tsx'
import { allChapters, chapterPath } from './chapters.ts'
import { factsOf, workOf } from './choice-facts.ts'
import { picturePath } from './pictures.ts'

/** A mechanism to choose, with its card. */
export interface ChoiceTold extends Choice {
  readonly design: Design
}

/** The mechanisms in the order of their chapters, each with the words of the content and the numbers of its card. */
export async function allChoices(): Promise<readonly ChoiceTold[]> {
  const chapters = await allChapters()
  const told = (await getCollection('choices')).map(({ id, data }) => {
    const design = parseDesign(data.design)
    const chapter = chapters.find(({ slug }) => slug === data.chapter.id)
    if (!chapter) throw new Error(`content/choices.json: ${id} names no chapter`)
    const choice: ChoiceTold = {
      id,
      title: data.title,
      design,
      picture: picturePath(`choose-${id}`),
      says: sideBySide(design, SIDE_BY_SIDE.from).says,
      does: data.does,
      facts: [[says.way, data.goes], ...factsOf(design, data.subject), [says.strength, data.strong]],
      ways: data.ways,
      ...workOf(design),
      chapter: {
        href: chapterPath(chapter.slug),
        title: chapterTitled(chapter.data.number, chapter.data.title),
      },
    }
    return { choice, number: chapter.data.number }
  })
  return told
    .sort((a, b) => a.number - b.number || a.choice.title.localeCompare(b.choice.title))
    .map(({ choice }) => choice)
}
