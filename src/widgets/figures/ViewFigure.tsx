import type { ComponentChildren, JSX } from 'preact'
import { useRef } from 'preact/hooks'
import * as says from '../../../content/words/bench.ts'
import { pointInView } from '../../drawing/page-point/page-point.ts'
import { openingsNear } from '../../drawing/view/camera.ts'
import type { View, ViewOptions } from '../../drawing/view/view.ts'
import { view } from '../../drawing/view/view.ts'
import type { Bench } from '../model/bench-model.ts'
import { lengthUnit } from '../model/page.ts'
import { angleWords, shown } from '../state/format.ts'
import { slid } from '../state/keys.ts'
import { openingsOf } from '../state/opening.ts'
import { opened, seenFrom } from '../state/state.ts'
import { Figure } from './Figure.tsx'
import type { Place } from './Grip.tsx'
import { Grip } from './Grip.tsx'
import type { Scene } from './painter.ts'
import { brushes } from './quick.ts'
import { useKept, usePicture, useStage } from './stage.ts'
import { veiled, veils } from './veil.ts'

/** Degrees the view turns for each pixel of a drag. */
const TURN_PER_PIXEL = 0.45

/** The eye's distance, in diagonals of the card: near a card that lies open, further from one that stands before it. */
const EYE = { gutter: 1.6, edge: 2.2 } as const

/** A drag that began on the card or beside it. */
interface Drag {
  readonly pointer: number
  readonly from: Place
  readonly of: string | null
  move(to: Place): void
}

/** A drag anywhere on a page moves its edge as the handle would; on the left page mirror-wise. */
function cardDrag(bench: Bench, drawn: View, handle: Place, from: Place, onLeft: boolean): Drag['move'] {
  return ([x, y]) => {
    const dx = onLeft ? from[0] - x : x - from[0]
    bench.move((now) => opened(now, drawn.toOpening([handle[0] + dx, handle[1] + y - from[1]])))
  }
}

const tableDrag =
  (bench: Bench, from: Place): Drag['move'] =>
  ([x, y]) =>
    bench.move((now) =>
      seenFrom(now, {
        turn: now.camera.turn - (x - from[0]) * TURN_PER_PIXEL,
        tilt: now.camera.tilt + (y - from[1]) * TURN_PER_PIXEL,
      }),
    )

interface ViewFigureProps {
  readonly bench: Bench
  readonly options: ViewOptions
  /** What lies over the picture, where it is drawn. */
  readonly over?: (drawn: View) => ComponentChildren
  /** A press that drags nothing, on a panel or (null) beside the card. */
  readonly onPress?: (panel: string | null) => void
  /** It is drawn again only when the hand rests: a small picture beside a large one. */
  readonly small?: boolean
}

/** A pointer that goes no farther has pressed and not dragged, px. */
const STILL = 4

/** The standing card: drag the card to open and shut it, drag the table to look from elsewhere. */
export function ViewFigure({ bench, options, over, onPress, small = false }: ViewFigureProps): JSX.Element {
  const stage = useStage({ width: 378, height: 293 }, small)
  const { ref, size, text } = stage
  const drag = useRef<Drag | null>(null)
  const kept = useKept<readonly [View, Scene | undefined]>()
  return usePicture(bench, stage, 'view', (moving) => {
    const { opening, camera, point, design } = bench.state.value
    const [least, most] = openingsOf(design)
    const unit = lengthUnit.value
    const poser = bench.poser.value
    const faults = bench.checks.value
    const stand = bench.config.stand ?? 'gutter'
    const veil = veils(bench)
    const brush = brushes.quick
    const isPainted = moving && brush !== undefined
    const made = [
      poser,
      opening,
      point,
      camera,
      size,
      moving,
      faults,
      text,
      unit,
      veil,
      isPainted,
      options.rise?.[0],
    ]
    const [drawn, scene] = kept(made, () => {
      const lens = { ...camera, far: EYE[stand] }
      const card = { ...options, stand, frame: openingsNear(bench.start.opening, opening), moving }
      const plain = view(poser, opening, lens, size, {
        ...card,
        handle: true,
        faults: faults ?? [],
        text,
        unit,
        over: isPainted,
      })
      const measured = point ? pointInView(plain, point, opening, { text, unit }) : plain
      const covered = veil ? { ...measured, marks: veiled(measured.marks) } : measured
      const painted = isPainted
        ? { design: poser.model.design, opening, camera: lens, size, options: card }
        : undefined
      return [covered, painted] as const
    })
    const dot = drawn.marks.find((mark) => mark.mark === 'dot' && mark.of === 'opening')
    const handle: Place = dot?.mark === 'dot' ? dot.at : [0, 0]

    const placeOf = (event: PointerEvent): Place => {
      const { left, top } = (event.currentTarget as Element).getBoundingClientRect()
      return [event.clientX - left, event.clientY - top]
    }
    const end = (event: PointerEvent, how: () => void) => {
      if (drag.current?.pointer !== event.pointerId) return
      const { of, from } = drag.current
      drag.current = null
      how()
      const [x, y] = placeOf(event)
      if (event.type === 'pointerup' && Math.hypot(x - from[0], y - from[1]) <= STILL) onPress?.(of)
    }
    return (
      // The keys' way to do the same: the slider of the opening, and the knobs.
      <div
        class="stage stage-view"
        data-held={bench.held.value}
        ref={ref}
        onPointerDown={(event) => {
          const target = event.target as Element
          if (event.button !== 0 || drag.current || target.closest('.grip')) return
          const from = placeOf(event)
          const of = target.closest('.sheet')?.getAttribute('data-of')
          bench.hold(of ? 'opening' : 'camera')
          const move = of
            ? cardDrag(bench, drawn, handle, from, of.endsWith('/left'))
            : tableDrag(bench, from)
          drag.current = { pointer: event.pointerId, from, of: of ?? null, move }
          event.currentTarget.setPointerCapture(event.pointerId)
        }}
        onPointerMove={(event) => {
          if (drag.current?.pointer === event.pointerId) drag.current.move(placeOf(event))
        }}
        onPointerUp={(event) => end(event, bench.release)}
        // The browser takes a finger over to scroll: what it did here is undone.
        onPointerCancel={(event) => end(event, bench.cancel)}
        onLostPointerCapture={(event) => end(event, bench.release)}
      >
        <Figure drawing={drawn} {...{ card: drawn.card, brush, scene }} />
        <Grip
          label={says.openingByEdge}
          at={handle}
          box={size}
          value={{ now: opening, min: least, max: most, text: angleWords(opening) }}
          held={bench.held.value === 'opening'}
          rides={`${says.openingBefore} ${shown(opening, 'deg', 'mm')}`}
          onHold={() => bench.hold('opening')}
          onMove={(to) => bench.move((now) => opened(now, drawn.toOpening(to)))}
          onRelease={bench.release}
          onCancel={bench.cancel}
          onKey={(press) => bench.step('opening', (now) => opened(now, slid(press, now.opening, 0, 180)))}
          onRest={bench.rest}
        />
        {over?.(drawn)}
      </div>
    )
  })
}
