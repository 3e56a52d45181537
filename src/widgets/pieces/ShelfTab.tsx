import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import { PAPERS } from '../../drawing/pen/papers.ts'
import type { Flat } from '../../paper/index.ts'
import { nameOf } from '../../paper/index.ts'
import { duplicate, take as taken } from '../keeping/edits.ts'
import { reasonOf } from '../model/loading.ts'
import { large } from '../state/format.ts'
import { flattened } from './outline.ts'
import type { PiecesProps } from './PiecesDesk.tsx'
import { Check } from './SketchTools.tsx'
import type { Shape } from './shelf.ts'
import { outlineOf, SHELF } from './shelf.ts'
import { coloured, twinOf } from './sketch.ts'

const line = (points: readonly Flat[]): string =>
  points.map(([x, y]) => `${x.toFixed(1)},${(-y).toFixed(1)}`).join(' ')

/** A shape of the shelf in small. */
function Picture({ shape, white }: { readonly shape: Shape; readonly white: boolean }): JSX.Element {
  return (
    <svg class="piece-picture" viewBox="-64 -64 128 128" aria-hidden="true">
      <polygon
        class="piece-cut"
        points={line(outlineOf(shape))}
        fill={white ? '#fff' : PAPERS[shape.paper]}
      />
      {white
        ? null
        : shape.drawn.map(({ shape: points, fill, line: ink, curve, open }, k) => {
            const drawn = line(curve ? flattened(points, !open) : points)
            return open ? (
              <polyline key={k} points={drawn} stroke={PAPERS[ink ?? 'ink']} fill="none" stroke-width={2} />
            ) : (
              <polygon key={k} points={drawn} fill={fill === undefined ? 'none' : PAPERS[fill]} />
            )
          })}
    </svg>
  )
}

interface ShelfProps extends PiecesProps {
  /** Whether the last one could not be stuck, and it is said why. */
  readonly failed: boolean
  readonly onTrouble: (sentence: string) => void
}

/** Our own shapes: a press sticks one on the face, as large as fits. */
export function ShelfTab({ design, panel, stick, take, failed, onTrouble }: ShelfProps): JSX.Element {
  const [colours, setColours] = useState(true)
  const [both, setBoth] = useState(false)
  const twin = twinOf(design, panel)
  const [busy, setBusy] = useState<string | null>(null)
  const press = async (shape: Shape) => {
    setBusy(shape.word)
    onTrouble('')
    try {
      const found = await stick(panel, { word: shape.word, outline: outlineOf(shape) })
      if ('sentence' in found) onTrouble(found.sentence)
      else {
        const one = colours ? coloured(found, shape) : found.design
        // Its mirror image goes over to the face beyond the ridge, with its paper and all that is drawn on it.
        const next = both && twin !== null ? duplicate(one, found.id, { mirrored: true }).design : one
        const name = large(nameOf(found.id))
        // The face stays taken up: the next shape goes on it too, not on the piece just stuck.
        take(taken(design, next), next === one ? says.shapeStuck(name) : says.shapeStuckTwice(name))
      }
    } catch (error) {
      onTrouble(says.notStuck(reasonOf(error)))
    }
    setBusy(null)
  }
  return (
    <>
      <p class="slip-says" role="status">
        {busy !== null ? says.trying : failed ? says.pressAnother : says.pressOne}
      </p>
      <div class="piece-shelf">
        {SHELF.map((shape) => (
          <button
            key={shape.word}
            type="button"
            class="offer"
            // Not `disabled`: that takes the focus away from what was pressed.
            aria-disabled={busy !== null}
            onClick={() => busy === null && void press(shape)}
          >
            <Picture shape={shape} white={!colours} />
            <strong>{shape.label}</strong>
          </button>
        ))}
      </div>
      {twin === null ? null : <Check label={says.onBothSides} on={both} onSet={setBoth} />}
      <Check label={says.coloured} on={colours} onSet={setColours} />
    </>
  )
}
