import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import type { Flat } from '../../paper/index.ts'
import {
  glueArea,
  modelOf,
  nameOf,
  placedOn,
  seenUpright,
  trim,
  trimHits,
  trimToFace,
  uprightOn,
} from '../../paper/index.ts'
import { roundest } from '../../paper/plane/roundest.ts'
import { take as taken } from '../keeping/edits.ts'
import { lengthUnit } from '../model/page.ts'
import { large, shown } from '../state/format.ts'
import { PictureTools } from './PictureTools.tsx'
import type { PiecesProps } from './PiecesDesk.tsx'
import { PlanDrawing } from './PlanDrawing.tsx'
import { Check, PathField, PointFields } from './SketchTools.tsx'
import type { Sketch } from './sketch.ts'
import { addPiece, reshape, ringOf, sketchOf, twinOf } from './sketch.ts'

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
}

/** The flat face with the tools to draw on it. */
export function SketchDesk({ props, on, without, sketch, setSketch, cuts }: SketchDeskProps): JSX.Element {
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
  }
  return (
    <>
      <div class="pieces-row">
        <Check label={says.smooth} on={sketch.curve} onSet={(curve) => setSketch({ ...sketch, curve })} />
        <Check label={says.snapToEdges} on={snaps} onSet={setSnaps} />
        <button type="button" class="button small" aria-pressed={free} onClick={() => setFree(!free)}>
          {says.freehand}
        </button>
      </div>
      <PlanDrawing
        {...{ design, sketch, chosen, snaps, free, cuts, onSketch }}
        panel={on}
        {...(without === undefined ? {} : { without })}
      />
      <PointFields {...{ sketch, chosen, onSketch }} middle={spot.at} />
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
export function DrawTab(props: PiecesProps): JSX.Element {
  const { design, panel, take } = props
  const [sketch, setSketch] = useState<Sketch>(NOTHING_DRAWN)
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
      <div class="slip-buttons">
        <button
          type="button"
          class="button primary"
          disabled={!ring || noGlue}
          onClick={() => {
            take(addPiece(design, panel, sketch, both && twin !== null), says.stuckOn)
            setSketch(NOTHING_DRAWN)
          }}
        >
          {says.stickOn}
        </button>
      </div>
    </>
  )
}

/** The outline of a piece: trimmed, or drawn anew. */
export function CutTab(props: PiecesProps & { readonly piece: string }): JSX.Element {
  const { design, piece, faults, sticksOut, isHit, glueFails, take } = props
  const { panel, outline } = useMemo(() => {
    const { panels } = modelOf(design)
    const own = panels.find(({ name }) => name === `${piece}/face`)
    return { panel: panels[own?.stuckOn ?? -1]?.name ?? 'page/right', outline: own?.outline ?? [] }
  }, [design, piece])
  const asItIs = (): Sketch => sketchOf(outline)
  const [sketch, setSketch] = useState(asItIs)
  const [touched, setTouched] = useState(false)
  useEffect(() => {
    setSketch(asItIs())
    setTouched(false)
  }, [outline])
  const name = large(nameOf(piece))
  const cut = useMemo(() => (sticksOut ? trim(design, piece) : null), [design, piece, sticksOut])
  const length = lengthUnit.value
  const clear = () => {
    const found = trimHits(design, piece)
    if (!found.done) take({ done: false, design, sentence: found.sentence }, '')
    else take(taken(design, found.design, piece), says.cutClear(name))
  }
  const toFace = () => {
    const found = trimToFace(design, piece)
    if (!found.done) take({ done: false, design, sentence: found.sentence }, '')
    else if (found.off === 0) take({ done: false, design, sentence: says.withinFace(name) }, '')
    else take(taken(design, found.design, piece), says.cutToItsFace(name))
  }
  return (
    <>
      {faults.length === 0 ? (
        <p class="slip-says">{says.cutBigFirst}</p>
      ) : (
        <ul class="pieces-faults">
          {faults.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <div class="slip-buttons">
        {cut?.done && cut.off > 0 ? (
          <button
            type="button"
            class="button primary"
            onClick={() =>
              take(taken(design, cut.design, piece), says.trimmed(name, shown(cut.off, 'mm', length)))
            }
          >
            {says.trimIt(shown(cut.off, 'mm', length))}
          </button>
        ) : null}
        {isHit && !sticksOut ? (
          <button type="button" class="button primary" onClick={clear}>
            {says.cutOffHit}
          </button>
        ) : null}
        {glueFails ? (
          <button
            type="button"
            class="button primary"
            onClick={() =>
              take(
                reshape(design, piece, { points: outline.map((at) => ({ at })), curve: false, closed: true }),
                says.gluedWhereItLies(name),
              )
            }
          >
            {says.glueWhereItLies}
          </button>
        ) : null}
        <button
          type="button"
          class={faults.length > 0 && !sticksOut && !isHit && !glueFails ? 'button primary' : 'button'}
          onClick={toFace}
        >
          {says.cutToFace}
        </button>
      </div>
      {cut && !cut.done ? <p class="trouble">{cut.sentence}</p> : null}
      <SketchDesk
        {...{ props, sketch }}
        setSketch={(next) => {
          if (next.points !== sketch.points || next.curve !== sketch.curve) setTouched(true)
          setSketch(next)
        }}
        on={panel}
        without={piece}
        cuts
      />
      <div class="slip-buttons">
        <button
          type="button"
          class="button primary"
          disabled={!touched || !ringOf(sketch)}
          onClick={() => take(reshape(design, piece, sketch), says.newOutline(name))}
        >
          {says.cutSo}
        </button>
        {touched ? (
          <button
            type="button"
            class="button"
            onClick={() => {
              setSketch(asItIs())
              setTouched(false)
            }}
          >
            {says.leaveAsItWas}
          </button>
        ) : null}
      </div>
    </>
  )
}
