/** Which picture each page has beside a link to it. */
import { getCollection } from 'astro:content'
import { chapter as chapterNumbered } from '../../../content/words/site/book.ts'
import * as says from '../../../content/words/site/posters.ts'
import type { Drawing } from '../../drawing/pen/marks.ts'
import { stepFigure } from '../../drawing/steps/steps.ts'
import { view } from '../../drawing/view/view.ts'
import type { Design } from '../../paper/index.ts'
import { allChapters, dummyNamed } from '../chapters.ts'
import { faultPicture } from '../fault-picture.ts'
import { STANDING, USUAL } from '../gallery.ts'
import type { Standing } from '../pictures.ts'
import { chapterPicture, GARDEN, gardenPicture, smallPicture } from '../pictures.ts'
import { allPlans } from '../plans.ts'
import { wordPicture } from '../word-picture.ts'
import type { Poster } from './poster.ts'
import { CARD, CARD_TEXT } from './poster.ts'

/** A poster that is drawn when it is asked for. */
export interface NamedPoster extends Omit<Poster, 'drawing'> {
  /** As in its address. */
  readonly name: string
  /** What is seen beside the title, for those who do not see it. */
  readonly shows: string
  readonly draw: () => Promise<Drawing> | Drawing
}

export const posterPath = (name: string): string => `/previews/${name}.png`

/** What a poster shows, in words. */
export const posterAlt = ({ over, title, shows }: NamedPoster): string => says.alt(over, title, shows)

/** A dummy in white paper, as one tries it first. */
const white = ({ art: _, ...design }: Design): Design => ({
  ...design,
  papers: Object.fromEntries(['page', ...design.mechanisms.map(({ id }) => id)].map((of) => [of, 'paper'])),
})

const standing = async (name: string, as: Standing = STANDING[name] ?? USUAL): Promise<Drawing> =>
  smallPicture(await dummyNamed(name), as, CARD)

/** A card with the rise of one of its parts measured. */
const measured = async (name: string, rise: string, { opening, camera }: Standing): Promise<Drawing> =>
  view(await dummyNamed(name), opening, { turn: -26, tilt: 32, ...camera, far: 1.7 }, CARD, {
    frame: [opening],
    rise: [rise],
    text: CARD_TEXT,
  })

/** Pages that are no chapter and no plan. */
const PAGES: readonly NamedPoster[] = [
  {
    name: 'home',
    ...says.pages.home,
    draw: async () => gardenPicture(await dummyNamed('garden'), GARDEN.from, CARD),
  },
  {
    name: 'chapters',
    ...says.pages.chapters,
    draw: () => standing('lantern'),
  },
  {
    name: 'garden',
    ...says.pages.garden,
    draw: async () =>
      smallPicture(await dummyNamed('garden'), { opening: 140, camera: { turn: 14, tilt: 44 } }, CARD),
  },
  {
    name: 'dummy',
    ...says.pages.dummy,
    draw: async () =>
      smallPicture(white(await dummyNamed('owl')), { opening: 120, camera: { turn: -13, tilt: 28 } }, CARD),
  },
  {
    name: 'fault',
    ...says.pages.fault,
    draw: async () => {
      const faults = await getCollection('faults')
      const picture = faults.find(({ id }) => id === 'jams')?.data.picture
      if (!picture)
        throw new Error('content/faults.json: the preview of the page shows jams, which has no picture')
      const dummies = await getCollection('dummies')
      const raw = dummies.find(({ id }) => id === picture.dummy)?.data ?? {}
      return faultPicture(raw, picture, { size: CARD, text: CARD_TEXT })
    },
  },
  {
    name: 'class',
    ...says.pages.class,
    draw: () => measured('layers', 'body', { opening: 100 }),
  },
  {
    name: 'words',
    ...says.pages.words,
    draw: async () => {
      const word = (await getCollection('glossary')).find(({ id }) => id === 'vertex')
      if (!word)
        throw new Error('content/glossary.json: the preview of its page shows vertex, which is not there')
      const { picture } = word.data
      return wordPicture(await dummyNamed(picture.dummy), picture, CARD)
    },
  },
  {
    name: 'formulas',
    ...says.pages.formulas,
    draw: () => measured('moth', 'moth', { opening: 110, camera: { turn: -11, tilt: 30 } }),
  },
  {
    name: 'subjects',
    ...says.pages.subjects,
    draw: () => standing('reeds'),
  },
  {
    name: 'steps',
    ...says.pages.steps,
    draw: async () => stepFigure(await dummyNamed('beak'), 'reversing', CARD, { text: CARD_TEXT }),
  },
  {
    name: 'choose',
    ...says.pages.choose,
    draw: async () => {
      const { art: _, papers: __, ...plain } = await dummyNamed('garden')
      return smallPicture(plain, { opening: 113, camera: GARDEN.camera }, CARD)
    },
  },
  {
    name: 'plans',
    ...says.pages.plans,
    draw: () => standing('heron'),
  },
  {
    name: 'search',
    ...says.pages.search,
    draw: () => standing('pond'),
  },
]

/** All posters there are. */
export async function allPosters(): Promise<readonly NamedPoster[]> {
  const chapters = (await allChapters()).map(
    (chapter): NamedPoster => ({
      name: chapter.slug,
      over: chapterNumbered(chapter.data.number),
      title: chapter.data.title,
      shows: says.cardStandsOpen(chapter.design.title),
      draw: () => chapterPicture(chapter, CARD),
    }),
  )
  const plans = (await allPlans()).map(
    ({ slug, data, design }): NamedPoster => ({
      name: `plan-${slug}`,
      over: says.plan(data.number),
      title: data.title,
      shows: says.cardStandsOpen(design.title),
      draw: () => smallPicture(design, { opening: data.opening, camera: { turn: -20, tilt: 36 } }, CARD),
    }),
  )
  return [...PAGES, ...chapters, ...plans]
}
