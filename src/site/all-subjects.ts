import { getCollection } from 'astro:content'
import said from '../../content/index-words.json' with { type: 'json' }
import { allChoices } from './all-choices.ts'
import { allChapters, chapterPath } from './chapters.ts'
import { LOOKED_UP } from './findable.ts'
import { scenes } from './gallery.ts'
import { stepsPath } from './starters.ts'
import type { Subject } from './subjects.ts'
import { subjectsOf } from './subjects.ts'

/** The whole index of the book. */
export async function allSubjects(): Promise<readonly Subject[]> {
  const chapters = (await allChapters()).map(({ slug, data, entry }) => ({
    number: data.number,
    title: data.title,
    href: chapterPath(slug),
    materials: data.materials,
    body: entry.body ?? '',
  }))
  const glossary = (await getCollection('glossary')).map(({ id, data }) => ({ id, forms: data.forms }))
  const signs = (await getCollection('faults')).map(({ id, data }) => ({ id, see: data.see }))
  const mechanisms = (await allChoices()).map(
    ({ id, title, chapter: { href, title: told } }): Subject => ({
      name: title,
      places: [
        { label: said.beside, href: `/choose/#${id}` },
        { label: `${chapters.find((one) => one.href === href)?.number}`, href, title: told },
      ],
    }),
  )
  const cards = (await scenes()).map(
    ({ name, design, chapter }): Subject => ({
      name: said.card.replace('{title}', design.title),
      places: [
        { label: `${chapter.data.number}`, href: chapterPath(chapter.slug), title: chapter.data.title },
        { label: said.steps, href: stepsPath(name) },
      ],
    }),
  )
  const lookedUp = LOOKED_UP.map(
    ({ title, at }): Subject => ({
      name: title,
      places: [{ label: said.lookedUp, href: `/formulas/#${at}` }],
    }),
  )
  return subjectsOf(chapters, glossary, signs, [...mechanisms, ...cards, ...lookedUp])
}
