import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import { addressOf } from './address.ts'
import type { Bench } from './bench-model.ts'
import { SheetButton } from './SheetButton.tsx'

/** Puts the address on the clipboard; where that is not allowed it is shown, to be copied by hand. */
function CopyLink({ bench }: { readonly bench: Bench }): JSX.Element {
  const [said, setSaid] = useState<{ readonly text: string; readonly link?: string } | null>(null)
  const copy = async () => {
    bench.rest()
    const link = addressOf(bench)
    try {
      await navigator.clipboard.writeText(link)
      setSaid({ text: 'The link is copied.' })
    } catch {
      setSaid({ text: 'Copy this link:', link })
    }
  }
  return (
    <>
      <button type="button" class="button" onClick={copy}>
        Copy the link
      </button>
      <span class="copied" role="status">
        {said?.text}
        {said?.link === undefined ? null : (
          <input
            type="text"
            readOnly
            aria-label="Link to this card"
            value={said.link}
            onFocus={(event) => event.currentTarget.select()}
          />
        )}
      </span>
    </>
  )
}

/** What can be done with the bench as it stands. */
export function Actions({ bench, slug }: { readonly bench: Bench; readonly slug: string }): JSX.Element {
  return (
    <div class="bench-actions">
      <SheetButton slug={slug} design={() => bench.design.peek()} />
      <button type="button" class="button" disabled={!bench.canUndo.value} onClick={bench.undo}>
        Undo
      </button>
      <button type="button" class="button" disabled={!bench.canRedo.value} onClick={bench.redo}>
        Redo
      </button>
      <button type="button" class="button" onClick={bench.reset}>
        Start again
      </button>
      <CopyLink bench={bench} />
    </div>
  )
}
