import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { openAndShut } from '../../content/words/pages/words.ts'
import type { Design } from '../paper/index.ts'
import { openingRange } from '../paper/index.ts'
import { Figure } from '../widgets/figures/Figure.tsx'
import { wantsCalm } from '../widgets/model/calm.ts'
import { fetched } from '../widgets/model/loading.ts'
import { wordPicture } from './word-picture.ts'
import type { WordPicture } from './word-told.ts'

interface WordFigureProps {
  readonly word: string
  readonly picture: WordPicture
  /** The address of all cards of such pictures, by name. */
  readonly cards: string
  /** The picture as the server drew it. */
  readonly children: ComponentChildren
}

/** How far a card goes, degrees, if it can. */
const MOST = 165
const LEAST = 15

/** Seconds from where it stands to open, shut and back. */
const ROUND = 5

/** How far one press moves it where motion is unwelcome, degrees. */
const STEP = 30

let coming: Promise<Readonly<Record<string, Design>>> | null = null

/** All cards, once for all words; asked for anew if they did not come. */
function cardsAt(address: string): Promise<Readonly<Record<string, Design>>> {
  // The site's own file, checked when the site was built.
  coming ??= fetched(address).then(
    async (answer) => (await answer.json()) as Readonly<Record<string, Design>>,
  )
  coming.catch(() => {
    coming = null
  })
  return coming
}

/** The picture beside a word. Pressed, its card opens and shuts once, with what the word means marked on it. */
export function WordFigure({ word, picture, cards, children }: WordFigureProps): JSX.Element {
  const [awake, setAwake] = useState(false)
  const [card, setCard] = useState<Design | null>(null)
  const [now, setNow] = useState(picture.opening)
  const [plays, setPlays] = useState(false)
  useEffect(() => setAwake(true), [])
  const [low, high] = useMemo(() => {
    const [least, most] = card ? openingRange(card) : [LEAST, MOST]
    return [Math.max(LEAST, least), Math.min(MOST, most)]
  }, [card])
  useEffect(() => {
    if (!plays) return undefined
    const { opening } = picture
    let began: number | null = null
    let ticket = requestAnimationFrame(function show(time) {
      began ??= time
      const share = (time - began) / (1000 * ROUND)
      if (share >= 1) {
        setNow(opening)
        setPlays(false)
        return
      }
      // Up and down as a sine does, each way as far as it goes.
      const way = Math.sin(2 * Math.PI * share)
      setNow(opening + way * (way > 0 ? high - opening : opening - low))
      ticket = requestAnimationFrame(show)
    })
    return () => cancelAnimationFrame(ticket)
  }, [plays, picture, low, high])
  const press = async () => {
    const design = card ?? (await cardsAt(cards).catch(() => null))?.[picture.dummy]
    // Where the cards cannot be fetched the picture stays.
    if (!design) return
    setCard(design)
    if (!wantsCalm()) setPlays(true)
    else setNow(now + STEP > high ? low : now + STEP)
  }
  const isStill = now === picture.opening && !plays
  return (
    <button
      type="button"
      class="word-figure"
      aria-label={openAndShut(word)}
      disabled={!awake}
      onClick={() => void press()}
    >
      {card && !isStill ? <Figure drawing={wordPicture(card, picture, undefined, now)} silent /> : children}
    </button>
  )
}
