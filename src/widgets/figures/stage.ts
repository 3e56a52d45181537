import './figures.css'
import type { JSX, RefObject } from 'preact'
import { h } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Size } from '../../drawing/view/camera.ts'
import type { Bench } from '../model/bench-model.ts'
import type { FigureName } from '../state/config.ts'

/** A figure's place on the page as it was measured last, px. */
interface Place extends Size {
  readonly text: number
}

/** What is done of a picture: nothing before its place is measured, then its drawing is made, then it is shown. */
type Drawn = 0 | 1 | 2

/** A figure's place on the page: how large it is and how large its words are, px. */
export interface Stage {
  readonly ref: RefObject<HTMLDivElement>
  readonly size: Size
  readonly text: number
  /** Whether it is looked at: on the screen, or nearly so. */
  readonly inSight: boolean
  readonly drawn: Drawn
}

/** Height of the words in figures before anything is measured, px. */
const TEXT = 15

/** What is told of its size, for each place on the page. */
const followed = new Map<Element, (now: Place) => void>()

/**
 * Measures places, all of them before any is told of it: one that draws at once would have the page laid out anew for
 * the next.
 */
function measure(places: readonly Element[]): void {
  const told = places.map((place) => {
    const { clientWidth: width, clientHeight: height } = place
    const text = Number.parseFloat(getComputedStyle(place).fontSize) || TEXT
    return { place, width, height, text }
  })
  // A figure that is not shown has no size: it keeps the one it had.
  for (const { place, ...now } of told) if (now.width && now.height) followed.get(place)?.(now)
}

let watch: ResizeObserver | undefined

const AS_IT_IS = { __html: '' }

/**
 * Follows the size of a figure's place, so that a picture is drawn for it and its words keep their size. The server
 * draws for the size given. A `small` one is not looked at while something moves.
 */
export function useStage(start: Size, small = false): Stage {
  const ref = useRef<HTMLDivElement>(null)
  const [{ place, drawn }, set] = useState<{ place: Place; drawn: Drawn }>({
    place: { ...start, text: TEXT },
    drawn: import.meta.env.SSR ? 2 : 0,
  })
  const [inSight, setInSight] = useState(true)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return undefined
    // What the server drew stands there while the page does one thing after the other.
    let isServers = element.firstChild !== null
    let now: Place = { ...start, text: TEXT }
    const draw = (drawn: Drawn) =>
      set(({ place: was }) => ({
        place: was.width === now.width && was.height === now.height && was.text === now.text ? was : now,
        drawn,
      }))
    followed.set(element, (told) => {
      now = told
      if (isServers) for (const drawn of [1, 2] as const) setTimeout(draw, 0, drawn)
      else draw(2)
      isServers = false
    })
    watch ??= new ResizeObserver((entries) => measure(entries.map(({ target }) => target)))
    watch.observe(element)
    const see = new IntersectionObserver(([entry]) => setInSight(entry?.isIntersecting ?? true), {
      rootMargin: '64px',
    })
    see.observe(element)
    // The switch for the projector changes the words without changing the place.
    const look = () => measure([element])
    addEventListener('resize', look)
    return () => {
      watch?.unobserve(element)
      followed.delete(element)
      see.disconnect()
      removeEventListener('resize', look)
    }
  }, [])
  // The very same object until the place has changed: what is drawn for it is kept by it.
  return { ref, size: place, text: place.text, inSight: inSight && !small, drawn }
}

/** What is kept of something made, and of what it was made. */
interface Kept<T> {
  readonly of: readonly unknown[]
  readonly made: T
}

/** Makes something anew only when one of the things that it is made of is another one. */
export function useKept<T>(): (of: readonly unknown[], make: () => T) => T {
  const last = useRef<Kept<T> | null>(null)
  return (of, make) => {
    const { current } = last
    if (current && of.every((one, k) => Object.is(one, current.of[k]))) return current.made
    const made = make()
    last.current = { of, made }
    return made
  }
}

/**
 * A figure's picture. Until it is to be shown, what the server drew stays there. While something is dragged or
 * plays, a figure that nobody can see is not drawn: it catches up when the hand rests, or when it comes into sight.
 */
export function usePicture(
  bench: Bench,
  { ref, inSight, drawn }: Stage,
  name: FigureName,
  draw: (moving: boolean) => JSX.Element,
): JSX.Element {
  const last = useRef<JSX.Element | null>(null)
  const moving = bench.held.value !== null || bench.playing.value
  if (drawn && (inSight || !moving || last.current === null)) last.current = draw(moving)
  return drawn === 2 && last.current
    ? last.current
    : h('div', { class: `stage stage-${name}`, ref, dangerouslySetInnerHTML: AS_IT_IS })
}
