import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { addressOf, linkTo } from '../model/address.ts'
import type { Bench } from '../model/bench-model.ts'
import { notLoaded } from '../model/loading.ts'
import { SheetButton } from '../template/SheetButton.tsx'
import { undoByKeys } from './undo-keys.ts'

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
            class="number-input"
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

/** Takes the card as it stands to the page on which one plans one's own; the way back leads here, as it stands. */
function TakeAlong({ bench }: { readonly bench: Bench }): JSX.Element {
  const take = async () => {
    bench.rest()
    try {
      const { takeAddress } = await import('../keeping/take.ts')
      const link = linkTo(bench)
      const from = `${location.pathname}${link === '' ? '' : `#${link}`}`
      location.assign((await takeAddress(bench.design.peek(), DUMMY, from)) ?? DUMMY)
    } catch (error) {
      bench.trouble.value = notLoaded('My dummy', error)
    }
  }
  return (
    <button type="button" class="button" onClick={take}>
      Take it to my dummy
    </button>
  )
}

/** Where one plans a card of one's own. */
const DUMMY = '/dummy/'

interface StepButtonProps {
  readonly label: string
  readonly can: boolean
  readonly onPress: () => void
}

/** Not `disabled` when there is nothing to do: a button that goes while it has focus takes the focus along. */
const StepButton = ({ label, can, onPress }: StepButtonProps): JSX.Element => (
  <button type="button" class="button" aria-disabled={!can} onClick={() => can && onPress()}>
    {label}
  </button>
)

interface ActionsProps {
  readonly bench: Bench
  readonly slug: string
  /** A second bench of a page: the keys of the page belong to the first one. */
  readonly aside: boolean
}

/** What can be done with the bench as it stands. */
export function Actions({ bench, slug, aside }: ActionsProps): JSX.Element {
  const root = useRef<HTMLDivElement>(null)
  useEffect(() => undoByKeys(bench, aside ? (root.current?.closest('.bench') ?? null) : null), [bench, aside])
  return (
    <div class="bench-actions" ref={root}>
      <SheetButton slug={slug} design={() => bench.design.peek()} />
      <StepButton label="Undo" can={bench.canUndo.value} onPress={bench.undo} />
      <StepButton label="Redo" can={bench.canRedo.value} onPress={bench.redo} />
      <button type="button" class="button" onClick={bench.reset}>
        Start again
      </button>
      <CopyLink bench={bench} />
      <TakeAlong bench={bench} />
    </div>
  )
}
