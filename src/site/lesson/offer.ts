/** What the page for classes offers, put together when the site is built. */
import { getCollection } from 'astro:content'
import { leadIn } from '../../class/chapter-for.ts'
import type { Ages, Lesson, PackWords } from '../../class/words.ts'
import type { Design } from '../../paper/index.ts'
import { parseDesign } from '../../paper/index.ts'
import type { CardOffer, ChapterOffer, ClassOffer } from '../../widgets/class/offer.ts'
import { DEFAULT_CAMERA } from '../../widgets/state/config.ts'
import type { Chapter } from '../chapters.ts'
import { allChapters, dummyNamed } from '../chapters.ts'
import { STANDING, scenes } from '../gallery.ts'
import { chapterWords } from './chapter-words.ts'

const ORDER: readonly Ages[] = ['7-9', '10-13', '14-up', 'adults']

async function lessons(): Promise<readonly Lesson[]> {
  const all = (await getCollection('lessons')).map(({ data }) => data as Lesson)
  return [...all].sort((a, b) => ORDER.indexOf(a.ages) - ORDER.indexOf(b.ages))
}

async function words(): Promise<PackWords> {
  const [pack] = await getCollection('pack')
  if (!pack) throw new Error('content/lessons/pack.json is not there')
  const glossary = Object.fromEntries(
    (await getCollection('glossary')).map(({ id, data }) => [id, data.says]),
  )
  return { ...(pack.data as Omit<PackWords, 'glossary'>), glossary }
}

const chapterCard = ({ slug, data, config }: Chapter): CardOffer => ({
  key: `chapter:${slug}`,
  title: data.title,
  dummy: data.dummy.id,
  chapter: slug,
  ...(config.lead === undefined ? {} : { lead: config.lead }),
  ...(config.point === undefined ? {} : { point: config.point }),
  seen: { camera: config.camera ?? DEFAULT_CAMERA, stand: config.stand ?? 'gutter' },
})

export async function classOffer(): Promise<ClassOffer> {
  const chapters = await allChapters()
  const designs = new Map<string, Design>()
  for (const { id, data } of await getCollection('dummies')) designs.set(id, parseDesign(data))
  const dummy = (name: string): Design => {
    const found = designs.get(name)
    if (!found) throw new Error(`there is no dummy ${name}`)
    return found
  }
  const offered = chapters.map(({ slug, data, entry, design, config }): ChapterOffer => {
    const kind = leadIn(design, config.lead)?.kind
    return {
      slug,
      ...(kind === undefined ? {} : { kind }),
      words: chapterWords({ title: data.title, ask: data.ask, body: entry.body ?? '' }, { design, dummy }),
    }
  })
  const garden = await dummyNamed('garden')
  const last = chapters.at(-1)
  const cards: readonly CardOffer[] = [
    ...chapters.map(chapterCard),
    ...(await scenes()).flatMap(({ name, design, chapter }): readonly CardOffer[] => {
      if (chapter.data.dummy.id === name) return []
      const { camera, stand } = STANDING[name] ?? {}
      const lead = leadIn(design)?.id
      return [
        {
          ...{ key: `garden:${name}`, title: design.title, dummy: name, chapter: chapter.slug },
          ...(lead === undefined ? {} : { lead }),
          seen: { camera: camera ?? DEFAULT_CAMERA, stand: stand ?? 'gutter' },
        },
      ]
    }),
    {
      ...{ key: 'garden:garden', title: garden.title, dummy: 'garden', chapter: last?.slug ?? '' },
      // The lantern stands in front of all, and every hand reaches it with a ruler.
      lead: 'lantern',
    },
  ]
  return { cards, chapters: offered, lessons: await lessons(), words: await words() }
}
