import './wall.css'
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { Hands } from './Hands.tsx'
import type { Stroke } from './ink.ts'
import { drawInk } from './ink.ts'
import { TimerTool } from './TimerTool.tsx'

/** What a teacher can turn on over the page. */
type Tool = 'draw' | 'point' | 'freeze' | 'timer' | 'hands'

const TOOLS: readonly {
  readonly tool: Tool
  readonly label: string
  readonly key: string
  readonly says: string
}[] = [
  { tool: 'draw', label: 'Draw', key: 'd', says: 'Draw over the page' },
  { tool: 'point', label: 'Point', key: 'p', says: 'A large ring goes with the pointer' },
  { tool: 'freeze', label: 'Freeze', key: 'f', says: 'Nothing on the page can be moved' },
  { tool: 'timer', label: 'Timer', key: 't', says: 'A time that runs down' },
  { tool: 'hands', label: 'Count hands', key: 'h', says: 'How many guess what' },
]

/** Words that are typed keep their keys. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element && target.matches('input, textarea, select, [contenteditable]')

/** A second window of this page for the teacher alone: what is asked, what goes wrong, the notes. */
const openNotes = (): void => {
  open(`${location.pathname}?notes`, 'hingebook-notes', 'popup,width=720,height=860')
}

function Ink({
  strokes,
  onStroke,
}: {
  readonly strokes: readonly Stroke[]
  readonly onStroke: ((stroke: Stroke) => void) | null
}): JSX.Element {
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
      aria-label="What is drawn over the page"
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

/** A ring that goes with the pointer. */
function Pointer(): JSX.Element {
  const ring = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const follow = ({ clientX, clientY }: PointerEvent) => {
      if (ring.current) ring.current.style.translate = `${clientX}px ${clientY}px`
    }
    addEventListener('pointermove', follow)
    return () => removeEventListener('pointermove', follow)
  }, [])
  return <div class="wall-point" ref={ring} aria-hidden="true" />
}

/** Tools for whoever stands at the wall: over the page, never of it. Nothing of them is kept. */
export function Wall({ onClose }: { readonly onClose: () => void }): JSX.Element {
  const [on, setOn] = useState<ReadonlySet<Tool>>(new Set())
  const [strokes, setStrokes] = useState<readonly Stroke[]>([])
  const first = useRef<HTMLButtonElement>(null)
  useEffect(() => first.current?.focus(), [])
  const turn = (tool: Tool) =>
    setOn((before) => {
      const next = new Set(before)
      if (!next.delete(tool)) next.add(tool)
      return next
    })
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      const found = TOOLS.find((one) => one.key === key)
      if (found) turn(found.tool)
      else if (key === 'w') setStrokes([])
      else if (key === 'n') openNotes()
      else if (!on.has('freeze') || (event.target instanceof Element && event.target.closest('.wall'))) return
      event.preventDefault()
      event.stopPropagation()
    }
    // Before whatever else hears keys: what is frozen does not move by keys either.
    addEventListener('keydown', onKey, { capture: true })
    return () => removeEventListener('keydown', onKey, { capture: true })
  })
  const hasInk = strokes.length > 0
  return (
    <div class="wall">
      {on.has('freeze') ? <div class="wall-still" aria-hidden="true" /> : null}
      {on.has('draw') || hasInk ? (
        <Ink
          strokes={strokes}
          onStroke={on.has('draw') ? (stroke) => setStrokes((all) => [...all, stroke]) : null}
        />
      ) : null}
      {on.has('timer') ? <TimerTool /> : null}
      {on.has('hands') ? <Hands /> : null}
      <div class="wall-tools" role="toolbar" aria-label="At the wall">
        {TOOLS.map(({ tool, label, key, says }, k) => (
          <button
            type="button"
            class="button"
            key={tool}
            ref={k === 0 ? first : null}
            aria-pressed={on.has(tool)}
            aria-keyshortcuts={key}
            title={`${says} (${key.toUpperCase()})`}
            onClick={() => turn(tool)}
          >
            {label}
          </button>
        ))}
        <button
          type="button"
          class="button"
          aria-disabled={!hasInk}
          aria-keyshortcuts="w"
          title="Takes away all that was drawn (W)"
          onClick={() => setStrokes([])}
        >
          Wipe
        </button>
        <button
          type="button"
          class="button"
          aria-keyshortcuts="n"
          title="Opens a window for you alone (N)"
          onClick={openNotes}
        >
          Notes
        </button>
        <button type="button" class="button" onClick={onClose}>
          Put away
        </button>
      </div>
      {on.has('point') ? <Pointer /> : null}
      <p class="wall-says" role="status">
        {on.has('freeze') ? 'Frozen: press Freeze again to go on.' : ''}
      </p>
    </div>
  )
}
