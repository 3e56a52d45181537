import type { JSX } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import { PAPERS } from '../../drawing/pen/papers.ts'
import { matrixOf } from '../../drawing/pen/svg-values.ts'
import type { Design, Flat } from '../../paper/index.ts'
import { glueArea, modelOf, ownerOf, placedOn, seenUpright, uprightOn } from '../../paper/index.ts'
import { flattened, fromStroke, slotFor, snapped } from './outline.ts'
import { useRunOfKeys } from './run-of-keys.ts'
import type { Point, Sketch } from './sketch.ts'
import { artLines, edgesOn, picturesOn, pointsOf, ringOf } from './sketch.ts'

/** A point is taken up from so far, px: by a mouse, and by a finger. */
const GRAB = { mouse: 12, finger: 22 } as const

/** A new point goes into an edge from so far, px. */
const ON_EDGE = 9

/** Points are drawn to corners and edges from so far, px. */
const SNAP = 8

/** Around the face, as a share of it. */
const ROUND = 0.14

/** About as wide as it is drawn, px. */
const WIDE = 340

const far = (a: Flat, b: Flat): number => Math.hypot(a[0] - b[0], a[1] - b[1])

export interface PlanProps {
  readonly design: Design
  /** The face that is drawn on. */
  readonly panel: string
  /** The piece whose outline is drawn: it is not shown as something that lies there. */
  readonly without?: string
  readonly sketch: Sketch
  readonly chosen: number
  readonly snaps: boolean
  /** A stroke is drawn, not points set. */
  readonly free: boolean
  /** What is drawn is a piece to cut out, with a place for glue. */
  readonly cuts: boolean
  readonly onSketch: (sketch: Sketch, chosen: number) => void
  /** A drag, a stroke or a run of keys has come to its end. */
  readonly onRest: () => void
}

