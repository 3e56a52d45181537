import './aim.css'
import type { ComponentType, JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/aim/fold.ts'
import type { Mechanism } from '../../paper/index.ts'
import { topOf } from '../../paper/index.ts'
import type { Bench } from '../model/bench-model.ts'
import { notLoaded } from '../model/loading.ts'

interface AimFoldProps {
  readonly bench: Bench
  /** The mechanism whose tip it is. */
  readonly lead: Mechanism
}

type Tools = typeof import('../model/checker.ts')

type Panel = ComponentType<{
  readonly tools: Tools
  readonly bench: Bench
  readonly id: string
  readonly top: string
}>

/** A place for the tip, from which the sizes follow. Folded away; what works it out is loaded when it is unfolded. */
export function AimFold({ bench, lead }: AimFoldProps): JSX.Element {
  const [Panel, setPanel] = useState<{ readonly it: Panel; readonly tools: Tools } | null>(null)
  const [trouble, setTrouble] = useState('')
  const top = topOf(lead)
  const unfold = () =>
    Promise.all([import('./AimPanel.tsx'), import('../model/checker.ts')]).then(
      ([{ AimPanel }, tools]) => setPanel({ it: AimPanel, tools }),
      (error: unknown) => setTrouble(notLoaded(says.finder, error)),
    )
  return (
    <details class="aim" onToggle={unfold}>
      <summary>{says.where(top)}</summary>
      {Panel ? (
        <Panel.it tools={Panel.tools} bench={bench} id={lead.id} top={top} />
      ) : (
        <p role="alert">{trouble}</p>
      )}
    </details>
  )
}
