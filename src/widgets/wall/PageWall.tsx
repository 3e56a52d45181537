import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import { coverAnswers, covering } from '../model/page.ts'
import type { Asked, AtWall } from './at-wall.ts'
import { Wall } from './Wall.tsx'

/** The page's guess, in its words; undefined where the page asks none. */
function guessOf(): Pick<Asked, 'asks' | 'guesses'> | undefined {
  const guesses = [...document.querySelectorAll('[data-guesses] > .guess')].map((guess) => ({
    says: guess.querySelector('summary')?.textContent.trim() ?? '',
    right: guess.classList.contains('right'),
  }))
  // A page has one guess that covers its answers; questions to recall are asked below.
  return guesses.length === 0 ? undefined : { asks: document.title, guesses }
}

/** A second window of this page: what is asked, what goes wrong, the notes. */
const openNotes = (): void => {
  open(`${location.pathname}?notes`, 'hingebook-notes', 'popup,width=720,height=860')
}

interface PageWallProps {
  readonly at: Pick<AtWall, 'keys' | 'rest'>
  readonly onClose: () => void
}

/** The tools over a page of the book: what a chapter asks, and its notes, stand in it. */
export function PageWall({ at, onClose }: PageWallProps): JSX.Element {
  const [guess] = useState(guessOf)
  const [hasNotes] = useState(() => document.querySelector('.cell-for-teachers') !== null)
  const asked = guess ? { ...guess, covered: covering.value, onCover: coverAnswers } : undefined
  return (
    <Wall
      at={{ ...at, ...(asked ? { asked } : {}), ...(hasNotes ? { notes: openNotes } : {}) }}
      onClose={onClose}
    />
  )
}
