import type { JSX } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import * as says from '../../../content/words/wall.ts'
import type { Stroke } from './ink.ts'
import { drawInk } from './ink.ts'

interface InkProps {
  readonly strokes: readonly Stroke[]
  /** Left null, nothing is drawn: what is there stays, and the page beneath is in reach. */
  readonly onStroke: ((stroke: Stroke) => void) | null
}

/** What is drawn over the page by hand. */
export function Ink({ strokes, onStroke }: InkProps): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null)
  const drawing = useRef<[number, number][]>([])
  const draw = (more: readonly Stroke[] = []) => {
    if (!canvas.current) return
    const style = getComputedStyle(canvas.current)
    drawInk(
      canvas.current,
      [...strokes, ...more],
      [style.getPropertyValue('--red'), style.getPropertyValue('--ground')],
    )
  }
  useEffect(() => {
    draw()
    const again = () => draw()
    addEventListener('resize', again)
    return () => removeEventListener('resize', again)
  })
  const isOn = onStroke !== null
  return (
    <canvas
      ref={canvas}
      class="wall-ink"
      data-on={isOn}
      role="img"
      aria-label={says.whatIsDrawn}
      onPointerDown={(event) => {
        if (!isOn) return
        event.currentTarget.setPointerCapture(event.pointerId)
        drawing.current = [[event.clientX, event.clientY]]
        draw([drawing.current])
      }}
      onPointerMove={(event) => {
        if (drawing.current.length === 0) return
        drawing.current.push([event.clientX, event.clientY])
        draw([drawing.current])
      }}
      onPointerUp={() => {
        if (drawing.current.length > 0) onStroke?.(drawing.current)
        drawing.current = []
      }}
      onPointerCancel={() => {
        drawing.current = []
        draw()
      }}
    />
  )
}
