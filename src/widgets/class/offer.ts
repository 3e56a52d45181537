import type { Seen } from '../../class/seen.ts'
import type { ChapterWords, Lesson, PackWords } from '../../class/words.ts'
import type { Flat } from '../../paper/index.ts'

/** A card of this site that a lesson can be about. */
export interface CardOffer {
  /** `chapter:layers`, `garden:owl`. */
  readonly key: string
  readonly title: string
  /** Its name among the dummies. */
  readonly dummy: string
  /** The chapter whose words go with it. */
  readonly chapter: string
  readonly lead?: string
  readonly point?: Flat
  readonly seen?: Seen
}

/** A chapter as a lesson needs it. */
export interface ChapterOffer {
  readonly slug: string
  readonly kind?: string
  readonly words: ChapterWords
}

/** All that the page is given when the site is built. */
export interface ClassOffer {
  readonly cards: readonly CardOffer[]
  readonly chapters: readonly ChapterOffer[]
  readonly lessons: readonly Lesson[]
  readonly words: PackWords
}
