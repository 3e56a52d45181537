import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/projector.ts'
import { benchOf, coverAnswers, covering, followGuess, lengthUnit } from '../model/page.ts'
import { called } from '../model/place.ts'
import { shown } from '../state/format.ts'
import { endProjector, isExplained } from './ending.ts'
import { headline, LESSON_KEYS, pressOf } from './lesson.ts'

export interface ClassBarProps {
  readonly slug: string
  /** What to do at the bench first. */
  readonly task: string
  /** The chapter's guess in a few words, and what is right. */
  readonly ask?: { readonly asks: string; readonly answer: string }
  /** Where the lesson goes on. */
  readonly after: string
}

const isOn = (): boolean => document.documentElement.dataset.projector === 'on'

const end = (): void => {
  if (isOn()) endProjector()
}

/** The first reading as it stands, in words; whoever draws it draws it anew when the hand has moved on. */
function readingOf(slug: string): string {
  const reading = benchOf(slug).value?.readings.value[0]
  return reading ? shown(reading.value, reading.unit, lengthUnit.peek()) : ''
}

function play(slug: string): void {
  const bench = benchOf(slug).peek()
  if (bench?.playing.peek()) bench.pause()
  else bench?.play()
}

/** A pen, a ring, a timer and what else a teacher asks for at the wall: fetched when it is asked for. */
const openTools = async (from: HTMLElement, slug: string): Promise<void> => {
  const { openWall } = await import('../wall/mount.tsx')
  openWall(from, { keys: LESSON_KEYS, rest: () => benchOf(slug).peek()?.pause() })
}

/** The height of the bar, for whoever shares the screen with it. */
function useHeight(name: string) {
  const ref = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const bar = ref.current
    if (!bar) return undefined
    const watch = new ResizeObserver(() =>
      document.documentElement.style.setProperty(name, `${bar.getBoundingClientRect().height}px`),
    )
    watch.observe(bar)
    return () => watch.disconnect()
  }, [name])
  return ref
}

/**
 * Over the two figures at the back of a room: what is asked, and the way on. A clicker’s keys, and those of
 * the keyboard: Page Down goes on, and shows the answer where one is asked for; Page Up goes back; S shows or
 * hides, Space plays, Escape ends.
 */
export function ClassBar({ slug, task, ask, after }: ClassBarProps): JSX.Element {
  const [asked, setAsked] = useState(false)
  const [was, setWas] = useState('')
  const bar = useHeight('--class-bar')
  const covered = covering.value
  const next = () => {
    if (ask && !asked) {
      setWas(readingOf(slug))
      setAsked(true)
      coverAnswers(true)
    } else if (ask && covering.peek()) coverAnswers(false)
    else location.assign(called(after))
  }
  const back = () => {
    if (asked && !covering.peek()) coverAnswers(true)
    else setAsked(false)
  }
  useEffect(followGuess, [])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const press = isOn() ? pressOf(event) : null
      if (!press || document.querySelector('dialog[open]')) return
      if (press === 'end' && (benchOf(slug).peek()?.held.peek() || isExplained(event.target))) return
      // A slider that has the focus would take a clicker's keys for itself.
      event.preventDefault()
      event.stopPropagation()
      if (press === 'next') next()
      else if (press === 'back') back()
      else if (press === 'show') coverAnswers(!covering.peek())
      else if (press === 'play') play(slug)
      else end()
    }
    document.addEventListener('keydown', onKey, { capture: true })
    return () => document.removeEventListener('keydown', onKey, { capture: true })
  })
  return (
    <div class="class-bar" ref={bar}>
      <p class="class-says" role="status">
        {headline({
          task,
          ...(ask ? { ask } : {}),
          asked,
          covered,
          was,
          now: covered ? was : readingOf(slug),
        })}
      </p>
      <button type="button" class="button" onClick={next}>
        {says.next}
      </button>
      <button type="button" class="button" onClick={(event) => openTools(event.currentTarget, slug)}>
        {says.tools}
      </button>
      <button type="button" class="button" onClick={end}>
        {says.end}
      </button>
    </div>
  )
}
