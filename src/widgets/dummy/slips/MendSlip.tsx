import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/slips.ts'
import * as verdictSays from '../../../../content/words/dummy/verdict.ts'
import type { Mended } from '../../../paper/index.ts'
import { nameOf } from '../../../paper/index.ts'
import { repairSays } from '../../bench/FaultNote.tsx'
import { reasonOf } from '../../model/loading.ts'
import { lengthUnit } from '../../model/page.ts'
import { large, shown, small } from '../../state/format.ts'
import type { Ask } from '../desk/desk.ts'
import { deskFor } from '../desk/desk.ts'
import type { Dummy } from '../model/dummy-model.ts'
import type { SingleRepair } from '../model/single-repairs.ts'
import { singleRepairs } from '../model/single-repairs.ts'
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
      (error) => setFound(says.mendNotWorkedOut(reasonOf(error))),
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
          <dt>{several ? says.sizeOf(large(nameOf(id)), small(label)) : large(label)}</dt>
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
  if (mended === null) return <p class="quiet">{says.lookingForMend}</p>
  if (typeof mended === 'string') return <p class="trouble">{mended}</p>
  const { design, changes, left } = mended
  if (changes.length === 0)
    return <p class="slip-says">{pins.value.length > 0 ? says.noMendKept : says.noMend}</p>
  const count = changes.length
  return (
    <>
      <div class="mend-pictures">
        <figure>
          <Thumb design={bench.design.value} opening={bench.state.value.opening} camera={camera} />
          <figcaption>{says.now}</figcaption>
        </figure>
        <figure class="after">
          <Thumb design={design} opening={bench.state.value.opening} camera={camera} />
          <figcaption>{says.afterMending}</figcaption>
        </figure>
      </div>
      <Changes changes={changes} />
      {left[0] ? <p class="trouble">{says.left(left[0].sentence)}</p> : null}
      <div class="slip-buttons">
        <button type="button" class="button primary" onClick={() => dummy.put(design, says.mended(count))}>
          {left.length > 0 ? says.mendWhatCanBe(count) : says.mendAll(count)}
        </button>
        <button
          type="button"
          class="button"
          onClick={() => {
            dummy.slip.value = null
          }}
        >
          {says.leaveIt}
        </button>
      </div>
      <p class="quiet">{says.keptIsKept}</p>
    </>
  )
}

function Fault({ dummy, single }: { readonly dummy: Dummy; readonly single: SingleRepair }): JSX.Element {
  const { bench } = dummy
  const {
    check: { sentence },
    repair,
    kept,
    isAbove,
  } = single
  const repaired = repair ? repairSays(repair, bench, lengthUnit.value) : ''
  const locked = repair?.change.find(({ id }) => dummy.aside.value.locked.includes(id))?.id
  return (
    <li>
      <span>{sentence}</span>
      {locked === undefined ? null : <span class="quiet"> {says.unlockToMend(nameOf(locked))}</span>}
      {kept ? <span class="quiet"> {says.freeToMend(large(kept.label), nameOf(kept.id))}</span> : null}
      {isAbove ? <span class="quiet"> {says.sameAsAbove}</span> : null}
      {repair && locked === undefined ? (
        <button type="button" class="link" onClick={() => bench.repair(repair)}>
          {repair.keepsRest ? repaired : says.breaksElse(repaired)}
        </button>
      ) : null}
    </li>
  )
}

/** What fails, each with its nearest repair, and one change of several sizes that mends it all. */
export function MendSlip({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const failed = (dummy.bench.checks.value ?? []).filter(({ ok }) => !ok)
  return (
    <Slip dummy={dummy} about="mend" title={verdictSays.thingsToMend(failed.length)}>
      {failed.length === 0 ? (
        <p class="slip-says">{verdictSays.allWell}</p>
      ) : (
        <>
          <ol class="faults-list">
            {singleRepairs(dummy.bench.design.value, failed, dummy.pins.value).map((single) => (
              <Fault key={`${single.check.name} ${single.check.ids.join(' ')}`} {...{ dummy, single }} />
            ))}
          </ol>
          <MendAll dummy={dummy} />
        </>
      )}
    </Slip>
  )
}
