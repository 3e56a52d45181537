import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import { setTitle } from '../keeping/edits.ts'
import { SheetButton } from '../template/SheetButton.tsx'
import type { Dummy } from './dummy-model.ts'
import { take } from './PartActions.tsx'

/** The card's name, to be typed over. */
function Title({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { title } = dummy.bench.design.value
  const [typed, setTyped] = useState<string | null>(null)
  const done = () => {
    if (typed !== null && typed.trim() !== '' && typed.trim() !== title)
      take(dummy, setTitle(dummy.bench.design.peek(), typed))
    setTyped(null)
  }
  return (
    <h1 class="dummy-title">
      <input
        aria-label="Name of this dummy"
        value={typed ?? title}
        size={Math.max(8, (typed ?? title).length)}
        maxLength={200}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur()
          if (event.key === 'Escape') setTyped(null)
        }}
        onBlur={done}
      />
    </h1>
  )
}

interface StepProps {
  readonly label: string
  readonly can: boolean
  readonly onPress: () => void
}

/** Not `disabled` when there is nothing to do: a button that goes while it has focus takes the focus along. */
const Step = ({ label, can, onPress }: StepProps): JSX.Element => (
  <button type="button" class="button" aria-disabled={!can} onClick={() => can && onPress()}>
    {label}
  </button>
)

/** The card's name, what can be undone, and the ways out: saved, sent, printed. */
export function Top({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { bench, slip } = dummy
  return (
    <header class="dummy-top">
      <Title dummy={dummy} />
      <div class="dummy-acts">
        <Step label="Undo" can={bench.canUndo.value} onPress={bench.undo} />
        <Step label="Redo" can={bench.canRedo.value} onPress={bench.redo} />
        <button
          type="button"
          class="button"
          onClick={() => {
            slip.value = slip.peek() === 'saved' ? null : 'saved'
          }}
        >
          Save, open, send
        </button>
        <SheetButton slug="dummy" design={() => bench.design.peek()} label="Print the sheets" />
      </div>
    </header>
  )
}
