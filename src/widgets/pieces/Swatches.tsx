import type { JSX } from 'preact'
import * as says from '../../../content/words/pieces.ts'
import { PAPERS } from '../../drawing/pen/papers.ts'
import type { PaperColour } from '../../paper/index.ts'
import { PAPER_COLOURS } from '../../paper/index.ts'

interface SwatchProps {
  readonly label: string
  readonly chosen: PaperColour | null
  /** What no colour is called. */
  readonly none: string | null
  readonly onChoose: (colour: PaperColour | null) => void
}

/** The papers as small sheets, each with its name; the one that is chosen is named beside the label too. */
export function Swatches({ label, chosen, none, onChoose }: SwatchProps): JSX.Element {
  return (
    <fieldset class="swatches">
      <legend>
        {label}: <strong>{chosen === null ? none : says.papers[chosen]}</strong>
      </legend>
      <div>
        {none === null ? null : (
          <button
            type="button"
            class="swatch none"
            aria-pressed={chosen === null}
            onClick={() => onChoose(null)}
          >
            {none}
          </button>
        )}
        {PAPER_COLOURS.map((colour) => (
          <button
            key={colour}
            type="button"
            class="swatch"
            aria-pressed={chosen === colour}
            aria-label={says.papers[colour]}
            title={says.papers[colour]}
            style={`--swatch:${PAPERS[colour]}`}
            onClick={() => onChoose(colour)}
          />
        ))}
      </div>
    </fieldset>
  )
}
