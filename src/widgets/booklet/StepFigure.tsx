import type { JSX } from 'preact'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/step-book.ts'
import type { Work } from '../../booklet/index.ts'
import { figureOf, motionOf } from '../../booklet/index.ts'
import type { Size } from '../../drawing/view/camera.ts'
import type { Design } from '../../paper/index.ts'
import { Figure } from '../figures/Figure.tsx'
import { useCalm } from '../model/calm.ts'

/** Seconds that one stretch of a motion takes. */
const STRETCH = 2.2

/** A stretch begins and ends slowly: how far it is after a share of its time, and the way back. */
const eased = (time: number): number => (1 - Math.cos(Math.PI * time)) / 2
const unEased = (far: number): number => Math.acos(1 - 2 * far) / Math.PI

/** The same for so many stretches, one after the other; both from 0 to 1. */
function through(share: number, stretches: number, turn: (part: number) => number): number {
  const along = Math.min(1, Math.max(0, share)) * stretches
  const k = Math.min(stretches - 1, Math.floor(along))
  return (k + turn(along - k)) / stretches
}

/** What takes Space for itself. */
const TAKES_SPACE = 'button, a, input, select, textarea, summary'

interface StepFigureProps {
  readonly design: Design
  readonly work: Work
  readonly size: Size
  /** Told what brings the motion to rest; null when the figure is gone. */
  readonly onRest: (rest: (() => void) | null) => void
}

/** The figure of a step; where it moves, with what plays it. */
export function StepFigure({ design, work, size, onRest }: StepFigureProps): JSX.Element {
  const still = useMemo(() => figureOf(design, work, size), [design, work, size])
  const motion = useMemo(() => motionOf(design, work, size), [design, work, size])
  /** How far the motion is; null: the figure as it stands. */
  const [share, setShare] = useState<number | null>(null)
  const [playing, setPlaying] = useState(false)
  const calm = useCalm()
  const ticket = useRef(0)
  useEffect(() => () => cancelAnimationFrame(ticket.current), [])
  const pause = () => {
    cancelAnimationFrame(ticket.current)
    setPlaying(false)
  }
  useEffect(() => {
    onRest(motion ? pause : null)
    return () => onRest(null)
  }, [motion])
  const play = () => {
    if (!motion) return
    const from = through(share === null || share >= 1 ? 0 : share, motion.stretches, unEased)
    let began: number | null = null
    const show = (now: number) => {
      began ??= now
      const time = from + (now - began) / 1000 / STRETCH / motion.stretches
      setShare(through(time, motion.stretches, eased))
      if (time >= 1) setPlaying(false)
      else ticket.current = requestAnimationFrame(show)
    }
    setPlaying(true)
    ticket.current = requestAnimationFrame(show)
  }
  const step = () => {
    const [first = 0] = motion?.stops ?? []
    setShare(motion?.stops.find((stop) => share !== null && stop > share + 1e-6) ?? first)
  }
  const press = playing ? pause : calm ? step : play
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as Element | null
      if (event.key !== ' ' || event.ctrlKey || event.metaKey || event.altKey) return
      if (!motion || target?.matches(TAKES_SPACE)) return
      event.preventDefault()
      press()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  })
  const drawing = share === null || !motion ? still : motion.at(share, playing)
  return (
    <div class="book-figure">
      <Figure drawing={drawing} />
      {motion ? (
        <div class="book-motion">
          <button type="button" class="button" onClick={press}>
            {playing ? says.pause : calm ? says.nextPosition : says.play}
          </button>
          <input
            type="range"
            class="range"
            aria-label={says.howFar}
            aria-valuetext={motion.told(share ?? 0)}
            min="0"
            max="1"
            step="0.01"
            value={share ?? 0}
            style={`--part:${(100 * (share ?? 0)).toFixed(2)}%`}
            onInput={({ currentTarget }) => {
              pause()
              setShare(Number(currentTarget.value))
            }}
          />
          {calm ? <span class="quiet">{says.inSteps}</span> : null}
          <button
            type="button"
            class="button"
            hidden={share === null}
            onClick={() => {
              pause()
              setShare(null)
            }}
          >
            {says.picture}
          </button>
        </div>
      ) : null}
    </div>
  )
}
