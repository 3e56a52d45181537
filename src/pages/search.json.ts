import { getCollection } from 'astro:content'
import type { APIRoute } from 'astro'
import { allSubjects } from '../site/all-subjects.ts'
import { wordAnchor } from '../site/anchor.ts'
import { allChapters, chapterPath } from '../site/chapters.ts'
import { cellsOf, LOOKED_UP } from '../site/findable.ts'
import { scenes } from '../site/gallery.ts'
import { allPlans, planPath } from '../site/plans.ts'
import { allTroubles } from '../site/troubles.ts'
import type { Findable } from '../widgets/search/findable.ts'

/** All that the search looks through, put together when the site is built. */
export const GET: APIRoute = async () => {
  const chapters = await allChapters()
  const places: Findable[] = [
    ...chapters.flatMap(({ slug, data, entry }) =>
      cellsOf({ title: data.title, lead: data.lead, href: chapterPath(slug), body: entry.body ?? '' }),
    ),
    ...(await getCollection('glossary')).map(({ id, data }) => ({
      title: id,
      where: `Word${data.forms.length > 0 ? `: ${data.forms.join(', ')}` : ''}`,
      text: data.says,
      href: `/words/#${wordAnchor(id)}`,
    })),
    ...LOOKED_UP.map(({ title, text, at }) => ({
      title,
      where: 'To look up',
      text,
      href: `/formulas/#${at}`,
    })),
    {
      title: 'Index',
      where: 'From A to Z',
      text: `What the book is about, and where: ${(await allSubjects()).map(({ name }) => name).join(', ')}.`,
      href: '/subjects/',
    },
    ...allTroubles(chapters).map(({ sign, cure, chapter, href }) => ({
      title: sign,
      where: `When it goes wrong: ${chapter.title}`,
      text: cure,
      href,
    })),
    ...(await allPlans()).map(({ slug, data }) => ({
      title: data.title,
      where: 'Plan',
      text: data.lead,
      href: planPath(slug),
    })),
    ...(await scenes()).map(({ name, design }) => ({
      title: design.title,
      where: 'A card of the garden, step by step',
      text: `Made of ${design.mechanisms.map(({ id }) => id.replaceAll('-', ' ')).join(', ')}.`,
      href: `/steps/?from=${name}`,
    })),
  ]
  return new Response(JSON.stringify(places), { headers: { 'Content-Type': 'application/json' } })
}
