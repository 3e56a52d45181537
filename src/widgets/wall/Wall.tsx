import './wall.css'
import type { JSX } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/wall.ts'
import type { AtWall, Tool } from './at-wall.ts'
import { AWAY, NOTES, toolsFor, WIPE } from './at-wall.ts'
import { Hands } from './Hands.tsx'
import { Ink } from './Ink.tsx'
import type { Stroke } from './ink.ts'
import { Keys } from './Keys.tsx'
import { TimerTool } from './TimerTool.tsx'

export interface WallProps {
  readonly at: AtWall
  readonly onClose: () => void
}

/** Words that are typed keep their keys. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.matches('input[type="text"], input[type="search"], textarea, select, [contenteditable]')

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

/** Whether the tools' bar has all that is beneath it give way: its height, for the styles of the page. */
function useHeight() {
  const bar = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (!bar.current) return undefined
    const { style } = document.documentElement
    const watch = new ResizeObserver(([entry]) => {
      style.setProperty('--wall-bar', `${entry?.borderBoxSize[0]?.blockSize ?? 0}px`)
      // What is fitted to the screen is fitted anew.
      dispatchEvent(new Event('resize'))
    })
    watch.observe(bar.current)
    return () => {
      watch.disconnect()
      style.removeProperty('--wall-bar')
      dispatchEvent(new Event('resize'))
    }
  }, [])
  return bar
}

/** Tools for whoever stands at the wall: over the page, never of it. Nothing of them is kept. */
export function Wall({ at, onClose }: WallProps): JSX.Element {
  const [on, setOn] = useState<ReadonlySet<Tool>>(new Set())
  const [strokes, setStrokes] = useState<readonly Stroke[]>([])
  const first = useRef<HTMLButtonElement>(null)
  const bar = useHeight()
  const tools = toolsFor(at)
  useEffect(() => first.current?.focus(), [])
  const turn = (tool: Tool) => {
    if (tool === 'freeze' && !on.has(tool)) at.rest?.()
    const next = new Set(on)
    if (!next.delete(tool)) next.add(tool)
    setOn(next)
  }
  // At once: the next key finds what the last one turned on.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      const found = tools.find((one) => one.key === key)
      if (found) turn(found.tool)
      else if (key === 'w') setStrokes([])
      else if (key === 'n' && at.notes) at.notes()
      else if (key === 'escape') onClose()
      // Tab still leads to the tools.
      else if (!on.has('freeze') || key === 'tab') return
      else if (event.target instanceof Element && event.target.closest('.wall-kit')) return
      event.preventDefault()
      event.stopPropagation()
    }
    // Before whatever else hears keys: what is frozen does not move by keys either.
    addEventListener('keydown', onKey, { capture: true })
    return () => removeEventListener('keydown', onKey, { capture: true })
  })
  const hasInk = strokes.length > 0
  return (
    <section class="wall-kit" aria-label={says.overThePage}>
      {on.has('freeze') ? <div class="wall-still" aria-hidden="true" /> : null}
      {on.has('draw') || hasInk ? (
        <Ink
          strokes={strokes}
          onStroke={on.has('draw') ? (stroke) => setStrokes((all) => [...all, stroke]) : null}
        />
      ) : null}
      {on.has('timer') ? <TimerTool /> : null}
      {on.has('hands') ? <Hands asked={at.asked ?? null} /> : null}
      {on.has('keys') ? <Keys at={at} /> : null}
      <div class="wall-tools" role="toolbar" aria-label={says.atTheWall} ref={bar}>
        {tools.map(({ tool, label, key, says: does }, k) => (
          <button
            type="button"
            class="button"
            key={tool}
            ref={k === 0 ? first : null}
            aria-pressed={on.has(tool)}
            aria-keyshortcuts={key}
            title={says.doesByKey(does, key.toUpperCase())}
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
          title={says.doesByKey(WIPE.says, WIPE.key)}
          onClick={() => setStrokes([])}
        >
          {says.wipe}
        </button>
        {at.notes ? (
          <button
            type="button"
            class="button"
            aria-keyshortcuts="n"
            title={says.doesByKey(NOTES.says, NOTES.key)}
            onClick={at.notes}
          >
            {says.notes}
          </button>
        ) : null}
        <button
          type="button"
          class="button"
          aria-keyshortcuts="Escape"
          title={says.doesByKey(AWAY.says, AWAY.key)}
          onClick={onClose}
        >
          {says.putAway}
        </button>
      </div>
      {on.has('point') ? <Pointer /> : null}
      <p class="wall-says" role="status">
        {on.has('freeze') ? says.frozen : ''}
      </p>
    </section>
  )
}
