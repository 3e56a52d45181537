import type { JSX } from 'preact'
import { useRef, useState } from 'preact/hooks'
import { ridesBelow } from '../../drawing/pen/lettering.ts'
import type { SliderKey } from '../state/keys.ts'
import { sliderKey } from '../state/keys.ts'

/** A place in a figure's own box, y downwards. */
export type Place = readonly [x: number, y: number]

export interface Box {
  readonly width: number
  readonly height: number
}

interface GripProps {
  readonly label: string
  /** Where it lies in the figure's box. */
  readonly at: Place
  readonly box: Box
  /** Which way it can go; both if left out. */
  readonly way?: 'level' | 'upright'
  /** A dot, or a small arrow at the margin that points at what it moves. */
  readonly shape?: 'dot' | 'arrow'
  readonly value: { readonly now: number; readonly min: number; readonly max: number; readonly text: string }
  readonly held: boolean
  /** It is what the task speaks of, and wears a ring. */
  readonly ringed?: boolean
  /** The number that rides beside it while it is held. */
  readonly rides: string
  readonly onHold: () => void
  /** Where it is wanted, in the figure's box. */
  readonly onMove: (to: Place) => void
  readonly onRelease: () => void
  readonly onCancel: () => void
  readonly onKey: (press: SliderKey) => void
  readonly onRest: () => void
}

const percent = (part: number, whole: number): string => `${((part / whole) * 100).toFixed(3)}%`

/**
 * A blue dot that can be dragged, or moved with keys: a slider to those who listen. It keeps the distance
 * from the pointer at which it was taken, so it never jumps.
 */
export function Grip(props: GripProps): JSX.Element {
  const { label, at, box, way, shape = 'dot', value, held, rides } = props
  const ref = useRef<HTMLDivElement>(null)
  const [keyed, setKeyed] = useState(false)
  const taken = useRef<{ readonly pointer: number; readonly off: Place } | null>(null)

  /** A place of the screen in the figure's box. */
  const placeOf = (event: PointerEvent): Place => {
    const stage = ref.current?.parentElement?.getBoundingClientRect()
    if (!stage) return at
    return [
      ((event.clientX - stage.left) / stage.width) * box.width,
      ((event.clientY - stage.top) / stage.height) * box.height,
    ]
  }
  /** Where grips lie on one another, the nearest one is meant, not the one on top. */
  const meant = ({ currentTarget, clientX, clientY }: JSX.TargetedPointerEvent<HTMLElement>): HTMLElement => {
    const far = (grip: HTMLElement): number => {
      const { left, top, width, height } = grip.getBoundingClientRect()
      return Math.hypot(left + width / 2 - clientX, top + height / 2 - clientY)
    }
    const grips = currentTarget.parentElement?.querySelectorAll<HTMLElement>('.grip') ?? []
    return [...grips].reduce((best, grip) => (far(grip) < far(best) ? grip : best), currentTarget)
  }
  const letGo = (event: PointerEvent, end: () => void) => {
    if (taken.current?.pointer !== event.pointerId) return
    taken.current = null
    end()
  }
  return (
    <div
      ref={ref}
      class="grip"
      data-held={held}
      data-keyed={keyed}
      data-ringed={props.ringed}
      data-way={way}
      data-shape={shape}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation={way === 'upright' ? 'vertical' : 'horizontal'}
      aria-valuemin={value.min}
      aria-valuemax={value.max}
      aria-valuenow={value.now}
      aria-valuetext={value.text}
      style={`left:${percent(at[0], box.width)};top:${percent(at[1], box.height)}`}
      onPointerDown={(event) => {
        if (event.button !== 0 || taken.current) return
        const grip = meant(event)
        if (grip !== event.currentTarget) {
          event.preventDefault()
          grip.focus()
          grip.dispatchEvent(new PointerEvent('pointerdown', event))
          return
        }
        const [x, y] = placeOf(event)
        taken.current = { pointer: event.pointerId, off: [at[0] - x, at[1] - y] }
        event.currentTarget.setPointerCapture(event.pointerId)
        setKeyed(false)
        props.onHold()
      }}
      onPointerMove={(event) => {
        if (taken.current?.pointer !== event.pointerId) return
        const [x, y] = placeOf(event)
        const { off } = taken.current
        props.onMove([x + off[0], y + off[1]])
      }}
      onPointerUp={(event) => letGo(event, props.onRelease)}
      onPointerCancel={(event) => letGo(event, props.onRelease)}
      onLostPointerCapture={(event) => letGo(event, props.onRelease)}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && taken.current) {
          event.preventDefault()
          taken.current = null
          props.onCancel()
          return
        }
        const press = sliderKey(event)
        if (!press) return
        event.preventDefault()
        setKeyed(true)
        props.onKey(press)
      }}
      onBlur={() => {
        setKeyed(false)
        props.onRest()
      }}
    >
      <span
        class="grip-rides"
        // As far left of the dot as the dot lies in the figure: at no place does it stick out.
        style={`translate:-${percent(at[0], box.width)}`}
        data-below={ridesBelow(at[1], box.height)}
        aria-hidden="true"
      >
        {rides}
      </span>
    </div>
  )
}
