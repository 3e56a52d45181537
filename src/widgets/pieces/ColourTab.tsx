import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import type { PaperColour } from '../../paper/index.ts'
import { nameOf, ownerOf } from '../../paper/index.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { lengthUnit } from '../model/page.ts'
import { NOTHING_DRAWN, SketchDesk } from './DrawTab.tsx'
import type { DraftProps, PiecesProps } from './PiecesDesk.tsx'
import { Check } from './SketchTools.tsx'
import { Swatches } from './Swatches.tsx'
import type { Ink, Sketch } from './sketch.ts'
import { draw, drawnOn, paper, rub, twinOf } from './sketch.ts'

const FIRST_INK: Ink = { fill: 'amber', line: false, lineColour: 'ink', lineWidth: 0.6 }

/** What a face is cut from, and what is drawn on it. It weighs nothing and moves with the face. */
export function ColourTab(props: PiecesProps & DraftProps): JSX.Element {
  const { design, panel, take, draft, setDraft } = props
  const sketch = draft?.sketch ?? NOTHING_DRAWN
  const setSketch = (next: Sketch) => setDraft({ sketch: next })
  const [ink, setInk] = useState<Ink>(FIRST_INK)
  const [both, setBoth] = useState(false)
  const owner = ownerOf(panel)
  const chosen = design.papers?.[owner] ?? null
  const count = drawnOn(design, panel)
  const twin = twinOf(design, panel)
  const what = owner === 'page' ? says.ofCard : says.ofPart(nameOf(owner))
  const colour = (next: PaperColour | null) =>
    take(
      paper(design, panel, next),
      next === null ? says.whitePaper(what) : says.paperChosen(what, says.papers[next]),
    )
  const isReady = sketch.points.length >= (sketch.closed ? 3 : 2)
  return (
    <>
      <Swatches label={says.paperOf(what)} {...{ chosen }} none={says.plainPaper} onChoose={colour} />
      <h3>{says.drawOnIt}</h3>
      <p class="slip-says">{says.weighsNothing}</p>
      <div class="pieces-row">
        <Check
          label={says.closedShape}
          on={sketch.closed}
          onSet={(closed) => setSketch({ ...sketch, closed })}
        />
        <Check
          label={says.outlineDrawn}
          on={ink.line || !sketch.closed || ink.fill === null}
          onSet={(line) => setInk({ ...ink, line })}
        />
      </div>
      <SketchDesk {...{ props, sketch, setSketch }} on={panel} cuts={false} />
      {sketch.closed ? (
        <Swatches
          label={says.filledWith}
          chosen={ink.fill}
          none={says.filledWithNothing}
          onChoose={(fill) => setInk({ ...ink, fill, line: ink.line || fill === null })}
        />
      ) : null}
      {ink.line || !sketch.closed || ink.fill === null ? (
        <>
          <Swatches
            label={says.line}
            chosen={ink.lineColour}
            none={null}
            onChoose={(lineColour) => lineColour && setInk({ ...ink, lineColour })}
          />
          <span class="pieces-number">
            <span aria-hidden="true">{says.lineWidth}</span>
            <NumberField
              label={says.lineWidth}
              value={ink.lineWidth}
              min={0.1}
              max={20}
              unit="mm"
              length={lengthUnit.value}
              refusal={says.lineWidthRange}
              onSet={(lineWidth) => setInk({ ...ink, lineWidth: Math.min(20, Math.max(0.1, lineWidth)) })}
              onRest={() => {}}
            />
          </span>
        </>
      ) : null}
      {twin === null ? null : <Check label={says.onBothSides} on={both} onSet={setBoth} />}
      <div class="slip-buttons">
        <button
          type="button"
          class="button primary"
          disabled={!isReady}
          onClick={() => {
            if (take(draw(design, panel, sketch, ink, both), says.drawn) === null)
              setSketch({ ...sketch, points: [] })
          }}
        >
          {says.drawIt}
        </button>
        {count > 0 ? (
          <>
            <button
              type="button"
              class="button"
              onClick={() => take(rub(design, panel, 'last'), says.rubbedOutLast)}
            >
              {says.rubOutLast}
            </button>
            <button
              type="button"
              class="button"
              onClick={() => take(rub(design, panel, 'all'), says.rubbedOutAll)}
            >
              {says.rubOutAll(count)}
            </button>
          </>
        ) : null}
      </div>
    </>
  )
}
