import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Check, Mended } from '../../../paper/index.ts'
import { nameOf } from '../../../paper/index.ts'
import { repairSays } from '../../bench/FaultNote.tsx'
import { reasonOf } from '../../model/loading.ts'
import { lengthUnit } from '../../model/page.ts'
import { large, shown, small } from '../../state/format.ts'
import type { Ask } from '../desk/desk.ts'
import { deskFor } from '../desk/desk.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { Slip } from './Slip.tsx'
import { Thumb } from './Thumb.tsx'

/** What mends all at once, looked for beside the page while the slip lies there; null: not known yet. */
function useMended({ bench, pins }: Dummy): Mended | string | null {
  const design = bench.design.value
  const kept = pins.value
  const busy = bench.held.value !== null
  const desk = useMemo(() => deskFor<Extract<Ask, { what: 'mend' }>>(), [])
  const [found, setFound] = useState<Mended | string | null>(null)
  useEffect(() => {
    setFound(null)
    if (busy) return undefined
    desk.ask(
      { what: 'mend', design, pins: kept },
      ({ mended }) => setFound(mended),
      (error) => setFound(`What mends it could not be worked out: ${reasonOf(error)}.`),
    )
    return desk.callOff
  }, [desk, design, kept, busy])
  return found
}

/** The sizes that a mend changes, each with what it was. */
function Changes({ changes }: { readonly changes: Mended['changes'] }): JSX.Element {
  const length = lengthUnit.value
  const several = new Set(changes.map(({ id }) => id)).size > 1
  return (
    <dl class="changes">
      {changes.map(({ id, field, label, unit, from, to }) => (
        <div key={`${id}.${field}`}>
          <dt>{several ? `${large(nameOf(id))}: ${small(label)}` : large(label)}</dt>
          <dd>
            <s>{shown(from, unit, length)}</s> <strong>{shown(to, unit, length)}</strong>
          </dd>
        </div>
      ))}
    </dl>
  )
}

function MendAll({ dummy }: { readonly dummy: Dummy }): JSX.Element | null {
  const { bench, pins } = dummy
  const { camera } = bench.state.value
  const mended = useMended(dummy)
  if (mended === null) return <p class="quiet">Looking for what mends it all …</p>
  if (typeof mended === 'string') return <p class="trouble">{mended}</p>
  const { design, changes, left } = mended
  if (changes.length === 0)
    return (
      <p class="slip-says">
        {pins.value.length > 0
          ? 'No change of sizes mends it while so much is kept.'
          : 'No change of sizes mends it. Move a part, or take one away.'}
      </p>
    )
  const count = `${changes.length} ${changes.length === 1 ? 'change' : 'changes'}`
  return (
    <>
      <div class="mend-pictures">
        <figure>
          <Thumb design={bench.design.value} opening={bench.state.value.opening} camera={camera} />
          <figcaption>now</figcaption>
        </figure>
        <figure class="after">
          <Thumb design={design} opening={bench.state.value.opening} camera={camera} />
          <figcaption>after mending</figcaption>
        </figure>
      </div>
      <Changes changes={changes} />
      {left.length > 0 ? <p class="trouble">Left: {left[0]?.sentence}</p> : null}
      <div class="slip-buttons">
        <button
          type="button"
          class="button primary"
          onClick={() => dummy.put(design, `Mended with ${count}. Undo puts it back.`)}
        >
          {left.length > 0 ? 'Mend what can be' : 'Mend all'}: {count}
        </button>
        <button
          type="button"
          class="button"
          onClick={() => {
            dummy.slip.value = null
          }}
        >
          Leave it
        </button>
      </div>
      <p class="quiet">
        A mend never changes what is kept. Left as it is, the card can still be printed: the sheet then says
        what fails.
      </p>
    </>
  )
}

function Fault({ dummy, check }: { readonly dummy: Dummy; readonly check: Check }): JSX.Element {
  const { bench } = dummy
  const { sentence, repair } = check
  const locked = repair?.change.find(({ id }) => dummy.aside.value.locked.includes(id))?.id
  return (
    <li>
      <span>{sentence}</span>
      {locked === undefined ? null : (
        <span class="quiet"> The {nameOf(locked)} is locked: unlock it, and it can be mended.</span>
      )}
      {repair && locked === undefined ? (
        <button type="button" class="link" onClick={() => bench.repair(repair)}>
          {repairSays(repair, bench, lengthUnit.value)}
          {repair.keepsRest ? '' : ', which breaks something else'}
        </button>
      ) : null}
    </li>
  )
}

/** What fails, each with its nearest repair, and one change of several sizes that mends it all. */
export function MendSlip({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const failed = (dummy.bench.checks.value ?? []).filter(({ ok }) => !ok)
  const title =
    failed.length === 0
      ? 'Nothing to mend'
      : failed.length === 1
        ? '1 thing to mend'
        : `${failed.length} things to mend`
  return (
    <Slip dummy={dummy} title={title}>
      {failed.length === 0 ? (
        <p class="slip-says">It shuts flat, opens flat, and nothing is in the way.</p>
      ) : (
        <>
          <ol class="faults-list">
            {failed.map((check) => (
              <Fault key={`${check.name} ${check.ids.join(' ')}`} {...{ dummy, check }} />
            ))}
          </ol>
          <MendAll dummy={dummy} />
        </>
      )}
    </Slip>
  )
}
