import type { JSX } from 'preact'
import * as says from '../../../content/words/dummy/verdict.ts'
import { nameOf } from '../../paper/index.ts'
import { saysOf } from '../bench/FaultNote.tsx'
import type { Dummy } from './model/dummy-model.ts'

/** What is out of sight is said where the verdict is, for it counts there. */
function HiddenNote({ dummy }: { readonly dummy: Dummy }): JSX.Element | null {
  const { hidden } = dummy.aside.value
  if (hidden.length === 0) return null
  return (
    <p class="quiet">
      {says.hiddenParts(hidden.map(nameOf))}{' '}
      <button type="button" class="link" onClick={dummy.showAll}>
        {says.showAll}
      </button>
    </p>
  )
}

/** Whether the card works as paper, in the margin; what fails is mended on a slip. */
export function Verdict({ dummy }: { readonly dummy: Dummy }): JSX.Element | null {
  const { bench, slip } = dummy
  const checks = bench.checks.value
  const failed = (checks ?? []).filter(({ ok }) => !ok)
  if (bench.design.value.mechanisms.length === 0) return null
  if (failed.length === 0)
    return (
      <>
        <h2>{checks ? says.works : says.looking}</h2>
        <p class="quiet" role="status">
          {checks ? says.allWell : ''}
        </p>
        <HiddenNote dummy={dummy} />
      </>
    )
  return (
    <>
      <h2>{says.thingsToMend(failed.length)}</h2>
      <p class="verdict-says" role="status">
        {saysOf(failed)}
      </p>
      <button
        type="button"
        class="button"
        onClick={() => {
          slip.value = 'mend'
        }}
      >
        {says.seeAndMend}
      </button>
      <HiddenNote dummy={dummy} />
    </>
  )
}

/** Under the picture, where the eye is while something is dragged: how much fails, and the way to mend it. */
export function ToMend({ dummy }: { readonly dummy: Dummy }): JSX.Element | null {
  const { bench, slip } = dummy
  const failed = (bench.checks.value ?? []).filter(({ ok }) => !ok).length
  if (failed === 0 || bench.design.value.mechanisms.length === 0) return null
  return (
    <button
      type="button"
      class="button to-mend"
      onClick={() => {
        slip.value = 'mend'
      }}
    >
      {says.toMend(failed)}
    </button>
  )
}
