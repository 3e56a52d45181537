import './figures.css'
import type { JSX, RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Size } from '../../drawing/view/camera.ts'
import type { Bench } from '../model/bench-model.ts'

/** A figure's place on the page: how large it is and how large its words are, px. */
export interface Stage {
  readonly ref: RefObject<HTMLDivElement>
  readonly size: Size
  readonly text: number
  /** Whether it is on the screen, or nearly so. */
  readonly inSight: boolean
}

/** Height of the words in figures before anything is measured, px. */
const TEXT = 15

/**
 * Follows the size of a figure's place, so that a picture is drawn for it and its words keep their size.
 * Until it is measured the picture has the size given: the server's picture and the first one here are one.
 */
export function useStage(start: Size): Stage {
  const ref = useRef<HTMLDivElement>(null)
  const [place, setPlace] = useState({ ...start, text: TEXT })
  const [inSight, setInSight] = useState(true)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return undefined
    const look = () => {
      const { clientWidth: width, clientHeight: height } = element
      // A figure that is not shown has no size: it keeps the one it had.
      if (width === 0 || height === 0) return
      const text = Number.parseFloat(getComputedStyle(element).fontSize) || TEXT
      setPlace((now) =>
        now.width === width && now.height === height && now.text === text ? now : { width, height, text },
      )
    }
    look()
    const watch = new ResizeObserver(look)
    watch.observe(element)
    const see = new IntersectionObserver(([entry]) => setInSight(entry?.isIntersecting ?? true), {
      rootMargin: '64px',
    })
    see.observe(element)
    // The switch for the projector changes the words without changing the place.
    addEventListener('resize', look)
    return () => {
      watch.disconnect()
      see.disconnect()
      removeEventListener('resize', look)
    }
  }, [])
  // The very same object until the place has changed: what is drawn for it is kept by it.
  return { ref, size: place, text: place.text, inSight }
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
 * A figure's picture. While something is dragged or plays, a figure that nobody can see is not drawn: it
 * catches up when the hand rests, or when it comes into sight.
 */
export function usePicture(
  bench: Bench,
  inSight: boolean,
  draw: (moving: boolean) => JSX.Element,
): JSX.Element {
  const last = useRef<JSX.Element | null>(null)
  const moving = bench.held.value !== null || bench.playing.value
  if (inSight || !moving || last.current === null) last.current = draw(moving)
  return last.current
}
