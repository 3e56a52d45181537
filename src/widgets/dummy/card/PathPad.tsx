import type { JSX } from 'preact'
import { useRef, useState } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/wish.ts'
import type { Point } from '../../../drawing/pen/marks.ts'
import { onPlane } from '../../../drawing/view/places.ts'
import type { View } from '../../../drawing/view/view.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { alongDrawn } from '../model/wishes.ts'

/** Points nearer to the last one are left out, px. */
const STEP = 4

interface PathPadProps {
  readonly dummy: Dummy
  readonly drawn: View
}

/** Lies over the card while the way of a tip is drawn: one stroke, from where it begins to where it ends. */
export function PathPad({ dummy, drawn }: PathPadProps): JSX.Element {
  const stroke = useRef<Point[] | null>(null)
  const [line, setLine] = useState('')
  const [, , width, height] = drawn.box
  const placeOf = (event: PointerEvent): Point => {
    const { left, top } = (event.currentTarget as Element).getBoundingClientRect()
    return [event.clientX - left, event.clientY - top]
  }
  const end = (event: PointerEvent) => {
    event.stopPropagation()
    const points = stroke.current
    stroke.current = null
    setLine('')
    if (!points || event.type !== 'pointerup') return
    const { wish, draws } = dummy
    const { at } = wish.peek()
    wish.value = alongDrawn(
      wish.peek(),
      points.map((to) => onPlane(drawn.toScreen, at, to)),
    )
    draws.value = false
    dummy.told.value = says.wayDrawn
  }
  return (
    <div
      class="path-pad"
      onPointerDown={(event) => {
        event.stopPropagation()
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        stroke.current = [placeOf(event)]
      }}
      onPointerMove={(event) => {
        event.stopPropagation()
        const points = stroke.current
        const last = points?.at(-1)
        if (!points || !last) return
        const at = placeOf(event)
        if (Math.hypot(at[0] - last[0], at[1] - last[1]) < STEP) return
        points.push(at)
        setLine(points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' '))
      }}
      onPointerUp={end}
      onPointerCancel={end}
    >
      <svg class="over" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <polyline class="over-wish" points={line} />
      </svg>
    </div>
  )
}
