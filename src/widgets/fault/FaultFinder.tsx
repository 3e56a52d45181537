import './fault.css'
import type { JSX } from 'preact'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/fault-finder.ts'
import { likely } from './likely.ts'
import { lookUp } from './look-up.ts'
import type { Fault, Trouble } from './trouble.ts'

export interface FaultFinderProps {
  readonly faults: readonly Fault[]
  readonly troubles: readonly Trouble[]
}

/** So many answers to a maker's own words: more would be a list to read. */
const MOST_FOUND = 6

const Row = ({ trouble }: { readonly trouble: Trouble }): JSX.Element => (
  <li class={trouble.picture === undefined ? 'trouble-row unpictured' : 'trouble-row'}>
    {trouble.picture === undefined ? null : (
      <img src={trouble.picture} alt="" width="200" height="140" loading="lazy" />
    )}
    <div>
      <h3>{trouble.sign}</h3>
      <p>{trouble.cure}</p>
      <a href={trouble.href}>{says.chapter(trouble.chapter.number, trouble.chapter.title)}</a>
    </div>
  </li>
)

/** The fault that the address names, as in `#jams`. */
const named = (faults: readonly Fault[]): Fault | null =>
  faults.find(({ id }) => `#${id}` === location.hash) ?? null

/** Where the reading goes on. */
function goTo(heading: HTMLElement | null): void {
  heading?.focus({ preventScroll: true })
  heading?.scrollIntoView({ block: 'nearest' })
}

/** What a maker sees, what it may be, and what helps. */
export function FaultFinder({ faults, troubles }: FaultFinderProps): JSX.Element {
  const [fault, setFault] = useState<Fault | null>(null)
  const [chapter, setChapter] = useState<number | null>(null)
  const [words, setWords] = useState('')
  const heading = useRef<HTMLHeadingElement>(null)
  const answers = useRef<HTMLHeadingElement>(null)
  // Left to itself: what was typed before the page woke is kept, and looked for then.
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => setWords(field.current?.value ?? ''), [])
  const isPressed = useRef(false)
  const find = useMemo(() => lookUp(faults, troubles), [faults, troubles])
  useEffect(() => {
    const follow = () => setFault(named(faults))
    follow()
    addEventListener('hashchange', follow)
    return () => removeEventListener('hashchange', follow)
  }, [faults])

  const choose = (id: string) => {
    history.pushState(null, '', `#${id}`)
    setWords('')
    if (field.current) field.current.value = ''
    setChapter(null)
    setFault(faults.find((one) => one.id === id) ?? null)
    isPressed.current = true
  }
  // What comes of a press is below: there the reading goes on.
  useLayoutEffect(() => {
    if (!isPressed.current) return
    isPressed.current = false
    goTo(heading.current)
  })
  const isAsking = words.trim() !== ''
  const ofFault = troubles.filter((one) => one.fault === fault?.id)
  const chapters = [...new Map(ofFault.map((one) => [one.chapter.number, one.chapter])).values()]
  const shown = isAsking
    ? find(words).slice(0, MOST_FOUND)
    : ofFault.filter((one) => chapter === null || one.chapter.number === chapter)

  useEffect(() => {
    likely.value = shown[0]?.card ?? null
  })

  return (
    <>
      <section class="cell">
        <div class="in-margin">
          <div>
            <h2 class="cell-name">{says.youSee}</h2>
            <p class="cell-note">{says.youSeeNote}</p>
          </div>
        </div>
        <div class="on-page">
          <label class="fault-words">
            {says.orSayIt}
            <input
              type="search"
              autocomplete="off"
              placeholder={says.forExample}
              ref={field}
              onInput={(event) => setWords(event.currentTarget.value)}
              onKeyDown={(event) => {
                if (event.key === 'Enter' && isAsking) goTo(answers.current)
              }}
            />
          </label>
          {/* On a phone the answers to words stand where the pictures were. */}
          <ul class="fault-signs" data-asking={isAsking}>
            {faults.map(({ id, see, picture }) => (
              <li key={id} id={id}>
                <a
                  href={`#${id}`}
                  aria-current={!isAsking && fault?.id === id ? 'true' : undefined}
                  onClick={(event) => {
                    // The browser itself would take the focus away from what comes of it.
                    event.preventDefault()
                    choose(id)
                  }}
                >
                  {picture === undefined ? (
                    <span class="fault-else" aria-hidden="true">
                      ?
                    </span>
                  ) : (
                    <img src={picture} alt="" width="200" height="140" />
                  )}
                  <span class="fault-see">{see}</span>
                </a>
              </li>
            ))}
          </ul>
        </div>
      </section>
      <section class="cell">
        <div class="in-margin">
          <div>
            <h2 ref={answers} tabIndex={-1} class="cell-name">
              {says.itMayBe}
            </h2>
            {isAsking && shown.length > 1 ? <p class="cell-note">{says.likeliestFirst}</p> : null}
          </div>
        </div>
        <div class="on-page">
          <p role="status" class={isAsking || fault ? 'aloud' : 'quiet'}>
            {isAsking
              ? shown.length === 0
                ? says.nothingFits
                : says.found(shown.length)
              : fault
                ? says.causes(fault.see, ofFault.length)
                : says.causesComeHere}
          </p>
          {isAsking && shown.length === 0 ? <p>{says.nothingFitsTry}</p> : null}
          {!isAsking && fault ? (
            <>
              <h3 ref={heading} tabIndex={-1} class="fault-name">
                {fault.see}
              </h3>
              <p>
                <strong>{says.now}</strong> {fault.now}
              </p>
              <p>
                <strong>{says.nextTime}</strong> {fault.next}
              </p>
              {chapters.length > 1 ? (
                <fieldset class="fault-cards">
                  <legend>{says.whichCard}</legend>
                  {[null, ...chapters].map((one) => (
                    <button
                      type="button"
                      class="button"
                      key={one?.number ?? 0}
                      aria-pressed={chapter === (one?.number ?? null)}
                      onClick={() => setChapter(one?.number ?? null)}
                    >
                      {one ? one.title : says.anyCard}
                    </button>
                  ))}
                </fieldset>
              ) : null}
            </>
          ) : null}
          <ol class="trouble-rows">
            {shown.map((trouble) => (
              <Row key={trouble.href} trouble={trouble} />
            ))}
          </ol>
        </div>
      </section>
    </>
  )
}
