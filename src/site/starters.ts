import type { Starter } from '../widgets/dummy/slips/Begin.tsx'
import type { Teaches } from '../widgets/dummy/slips/WishSlip.tsx'
import { leadOf } from '../widgets/state/state.ts'
import { allChapters, chapterPath } from './chapters.ts'
import { picturePath } from './pictures.ts'

/** Dummies of the garden that a maker may begin with, and the chapter whose picture shows each. */
const BEGIN = ['moth', 'owl', 'hedgehog'] as const

/** The address of a dummy's design, as it was read and checked when the site was built. */
export const dummyPath = (name: string): string => `/dummies/${name}.json`

/** The address of the file that a dummy was written in. */
export const dummyFile = (name: string): string => `/dummies/${name}.hingebook.json`

/**
 * The address that puts a dummy of the site on the table of the planning page, as a new one.
 * @param back where the maker can go back to
 */
export const takePath = (name: string, back = '/garden/'): string => `/dummy/?from=${name}&back=${back}`

/** Where the steps of a garden's dummy are. */
export const stepsPath = (name: string): string => `/steps/?from=${name}`

/** What an empty card offers to begin with. Throws an Error if no chapter shows one of them. */
export async function starters(): Promise<readonly Starter[]> {
  const chapters = await allChapters()
  return BEGIN.map((name) => {
    const chapter = chapters.find(({ data }) => data.dummy.id === name)
    if (!chapter) throw new Error(`no chapter has the dummy ${name}, which an empty card offers`)
    return { title: chapter.design.title, design: dummyPath(name), picture: picturePath(chapter.slug) }
  })
}

/** Which chapter teaches a kind of mechanism: the first whose bench leads with one. */
export async function teaches(): Promise<Teaches> {
  const chapters = await allChapters()
  const pairs = chapters.flatMap(({ slug, data, design, config }) => {
    const lead = leadOf(design, config)
    return lead ? [[lead.kind, { href: chapterPath(slug), title: data.title }] as const] : []
  })
  return Object.fromEntries(pairs.reverse())
}