/** The face lying flat, upright as the reader sees it in the open card, and the outline that is drawn on it. */
export function PlanDrawing(props: PlanProps): JSX.Element {
  const { design, panel, without, sketch, chosen, snaps, free, cuts, onSketch, onRest } = props
  const { points, curve, closed } = sketch
  const svg = useRef<SVGSVGElement>(null)
  const [dragged, setDragged] = useState<{ readonly index: number; readonly off: Flat } | null>(null)
  const [stroke, setStroke] = useState<readonly Flat[] | null>(null)
  const there = useMemo(() => {
    const model = modelOf(design)
    const index = model.panels.findIndex(({ name }) => name === panel)
    const face = model.panels[index]
    const stuck = model.panels.filter(
      ({ stuckOn, name }) => stuckOn === index && (without === undefined || !name.startsWith(`${without}/`)),
    )
    return {
      index,
      model,
      outline: face?.outline ?? [],
      holes: (face?.notches ?? []).map((notch) => notch.outline),
      stuck: stuck.map(({ outline }) => outline),
      drawn: artLines(design, panel),
      pictures: picturesOn(design, panel),
      paper: design.papers?.[ownerOf(panel)],
      edges: edgesOn(design, panel),
      upright: uprightOn(design, panel),
    }
  }, [design, panel, without])
  const { outline, holes, stuck, drawn: art, pictures, paper, edges, upright } = there
  // The frame stays as it is while a point is dragged out of it.
  const [grown, setGrown] = useState<readonly Flat[]>([])
  useEffect(() => {
    if (!dragged && !stroke) setGrown(points.map(({ at }) => at))
  }, [points, dragged, stroke])
  const seen = (p: Flat): Flat => {
    const [x, y] = seenUpright(upright, p)
    return [x, -y]
  }
  const framed = [...outline, ...grown].map(seen)
  const [xs, ys] = [framed.map(([x]) => x), framed.map(([, y]) => y)]
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top]
  const edge = ROUND * Math.max(wide, high)
  const width = Math.max(wide, 0.6 * high) + 2 * edge
  const box = [left - (width - wide) / 2, top - edge, width, high + 2 * edge]
  /** mm for each px, about. */
  const mm = width / WIDE
  const onPanel = placedOn(upright, [0, 0])
  const at = (event: PointerEvent): Flat => {
    const to = svg.current?.getScreenCTM()?.inverse()
    if (!to) return [0, 0]
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(to)
    return onPanel([x, -y])
  }
  const lines = (ring: readonly Flat[]): string =>
    ring
      .map(seen)
      .map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`)
      .join(' ')
  const rings = [outline, ...holes, ...stuck]
  const drawn = (p: Flat): Flat => (snaps ? snapped(p, rings, SNAP * mm) : p)
  const set = (next: readonly Point[], index: number) => onSketch({ ...sketch, points: next }, index)
  const down = (event: PointerEvent & { currentTarget: SVGSVGElement }) => {
    if (event.button !== 0) return
    event.preventDefault()
    event.currentTarget.setPointerCapture(event.pointerId)
    const p = at(event)
    if (free) {
      setStroke([p])
      return
    }
    const grab = (event.pointerType === 'mouse' ? GRAB.mouse : GRAB.finger) * mm
    const near = points
      .map((point, index) => ({ index, off: far(point.at, p), at: point.at }))
      .filter(({ off }) => off <= grab)
      .toSorted((a, b) => a.off - b.off)[0]
    if (near) {
      setDragged({ index: near.index, off: [near.at[0] - p[0], near.at[1] - p[1]] })
      onSketch(sketch, near.index)
      return
    }
    const slot = slotFor(
      points.map((point) => point.at),
      p,
      closed && points.length > 2,
    )
    const after = slot.off <= ON_EDGE * mm ? slot.after : points.length - 1
    set([...points.slice(0, after + 1), { at: drawn(p) }, ...points.slice(after + 1)], after + 1)
    setDragged({ index: after + 1, off: [0, 0] })
  }
  const move = (event: PointerEvent) => {
    const p = at(event)
    if (stroke) {
      if (far(stroke.at(-1) as Flat, p) > 2 * mm) setStroke([...stroke, p])
    } else if (dragged) {
      const to = drawn([p[0] + dragged.off[0], p[1] + dragged.off[1]])
      set(
        points.map((point, k) => (k === dragged.index ? { ...point, at: to } : point)),
        dragged.index,
      )
    }
  }
  const up = () => {
    if (stroke && stroke.length > 3)
      onSketch({ ...sketch, curve: true, points: fromStroke(stroke, closed).map((p) => ({ at: p })) }, 0)
    setStroke(null)
    setDragged(null)
    onRest()
  }
  const run = useRunOfKeys(onRest)
  const press = (event: KeyboardEvent, index: number) => {
    const step = event.shiftKey ? 5 : event.altKey ? 0.1 : 1
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key]
    const other = { PageDown: 1, PageUp: -1 }[event.key]
    if (way) {
      const [x, y] = way as [number, number]
      const by = onPanel([step * x, step * y])
      set(
        points.map((point, k) =>
          k === index ? { ...point, at: [point.at[0] + by[0], point.at[1] + by[1]] } : point,
        ),
        index,
      )
      run.goesOn()
    } else {
      run.ends()
      if (other !== undefined) onSketch(sketch, (index + other + points.length) % points.length)
      else if (event.key === 'Delete' || event.key === 'Backspace')
        set(
          points.filter((_, k) => k !== index),
          Math.max(0, Math.min(index, points.length - 2)),
        )
      else return
      onRest()
    }
    event.preventDefault()
    event.stopPropagation()
  }
  // Focus goes along with the point that keys move.
  useEffect(() => {
    const active = document.activeElement
    if (active?.closest('.plan') === svg.current && active?.tagName === 'circle')
      svg.current?.querySelectorAll<SVGCircleElement>('circle')[chosen]?.focus()
  }, [chosen])
  const ring = cuts ? ringOf(sketch) : null
  const glue = ring && !dragged ? glueArea(there.model, there.index, ring) : null
  const shown = curve && points.length > 2 ? flattened(pointsOf(sketch), closed) : points.map((p) => p.at)
  const Line = closed && points.length > 2 ? 'polygon' : 'polyline'
  return (
    // biome-ignore lint/a11y/useSemanticElements: no other element groups the points of a drawing
    <svg
      ref={svg}
      class="plan"
      viewBox={box.map((x) => x.toFixed(2)).join(' ')}
      role="group"
      aria-label={says.planLabel}
      data-free={free}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
    >
      <defs>
        <pattern
          id="plan-hatch"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
          width={6 * mm}
          height={6 * mm}
        >
          <line class="plan-hatch" x1="0" y1="0" x2="0" y2={6 * mm} />
        </pattern>
      </defs>
      <polygon
        class="plan-face"
        points={lines(outline)}
        style={paper === undefined ? undefined : `fill:${PAPERS[paper]}`}
      />
      {pictures.map(({ shape, picture, trace }, k) => (
        <image
          key={k}
          class={trace ? 'plan-picture trace' : 'plan-picture'}
          transform={matrixOf(shape.map(seen))}
          href={picture}
          width="1"
          height="1"
          preserveAspectRatio="none"
        />
      ))}
      {art.map(({ points: ring, closed: isClosed, fill, line }, k) =>
        isClosed ? (
          <polygon key={k} points={lines(ring)} fill={fill ?? 'none'} stroke={line ?? 'none'} />
        ) : (
          <polyline key={k} points={lines(ring)} fill="none" stroke={line ?? 'none'} stroke-width={1.5} />
        ),
      )}
      {holes.map((hole, k) => (
        <polygon key={k} class="plan-hole" points={lines(hole)} />
      ))}
      {stuck.map((other, k) => (
        <polygon key={k} class="plan-beside" points={lines(other)} />
      ))}
      {edges.map(({ name, fold, ends }) => (
        <polyline key={name} class={`plan-fold ${fold}`} points={lines(ends)} />
      ))}
      <Line class={cuts ? 'plan-cut' : 'plan-ink'} points={lines(shown)} />
      {glue ? <polygon class="plan-glue" points={lines(glue)} /> : null}
      {stroke ? <polyline class="plan-stroke" points={lines(stroke)} /> : null}
      {points.map((point, k) => {
        const [x, y] = seen(point.at)
        const [a, l] = point.at
        return (
          // biome-ignore lint/a11y/useSemanticElements: a drawing holds no buttons
          <circle
            key={k}
            class="plan-point"
            cx={x.toFixed(2)}
            cy={y.toFixed(2)}
            r={(k === chosen ? 6.5 : 4.5) * mm}
            data-chosen={k === chosen}
            tabIndex={k === chosen ? 0 : -1}
            role="button"
            aria-label={says.pointAt(k + 1, points.length, a.toFixed(1), l.toFixed(1))}
            onFocus={() => {
              if (k !== chosen) onSketch(sketch, k)
            }}
            onKeyDown={(event) => press(event, k)}
            onBlur={run.ends}
          />
        )
      })}
    </svg>
  )
}
