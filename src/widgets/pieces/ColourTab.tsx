import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import type { PaperColour } from '../../paper/index.ts'
import { nameOf, ownerOf } from '../../paper/index.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { lengthUnit } from '../model/page.ts'
import { NOTHING_DRAWN, SketchDesk } from './DrawTab.tsx'
import type { PiecesProps } from './PiecesDesk.tsx'
import { Check } from './SketchTools.tsx'
import { Swatches } from './Swatches.tsx'
import type { Ink, Sketch } from './sketch.ts'
import { draw, drawnOn, paper, rub, twinOf } from './sketch.ts'

const FIRST_INK: Ink = { fill: 'amber', line: false, lineColour: 'ink', lineWidth: 0.6 }

/** What a face is cut from, and what is drawn on it. It weighs nothing and moves with the face. */
export function ColourTab(props: PiecesProps): JSX.Element {
  const { design, panel, take } = props
  const [sketch, setSketch] = useState<Sketch>(NOTHING_DRAWN)
  const [ink, setInk] = useState<Ink>(FIRST_INK)
  const [both, setBoth] = useState(false)
  const owner = ownerOf(panel)
  const chosen = design.papers?.[owner] ?? null
  const count = drawnOn(design, panel)
  const twin = twinOf(design, panel)
  const what = owner === 'page' ? 'the card' : `the ${nameOf(owner)}`
  const colour = (next: PaperColour | null) =>
    take(
      paper(design, panel, next),
      next === null ? `White paper for ${what}.` : `Paper for ${what}: ${next}.`,
    )
  const isReady = sketch.points.length >= (sketch.closed ? 3 : 2)
  return (
    <>
      <Swatches label={`Paper of ${what}`} {...{ chosen }} none="plain" onChoose={colour} />
      <h3>Draw on it</h3>
      <p class="slip-says">Lines and filled shapes weigh nothing. What runs over the edge is not printed.</p>
      <div class="pieces-row">
        <Check label="Closed shape" on={sketch.closed} onSet={(closed) => setSketch({ ...sketch, closed })} />
        <Check
          label="Outline drawn"
          on={ink.line || !sketch.closed || ink.fill === null}
          onSet={(line) => setInk({ ...ink, line })}
        />
      </div>
      <SketchDesk {...{ props, sketch, setSketch }} on={panel} cuts={false} />
      {sketch.closed ? (
        <Swatches
          label="Filled with"
          chosen={ink.fill}
          none="nothing"
          onChoose={(fill) => setInk({ ...ink, fill, line: ink.line || fill === null })}
        />
      ) : null}
      {ink.line || !sketch.closed || ink.fill === null ? (
        <>
          <Swatches
            label="Line"
            chosen={ink.lineColour}
            none={null}
            onChoose={(lineColour) => lineColour && setInk({ ...ink, lineColour })}
          />
          <span class="pieces-number">
            <span aria-hidden="true">Line width</span>
            <NumberField
              label="Line width"
              value={ink.lineWidth}
              min={0.1}
              max={20}
              unit="mm"
              length={lengthUnit.value}
              refusal="A number from 0.1 to 20 mm."
              onSet={(lineWidth) => setInk({ ...ink, lineWidth: Math.min(20, Math.max(0.1, lineWidth)) })}
              onRest={() => {}}
            />
          </span>
        </>
      ) : null}
      {twin === null ? null : (
        <Check label="The same on the other side of the ridge" on={both} onSet={setBoth} />
      )}
      <div class="slip-buttons">
        <button
          type="button"
          class="button primary"
          disabled={!isReady}
          onClick={() => {
            take(draw(design, panel, sketch, ink, both), 'Drawn. Undo takes it away.')
            setSketch({ ...sketch, points: [] })
          }}
        >
          Draw it
        </button>
        {count > 0 ? (
          <>
            <button
              type="button"
              class="button"
              onClick={() => take(rub(design, panel, 'last'), 'The last shape is rubbed out.')}
            >
              Rub out the last
            </button>
            <button
              type="button"
              class="button"
              onClick={() => take(rub(design, panel, 'all'), 'All that was drawn here is rubbed out.')}
            >
              Rub out all {count}
            </button>
          </>
        ) : null}
      </div>
    </>
  )
}
