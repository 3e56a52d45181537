import { getCollection } from 'astro:content'
import type { Design } from '../paper/index.ts'
import type { Chapter } from './chapters.ts'
import { allChapters, dummyNamed } from './chapters.ts'
import type { Hands } from './hands.ts'
import { handsOf, levelOf } from './hands.ts'
import type { Standing } from './pictures.ts'
import { picturePath } from './pictures.ts'

/** A dummy of the garden with all that its card on the page says. */
export interface Shown {
  readonly name: string
  readonly design: Design
  readonly picture: string
  readonly hands: Hands
  /** The chapter that shows how it goes. */
  readonly chapter: Chapter
  /** How long it takes, where a chapter tells how it is made. */
  readonly time: string | null
  /** Its name among the sheets. */
  readonly sheet: string
}

/** How those stand that no chapter has on its own bench; the others as usual. */
export const STANDING: Readonly<Record<string, Standing>> = {
  heron: { opening: 96, camera: { turn: -13, tilt: 10 }, stand: 'edge' },
  lantern: { opening: 100, camera: { turn: -24, tilt: 34 } },
  reeds: { opening: 100, camera: { turn: -24, tilt: 36 } },
  pond: { opening: 112, camera: { turn: -20, tilt: 40 } },
}

/** As a dummy stands that has no place of its own. */
export const USUAL: Standing = { opening: 100 }

/** A scene is a card with something on it and a picture drawn on it. */
const isScene = ({ art, mechanisms }: Design): boolean => art !== undefined && mechanisms.length > 0

/** The chapters, by slug, that teach what is on a dummy which none of them names. */
const TAUGHT: Readonly<Record<string, string>> = {
  reeds: 'cut-on-the-new-folds',
  pond: 'tents-and-floating-layers',
}

/** The chapter whose card it is; else the one that speaks of it, or teaches what is on it. */
function chapterFor(name: string, chapters: readonly Chapter[]): Chapter {
  const found =
    chapters.find(({ data }) => data.dummy.id === name) ??
    chapters.find(({ entry }) => (entry.body ?? '').includes(`dummy="${name}"`)) ??
    chapters.find(({ slug }) => slug === TAUGHT[name])
  if (!found)
    throw new Error(
      `content/dummies/${name}.hingebook.json: src/site/gallery.ts names no chapter that teaches it`,
    )
  return found
}

/** The scenes of the garden but for the whole garden, in the order of their chapters, easy ones first. */
export async function scenes(): Promise<readonly Shown[]> {
  const chapters = await allChapters()
  const names = (await getCollection('dummies')).map(({ id }) => id).filter((id) => id !== 'garden')
  const designs = await Promise.all(names.map(async (name) => ({ name, design: await dummyNamed(name) })))
  return designs
    .filter(({ design }) => isScene(design))
    .map(({ name, design }): Shown => {
      const chapter = chapterFor(name, chapters)
      const own = chapter.data.dummy.id === name
      const as = own ? chapter.slug : name
      return {
        name,
        design,
        chapter,
        picture: picturePath(as),
        hands: handsOf(design),
        time: own ? chapter.data.time : null,
        sheet: as,
      }
    })
    .sort(
      (a, b) =>
        a.chapter.data.number - b.chapter.data.number ||
        levelOf(a.hands).level - levelOf(b.hands).level ||
        a.hands.folds - b.hands.folds,
    )
}

/** Scenes that no chapter has on its own bench: they need a picture and sheets of their own. */
export const besideChapters = async (): Promise<readonly Shown[]> =>
  (await scenes()).filter(({ name, chapter }) => chapter.data.dummy.id !== name)
