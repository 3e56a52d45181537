import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/beside.ts'
import { addressOf, frameOf, linkTo } from '../model/address.ts'
import type { Bench } from '../model/bench-model.ts'
import { notLoaded } from '../model/loading.ts'
import { pathHere, placed } from '../model/place.ts'
import { SheetButton } from '../template/SheetButton.tsx'
import { undoByKeys } from './undo-keys.ts'

interface CopyProps {
  readonly label: string
  /** What is copied, and what is said of it. */
  readonly text: () => string
  readonly copied: string
  readonly byHand: string
}

/** Puts a text on the clipboard; where that is not allowed it is shown, to be copied by hand. */
function Copy({ label, text, copied, byHand }: CopyProps): JSX.Element {
  const [said, setSaid] = useState<{ readonly text: string; readonly shown?: string } | null>(null)
  const copy = async () => {
    const shown = text()
    try {
      await navigator.clipboard.writeText(shown)
      setSaid({ text: copied })
    } catch {
      setSaid({ text: byHand, shown })
    }
  }
  return (
    <>
      <button type="button" class="button" onClick={copy}>
        {label}
      </button>
      <span class="copied" role="status">
        {said?.text}
        {said?.shown === undefined ? null : (
          <input
            type="text"
            class="number-input"
            readOnly
            aria-label={label}
            value={said.shown}
            onFocus={(event) => event.currentTarget.select()}
          />
        )}
      </span>
    </>
  )
}

function CopyLink({ bench }: { readonly bench: Bench }): JSX.Element {
  const link = () => {
    bench.rest()
    return addressOf(bench)
  }
  return <Copy label={says.copyLink} text={link} copied={says.linkCopied} byHand={says.copyLinkByHand} />
}

/** The bench as it stands, in a frame for somebody else's page. */
function CopyFrame({ bench }: { readonly bench: Bench }): JSX.Element {
  const frame = () => {
    bench.rest()
    return frameOf(bench)
  }
  return <Copy label={says.copyFrame} text={frame} copied={says.frameCopied} byHand={says.copyFrameByHand} />
}

/** Takes the card as it stands to the page on which one plans one's own; the way back leads here, as it stands. */
function TakeAlong({ bench }: { readonly bench: Bench }): JSX.Element {
  const take = async () => {
    bench.rest()
    try {
      const { takeAddress } = await import('../keeping/take.ts')
      const link = linkTo(bench)
      const from = `${pathHere()}${link === '' ? '' : `#${link}`}`
      location.assign((await takeAddress(bench.design.peek(), placed(DUMMY), from)) ?? placed(DUMMY))
    } catch (error) {
      bench.trouble.value = notLoaded(says.myDummy, error)
    }
  }
  return (
    <button type="button" class="button" onClick={take}>
      {says.takeToDummy}
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
      <StepButton label={says.undo} can={bench.canUndo.value} onPress={bench.undo} />
      <StepButton label={says.redo} can={bench.canRedo.value} onPress={bench.redo} />
      <button type="button" class="button" onClick={bench.reset}>
        {says.startAgain}
      </button>
      <CopyLink bench={bench} />
      {aside ? null : <CopyFrame bench={bench} />}
      <TakeAlong bench={bench} />
    </div>
  )
}
