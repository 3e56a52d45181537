import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/dummy/page.ts'
import { setTitle } from '../keeping/edits.ts'
import { fileStem } from '../keeping/file-text.ts'
import { redoLabel, undoLabel } from '../keeping/history.ts'
import { placed } from '../model/place.ts'
import { SheetButton } from '../template/SheetButton.tsx'
import type { Dummy } from './model/dummy-model.ts'
import type { Work } from './model/work.ts'
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
        aria-label={says.dummyName}
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
  /** What it takes back or does again. */
  readonly what: string | null
  readonly can: boolean
  readonly onPress: () => void
}

/** Not `disabled` when there is nothing to do: a button that goes while it has focus takes the focus along. */
const Step = ({ label, what, can, onPress }: StepProps): JSX.Element => (
  <button
    type="button"
    class="button"
    title={what ?? undefined}
    aria-disabled={!can}
    onClick={() => can && onPress()}
  >
    {label}
  </button>
)

/** How it stands with the work, in a few words; what asks for an answer has its buttons. */
function Kept({ work }: { readonly work: Work }): JSX.Element {
  const saved = work.saved.value
  const trouble = work.trouble.value
  if (saved?.state === 'elsewhere')
    return (
      <p class="kept trouble" role="alert">
        {saved.isGone ? says.goneElsewhere : says.changedElsewhere}{' '}
        {saved.isGone ? null : (
          <button type="button" class="link" onClick={() => void work.takeTheirs()}>
            {says.takeTheirs}
          </button>
        )}{' '}
        <button type="button" class="link" onClick={() => void work.keepMine()}>
          {says.keepMine}
        </button>
      </p>
    )
  if (saved?.state === 'unsaved')
    return (
      <p class="kept trouble" role="alert">
        {saved.trouble.sentence}
      </p>
    )
  if (trouble !== '')
    return (
      <p class="kept trouble" role="alert">
        {trouble}
      </p>
    )
  return (
    <p class="kept quiet">
      {saved === null ? says.nothingToSave : saved.state === 'saved' ? says.saved : says.saving}
      {work.back.value === null ? null : (
        <>
          {' · '}
          <a href={placed(work.back.value)}>{says.wayBack}</a>
        </>
      )}
    </p>
  )
}

interface TopProps {
  readonly dummy: Dummy
  /** Null until it is known what lies on the shelf. */
  readonly work: Work | null
}

/** The card's name, what can be undone, and the ways out: saved, sent, printed. */
export function Top({ dummy, work }: TopProps): JSX.Element {
  const { bench, slip } = dummy
  const history = work?.history.value
  return (
    <header class="dummy-top">
      <Title dummy={dummy} />
      {work ? <Kept work={work} /> : null}
      <div class="dummy-acts">
        <Step
          label={says.undo}
          what={history ? undoLabel(history) : null}
          can={bench.canUndo.value}
          onPress={dummy.undo}
        />
        <Step
          label={says.redo}
          what={history ? redoLabel(history) : null}
          can={bench.canRedo.value}
          onPress={dummy.redo}
        />
        <button
          type="button"
          class="button"
          onClick={() => {
            slip.value = slip.peek() === 'saved' ? null : 'saved'
          }}
        >
          {says.saveOpenSend}
        </button>
        <SheetButton
          slug="dummy"
          fileName={fileStem(bench.design.value.title)}
          design={() => bench.design.peek()}
          label={says.print}
        />
      </div>
    </header>
  )
}
