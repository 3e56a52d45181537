import './pieces.css'
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import type { Cut, Design, Flat, Stuck, Unstuck } from '../../paper/index.ts'
import type { Edit } from '../keeping/edits.ts'
import { ColourTab } from './ColourTab.tsx'
import { CutTab } from './CutTab.tsx'
import { DrawTab } from './DrawTab.tsx'
import { ShelfTab } from './ShelfTab.tsx'
import type { Sketch } from './sketch.ts'

/** What the page gives a desk for pieces. */
export interface PiecesProps {
  readonly design: Design
  /** The face that is stuck and drawn on: of a piece, its own. */
  readonly panel: string
  /** The id of the piece that is taken up; null: a face is. */
  readonly piece: string | null
  /** What fails of the piece, in words, and whether it sticks out of the card. */
  readonly faults: readonly string[]
  readonly sticksOut: boolean
  /** Whether other paper goes through it as the card moves. */
  readonly isHit: boolean
  /** Whether its glue lies off its face, or shows beside it. */
  readonly glueFails: boolean
  readonly stick: (on: string, cut: Cut) => Promise<Stuck | Unstuck>
  /** Takes an edit over, says so and gives null; or gives the sentence of why it could not be done. */
  readonly take: (edit: Edit, says: string) => string | null
}

/** What is being drawn and is not on the card. */
export interface Draft {
  readonly sketch: Sketch
  /** The outline of the piece that it changes. */
  readonly of?: readonly Flat[]
}

export interface DraftProps {
  readonly draft: Draft | null
  readonly setDraft: (draft: Draft | null) => void
}

type Tab = 'cut' | 'shelf' | 'draw' | 'colour'

/** Stick or draw on a face: from the shelf, an outline of one's own, colours and lines. */
export function PiecesDesk(props: PiecesProps): JSX.Element {
  const { piece, panel } = props
  const tabs: readonly Tab[] =
    piece === null ? ['shelf', 'draw', 'colour'] : ['cut', 'colour', 'shelf', 'draw']
  const [chosen, setTab] = useState<Tab>(tabs[0] as Tab)
  const tab = tabs.includes(chosen) ? chosen : (tabs[0] as Tab)
  const [trouble, setTrouble] = useState('')
  useEffect(() => setTab(piece === null ? 'shelf' : 'cut'), [piece])
  // What did not go on one face may go on another.
  useEffect(() => setTrouble(''), [panel])
  const head = useRef<HTMLDivElement>(null)
  // Each tab begins at its top, where the slip scrolls by itself.
  useEffect(() => head.current?.closest('.dummy-slip')?.scrollTo(0, 0), [tab])
  const taken = (edit: Edit, told: string): string | null => {
    const refusal = props.take(edit, told)
    setTrouble(refusal ?? '')
    return refusal
  }
  const shared = { ...props, take: taken }
  // What is drawn in one tab is there when one comes back to it.
  const [drafts, setDrafts] = useState<Readonly<Record<string, Draft | null>>>({})
  const key = `${tab} ${tab === 'cut' ? piece : panel}`
  const drawing: DraftProps = {
    draft: drafts[key] ?? null,
    setDraft: (draft) => setDrafts((all) => ({ ...all, [key]: draft })),
  }
  return (
    <>
      <div class="pieces-tabs" ref={head}>
        {tabs.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={tab === name}
            onClick={() => {
              setTrouble('')
              setTab(name)
            }}
          >
            {says.tabs[name]}
          </button>
        ))}
      </div>
      {trouble === '' ? null : (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {tab === 'shelf' ? (
        <ShelfTab key={panel} {...shared} failed={trouble !== ''} onTrouble={setTrouble} />
      ) : null}
      {tab === 'draw' ? <DrawTab key={panel} {...shared} {...drawing} /> : null}
      {tab === 'cut' && piece !== null ? <CutTab key={piece} {...shared} {...drawing} piece={piece} /> : null}
      {tab === 'colour' ? <ColourTab key={panel} {...shared} {...drawing} /> : null}
    </>
  )
}
