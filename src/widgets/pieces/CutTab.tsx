import type { JSX } from 'preact'
import { useMemo, useRef } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import { modelOf, nameOf, trim, trimHits, trimToFace } from '../../paper/index.ts'
import { take as taken } from '../keeping/edits.ts'
import { lengthUnit } from '../model/page.ts'
import { large, shown } from '../state/format.ts'
import { SketchDesk } from './DrawTab.tsx'
import type { DraftProps, PiecesProps } from './PiecesDesk.tsx'
import type { Sketch } from './sketch.ts'
import { reshape, ringOf, sameRing, sketchOf } from './sketch.ts'

/** The outline of a piece: trimmed, or drawn anew. What is drawn is cut at once; what makes no piece yet is kept. */
export function CutTab(props: PiecesProps & DraftProps & { readonly piece: string }): JSX.Element {
  const { design, piece, faults, sticksOut, isHit, glueFails, take, draft, setDraft } = props
  const { panel, outline } = useMemo(() => {
    const { panels } = modelOf(design)
    const own = panels.find(({ name }) => name === `${piece}/face`)
    return { panel: panels[own?.stuckOn ?? -1]?.name ?? 'page/right', outline: own?.outline ?? [] }
  }, [design, piece])
  const asItIs = useMemo(() => sketchOf(outline), [outline])
  // What was drawn on another outline than the one that lies there is none of this one's: it was undone, or trimmed.
  const mine = draft?.of && sameRing(draft.of, outline) ? draft : null
  const sketch = mine?.sketch ?? asItIs
  // Hands are quicker than pictures: what they did last counts.
  const latest = useRef(sketch)
  latest.current = sketch
  const name = large(nameOf(piece))
  const setSketch = (next: Sketch) => {
    const before = latest.current
    if (next.points === before.points && next.curve === before.curve) return
    latest.current = next
    setDraft({ sketch: next, of: outline })
  }
  const rest = () => {
    const drawn = latest.current
    const ring = ringOf(drawn)
    if (drawn === asItIs || !ring || sameRing(ring, outline)) return
    const edit = reshape(design, piece, drawn)
    // It is its own draft from now on: the points stay where the hand left them.
    if (edit.done && take(edit, says.newOutline(name)) === null) setDraft({ sketch: drawn, of: ring })
  }
  const pending = useMemo(() => {
    const ring = mine && ringOf(mine.sketch)
    if (!mine || (ring && sameRing(ring, outline))) return null
    const edit = reshape(design, piece, mine.sketch)
    return edit.done ? '' : edit.sentence
  }, [design, piece, mine, outline])
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
      <SketchDesk {...{ props, sketch, setSketch }} on={panel} without={piece} cuts onRest={rest} />
      {pending ? (
        <div class="slip-buttons pieces-stays">
          <p class="trouble" role="status">
            {says.notCutYet(pending)}
          </p>
          <button type="button" class="button" onClick={() => setDraft(null)}>
            {says.leaveAsItWas}
          </button>
        </div>
      ) : null}
    </>
  )
}
