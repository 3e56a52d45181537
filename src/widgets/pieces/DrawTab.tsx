import type { JSX } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import type { Flat } from '../../paper/index.ts'
import { glueArea, modelOf, placedOn, seenUpright, uprightOn } from '../../paper/index.ts'
import { roundest } from '../../paper/plane/roundest.ts'
import { PictureTools } from './PictureTools.tsx'
import type { DraftProps, PiecesProps } from './PiecesDesk.tsx'
import { PlanDrawing } from './PlanDrawing.tsx'
import { Check, PathField, PointFields } from './SketchTools.tsx'
import type { Sketch } from './sketch.ts'
import { addPiece, ringOf, twinOf } from './sketch.ts'

export const NOTHING_DRAWN: Sketch = { points: [], curve: true, closed: true }

/** Of the widest free circle of a face: so wide an outline that is brought in is at first. */
const BROUGHT = 1.5

interface SketchDeskProps {
  readonly props: PiecesProps
  /** The face that is drawn on. */
  readonly on: string
  readonly without?: string
  readonly sketch: Sketch
  readonly setSketch: (sketch: Sketch) => void
  readonly cuts: boolean
  /** A change has come to its end: a drag, a press, a number typed. */
  readonly onRest?: () => void
}

const NOTHING_TO_DO = (): void => {}

/** The flat face with the tools to draw on it. */
export function SketchDesk({
  props,
  on,
  without,
  sketch,
  setSketch,
  cuts,
  onRest = NOTHING_TO_DO,
}: SketchDeskProps): JSX.Element {
  const { design } = props
  const [chosen, setChosen] = useState(0)
  const [snaps, setSnaps] = useState(true)
  const [free, setFree] = useState(false)
  const onSketch = (next: Sketch, index: number) => {
    setSketch(next)
    setChosen(index)
    if (free && next.points.length > 3) setFree(false)
  }
  const spot = useMemo(() => {
    const panel = modelOf(design).panels.find(({ name }) => name === on)
    return roundest(
      [panel?.outline ?? []],
      panel?.notches.map(({ outline }) => outline),
    )
  }, [design, on])
  const bring = (outline: readonly Flat[]) => {
    const place = placedOn(uprightOn(design, on), spot.at, BROUGHT * spot.radius)
    onSketch({ points: outline.map((p) => ({ at: place(p) })), curve: false, closed: true }, 0)
    onRest()
  }
  return (
    <>
      <div class="pieces-row">
        <Check
          label={says.smooth}
          on={sketch.curve}
          onSet={(curve) => {
            setSketch({ ...sketch, curve })
            onRest()
          }}
        />
        <Check label={says.snapToEdges} on={snaps} onSet={setSnaps} />
        <button type="button" class="button small" aria-pressed={free} onClick={() => setFree(!free)}>
          {says.freehand}
        </button>
      </div>
      <PlanDrawing
        {...{ design, sketch, chosen, snaps, free, cuts, onSketch, onRest }}
        panel={on}
        {...(without === undefined ? {} : { without })}
      />
      <PointFields {...{ sketch, chosen, onSketch, onRest }} middle={spot.at} />
      <PathField onOutline={bring} />
      <PictureTools
        {...{ props }}
        panel={on}
        at={seenUpright(uprightOn(design, on), spot.at)}
        wide={2 * BROUGHT * spot.radius}
      />
    </>
  )
}

/** Draws an outline on a face and sticks the piece on. */
export function DrawTab(props: PiecesProps & DraftProps): JSX.Element {
  const { design, panel, take, draft, setDraft } = props
  const sketch = draft?.sketch ?? NOTHING_DRAWN
  const setSketch = (next: Sketch) => setDraft({ sketch: next })
  const [both, setBoth] = useState(false)
  const twin = twinOf(design, panel)
  const ring = ringOf(sketch)
  const noGlue = useMemo(() => {
    if (!ring) return false
    const model = modelOf(design)
    return !glueArea(
      model,
      model.panels.findIndex(({ name }) => name === panel),
      ring,
    )
  }, [design, panel, ring])
  const told = sketch.points.length < 3 ? says.drawOutline : noGlue ? says.layMoreOn : says.hatchedIsGlued
  return (
    <>
      <p class="slip-says" role="status">
        {told}
      </p>
      <SketchDesk {...{ props, sketch, setSketch }} on={panel} cuts />
      {twin === null ? null : <Check label={says.onBothSides} on={both} onSet={setBoth} />}
      <div class="slip-buttons pieces-stays">
        <button
          type="button"
          class="button primary"
          disabled={!ring || noGlue}
          onClick={() => {
            if (take(addPiece(design, panel, sketch, both && twin !== null), says.stuckOn) === null)
              setDraft(null)
          }}
        >
          {says.stickOn}
        </button>
      </div>
    </>
  )
}
