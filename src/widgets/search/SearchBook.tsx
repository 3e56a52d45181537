import './search.css'
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/search.ts'
import { fetched, notLoaded } from '../model/loading.ts'
import { placed } from '../model/place.ts'
import type { Findable } from './findable.ts'
import type { Found } from './look-through.ts'
import { lookThrough } from './look-through.ts'

type Find = (words: string) => readonly Found[]

/** Longer than anything that somebody looks for. */
const MOST_WORDS = 200

/** Looks through the whole book on the reader's own device. */
export function SearchBook(): JSX.Element {
  const [words, setWords] = useState('')
  const [find, setFind] = useState<{ readonly it: Find } | null>(null)
  const [trouble, setTrouble] = useState('')
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => {
    // Left to itself: what was typed before the page woke is kept, and looked for then.
    const input = field.current
    if (input && input.value === '')
      input.value = (new URLSearchParams(location.search).get('for') ?? '').slice(0, MOST_WORDS)
    setWords(input?.value ?? '')
    fetched(placed('/search.json'))
      .then((answer) => answer.json() as Promise<readonly Findable[]>)
      .then((places) => setFind({ it: lookThrough(places) }))
      .catch((error: unknown) => setTrouble(notLoaded(says.whatSearchLooksThrough, error)))
  }, [])
  const isAsking = words.trim() !== ''
  const found = find && isAsking ? find.it(words) : []
  const ask = (text: string) => {
    setWords(text)
    history.replaceState(
      null,
      '',
      text.trim() === '' ? location.pathname : `?for=${encodeURIComponent(text)}`,
    )
  }
  return (
    <>
      <label class="search-words">
        {says.whatAreYouLookingFor}
        <input
          type="search"
          autocomplete="off"
          maxLength={MOST_WORDS}
          ref={field}
          onInput={(event) => ask(event.currentTarget.value)}
        />
      </label>
      {trouble === '' ? null : <p role="alert">{trouble}</p>}
      <p role="status" class="quiet">
        {!isAsking || trouble !== ''
          ? says.lookedForHere
          : !find
            ? says.looking
            : found.length === 0
              ? says.nothingFits
              : says.placesFound(found.length)}
      </p>
      <ol class="search-found">
        {found.map(({ title, where, sentence, href }) => (
          <li key={href}>
            <a href={placed(href)}>{title}</a> <span class="quiet">{where}</span>
            <p>{sentence}</p>
          </li>
        ))}
      </ol>
    </>
  )
}
