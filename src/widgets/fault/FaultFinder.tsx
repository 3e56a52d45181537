import './fault.css'
import type { JSX } from 'preact'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
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
  <li class="trouble-row">
    <img src={trouble.picture} alt="" width="200" height="140" loading="lazy" />
    <div>
      <h3>{trouble.sign}</h3>
      <p>{trouble.cure}</p>
      <a href={trouble.href}>
        Chapter {trouble.chapter.number}: {trouble.chapter.title}
      </a>
    </div>
  </li>
)

/** The fault that the address names, as in `#jams`. */
const named = (faults: readonly Fault[]): Fault | null =>
  faults.find(({ id }) => `#${id}` === location.hash) ?? null

/** What a maker sees, what it may be, and what helps. */
export function FaultFinder({ faults, troubles }: FaultFinderProps): JSX.Element {
  const [fault, setFault] = useState<Fault | null>(null)
  const [chapter, setChapter] = useState<number | null>(null)
  const [words, setWords] = useState('')
  const heading = useRef<HTMLHeadingElement>(null)
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
    heading.current?.focus({ preventScroll: true })
    heading.current?.scrollIntoView({ block: 'nearest' })
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
            <h2 class="cell-name">You see</h2>
            <p class="cell-note">Press the picture that looks like yours.</p>
          </div>
        </div>
        <div class="on-page">
          <label class="fault-words">
            Or say it yourself
            <input
              type="search"
              autocomplete="off"
              placeholder="nothing happens when I open it"
              ref={field}
              onInput={(event) => setWords(event.currentTarget.value)}
            />
          </label>
          <ul class="fault-signs">
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
            <h2 class="cell-name">It may be</h2>
            {isAsking && shown.length > 1 ? <p class="cell-note">Likeliest first.</p> : null}
          </div>
        </div>
        <div class="on-page">
          <p role="status" class={isAsking || fault ? 'aloud' : 'quiet'}>
            {isAsking
              ? shown.length === 0
                ? 'Nothing fits those words.'
                : `${shown.length} found.`
              : fault
                ? `${fault.see}: ${ofFault.length} causes.`
                : 'The causes stand here as soon as you have pressed a picture or typed what you see.'}
          </p>
          {isAsking && shown.length === 0 ? (
            <p>Nothing fits those words. Try fewer, or press a picture: “Something else” is one of them.</p>
          ) : null}
          {!isAsking && fault ? (
            <>
              <h3 ref={heading} tabIndex={-1} class="fault-name">
                {fault.see}
              </h3>
              <p>
                <strong>Now:</strong> {fault.now}
              </p>
              <p>
                <strong>Next time:</strong> {fault.next}
              </p>
              {chapters.length > 1 ? (
                <fieldset class="fault-cards">
                  <legend>Which card is most like yours?</legend>
                  {[null, ...chapters].map((one) => (
                    <button
                      type="button"
                      class="button"
                      key={one?.number ?? 0}
                      aria-pressed={chapter === (one?.number ?? null)}
                      onClick={() => setChapter(one?.number ?? null)}
                    >
                      {one ? one.title : 'any'}
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
