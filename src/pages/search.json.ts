import { getCollection } from 'astro:content'
import type { APIRoute } from 'astro'
import * as says from '../../content/words/site/findable.ts'
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
      where: data.forms.length > 0 ? says.wordAlso(data.forms) : says.word,
      text: data.says,
      href: `/words/#${wordAnchor(id)}`,
    })),
    ...LOOKED_UP.map(({ title, text, at }) => ({
      title,
      where: says.toLookUp,
      text,
      href: `/formulas/#${at}`,
    })),
    {
      title: says.index,
      where: says.fromAToZ,
      text: says.indexTells((await allSubjects()).map(({ name }) => name)),
      href: '/subjects/',
    },
    ...allTroubles(chapters).map(({ sign, cure, chapter, href }) => ({
      title: sign,
      where: says.goesWrongIn(chapter.title),
      text: cure,
      href,
    })),
    ...(await allPlans()).map(({ slug, data }) => ({
      title: data.title,
      where: says.plan,
      text: data.lead,
      href: planPath(slug),
    })),
    ...(await scenes()).map(({ name, design }) => ({
      title: design.title,
      where: says.cardOfGarden,
      text: says.madeOf(design.mechanisms.map(({ id }) => id.replaceAll('-', ' '))),
      href: `/steps/?from=${name}`,
    })),
  ]
  return new Response(JSON.stringify(places), { headers: { 'Content-Type': 'application/json' } })
}
