/** Which picture each page has beside a link to it. */
import { getCollection } from 'astro:content'
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
export const posterAlt = ({ over, title, shows }: NamedPoster): string => `${over}: ${title}. ${shows}`

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
    over: 'An interactive notebook',
    title: 'How pop-up paper works',
    shows: 'A card opens, and a garden by night stands up in it.',
    draw: async () => gardenPicture(await dummyNamed('garden'), GARDEN.from, CARD),
  },
  {
    name: 'chapters',
    over: 'From the first fold',
    title: 'Chapters',
    shows: 'A lantern stands up in a card.',
    draw: () => standing('lantern'),
  },
  {
    name: 'garden',
    over: 'Cards that work',
    title: 'The night garden',
    shows: 'Heron, moth, owl, lantern and hedgehog stand up in one wide open card.',
    draw: async () =>
      smallPicture(await dummyNamed('garden'), { opening: 140, camera: { turn: 14, tilt: 44 } }, CARD),
  },
  {
    name: 'dummy',
    over: 'Plan a card',
    title: 'My dummy',
    shows: 'An owl in white paper, tried before it is painted.',
    draw: async () =>
      smallPicture(white(await dummyNamed('owl')), { opening: 120, camera: { turn: -13, tilt: 28 } }, CARD),
  },
  {
    name: 'fault',
    over: 'It jams? It tears?',
    title: 'Find the fault',
    shows: 'A card that does not work, with a red mark where it is stuck.',
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
    over: 'For teachers',
    title: 'A lesson with paper',
    shows: 'The height of a part of a card is measured.',
    draw: () => measured('layers', 'body', { opening: 100 }),
  },
  {
    name: 'words',
    over: 'What makers say',
    title: 'Words',
    shows: 'A plain card with its folds marked in red.',
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
    over: 'To look up',
    title: 'Formulas, sizes and weights',
    shows: 'The height of a moth over its card is measured.',
    draw: () => measured('moth', 'moth', { opening: 110, camera: { turn: -11, tilt: 30 } }),
  },
  {
    name: 'subjects',
    over: 'From A to Z',
    title: 'Index',
    shows: 'Reeds stand up in a card.',
    draw: () => standing('reeds'),
  },
  {
    name: 'steps',
    over: 'How a card is made',
    title: 'Step by step',
    shows: 'A finger pushes a part of a card through.',
    draw: async () => stepFigure(await dummyNamed('beak'), 'reversing', CARD, { text: CARD_TEXT }),
  },
  {
    name: 'choose',
    over: 'Side by side',
    title: 'Choose a mechanism',
    shows: 'Many mechanisms in plain paper on one card.',
    draw: async () => {
      const { art: _, papers: __, ...plain } = await dummyNamed('garden')
      return smallPicture(plain, { opening: 113, camera: GARDEN.camera }, CARD)
    },
  },
  {
    name: 'plans',
    over: 'From a wish to a print',
    title: 'Plans',
    shows: 'A heron looks out of a card.',
    draw: () => standing('heron'),
  },
  {
    name: 'search',
    over: 'The whole book',
    title: 'Search',
    shows: 'A pond floats over an open card.',
    draw: () => standing('pond'),
  },
]

/** All posters there are. */
export async function allPosters(): Promise<readonly NamedPoster[]> {
  const chapters = (await allChapters()).map(
    (chapter): NamedPoster => ({
      name: chapter.slug,
      over: `Chapter ${chapter.data.number}`,
      title: chapter.data.title,
      shows: `The card “${chapter.design.title}” stands open.`,
      draw: () => chapterPicture(chapter, CARD),
    }),
  )
  const plans = (await allPlans()).map(
    ({ slug, data, design }): NamedPoster => ({
      name: `plan-${slug}`,
      over: `Plan ${data.number}`,
      title: data.title,
      shows: `The card “${design.title}” stands open.`,
      draw: () => smallPicture(design, { opening: data.opening, camera: { turn: -20, tilt: 36 } }, CARD),
    }),
  )
  return [...PAGES, ...chapters, ...plans]
}
