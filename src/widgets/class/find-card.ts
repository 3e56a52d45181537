/** Which card a lesson is about: of the page's own, one that the address brings, or one that the browser keeps. */
import * as says from '../../../content/words/class-page.ts'
import { chapterFor, leadIn, wordsOn } from '../../class/chapter-for.ts'
import type { Seen } from '../../class/seen.ts'
import type { ChapterWords } from '../../class/words.ts'
import type { Design, Flat } from '../../paper/index.ts'
import { fromGarden } from '../keeping/from-garden.ts'
import { carriesDesign, readLink } from '../keeping/link.ts'
import { isOwn, ownCard } from '../keeping/own-cards.ts'
import type { ClassOffer } from './offer.ts'

export interface Found {
  readonly design: Design
  readonly chapter: ChapterWords
  readonly lead?: string
  readonly point?: Flat
  readonly seen?: Seen
}

export type FoundCard =
  | { readonly ok: true; readonly found: Found }
  | { readonly ok: false; readonly sentence: string }

/** The design that a link brought along. */
export const LINKED = 'link:'

/** Which card the address asks for, as a key; null if it asks for none. */
export function askedCard({ cards }: ClassOffer, search: string, hash: string): string | null {
  const asked = new URLSearchParams(search)
  const [chapter, garden] = [asked.get('chapter'), asked.get('from')]
  const key = chapter !== null ? `chapter:${chapter}` : garden !== null ? `garden:${garden}` : null
  if (key !== null)
    return (cards.find((one) => one.key === key) ?? cards.find(({ dummy }) => dummy === garden))?.key ?? null
  return carriesDesign(hash) ? LINKED : null
}

function withWords(design: Design, { chapters }: ClassOffer): FoundCard {
  const chapter = chapterFor(
    chapters.map((one) => ({ ...one, kind: one.kind })),
    design,
  )
  if (!chapter) return { ok: false, sentence: says.noChapterForIt }
  const lead = leadIn(design)?.id
  return {
    ok: true,
    found: { design, chapter: wordsOn(chapter.words, design), ...(lead === undefined ? {} : { lead }) },
  }
}

/** The card of a key. It never throws. */
export async function cardOf(key: string, offer: ClassOffer): Promise<FoundCard> {
  if (key === LINKED) {
    const link = await readLink(location.hash)
    return link.read ? withWords(link.design, offer) : { ok: false, sentence: link.sentence }
  }
  if (isOwn(key)) {
    const card = await ownCard(key)
    return typeof card === 'string' ? { ok: false, sentence: card } : withWords(card, offer)
  }
  const card = offer.cards.find((one) => one.key === key) ?? offer.cards[0]
  const chapter = offer.chapters.find(({ slug }) => slug === card?.chapter)
  if (!card || !chapter) return { ok: false, sentence: says.noSuchCard }
  const asked = await fromGarden(`?from=${card.dummy}`)
  if (!asked) return { ok: false, sentence: says.cardNotFetched }
  if (!asked.read.read) return { ok: false, sentence: asked.read.sentence }
  const { lead, point, seen } = card
  const { design } = asked.read
  return {
    ok: true,
    found: {
      design,
      chapter: wordsOn(chapter.words, design),
      ...(lead === undefined ? {} : { lead }),
      ...(point === undefined ? {} : { point }),
      ...(seen === undefined ? {} : { seen }),
    },
  }
}
