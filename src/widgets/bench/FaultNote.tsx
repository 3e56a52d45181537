import './notes.css'
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/beside.ts'
import type { Check, Repair } from '../../paper/index.ts'
import { nameOf } from '../../paper/index.ts'
import type { Bench } from '../model/bench-model.ts'
import { offeredBy } from '../model/offered.ts'
import { lengthUnit } from '../model/page.ts'
import type { LengthUnit } from '../state/format.ts'
import { shown, small } from '../state/format.ts'

/** What the repair's button says: `Make the slit 34.2 mm`. Where several could be meant it says whose. */
export function repairSays({ id, field, label, to, unit }: Repair, bench: Bench, length: LengthUnit): string {
  const offered = offeredBy(bench).fields.find(({ key }) => key === `${id}.${field}`)
  const owner = bench.start.design.mechanisms.length > 1 ? nameOf(id) : undefined
  if (!offered && field === 'run') return says.putSlit(shown(Math.abs(to), unit, length), owner)
  // A label that says whose it is makes no sentence: it is named as it stands among the sizes.
  if (offered?.label.includes(':')) return says.setTo(offered.label, shown(to, unit, length))
  const size = shown(to, unit, length)
  return offered ? says.make(small(offered.label), size) : says.make(small(label), size, owner)
}

/** What is spoken once hands rest: the first thing that fails, or that all is well again. */
export function saysOf(checks: readonly Check[]): string {
  const failed = checks.filter(({ ok }) => !ok)
  const [first] = failed
  if (!first) return says.works
  return failed.length === 1 ? first.sentence : says.andMore(first.sentence, failed.length - 1)
}

/** Spoken politely, and only when something else fails than before and the hands rest. */
function Aloud({ checks }: { readonly checks: readonly Check[] }): JSX.Element {
  const failing = checks.filter(({ ok }) => !ok)
  const kind = failing.map(({ name, ids }) => `${name} ${ids.join(' ')}`).join(', ')
  const said = saysOf(checks)
  const [spoken, setSpoken] = useState('')
  const [before, setBefore] = useState(kind)
  useEffect(() => {
    if (kind === before) return undefined
    const wait = setTimeout(() => {
      setBefore(kind)
      setSpoken(said)
    }, 700)
    return () => clearTimeout(wait)
  }, [kind, before, said])
  return (
    <p class="aloud" aria-live="polite">
      {spoken}
    </p>
  )
}

interface LineProps {
  readonly bench: Bench
  readonly check: Check
  readonly length: LengthUnit
  /** The button goes with the fault: the focus must go somewhere. */
  readonly onMended: () => void
}

function FaultLine({ bench, check, length, onMended }: LineProps): JSX.Element {
  const { sentence, repair } = check
  return (
    <li>
      <span>{sentence}</span>
      {repair ? (
        <button
          type="button"
          class="repair"
          onClick={() => {
            bench.repair(repair)
            onMended()
          }}
        >
          {repairSays(repair, bench, length)}
          {repair.keepsRest ? '' : says.breaksElse}
        </button>
      ) : null}
    </li>
  )
}

/** What the checks say, in words; the pictures show where. It is always there, so that nothing jumps. */
export function FaultNote({ bench }: { readonly bench: Bench }): JSX.Element {
  const known = bench.checks.value
  const checks = known ?? []
  const failed = checks.filter(({ ok }) => !ok)
  const [first, ...more] = failed
  const length = lengthUnit.value
  const note = useRef<HTMLDivElement>(null)
  const onMended = () => note.current?.focus()
  return (
    <div ref={note} class="fault-note" data-state={first ? 'fault' : 'good'} tabIndex={-1}>
      {first ? (
        <ul class="faults">
          <FaultLine check={first} {...{ bench, length, onMended }} />
        </ul>
      ) : (
        <p>{known ? says.works : ''}</p>
      )}
      {more.length > 0 ? (
        <details>
          <summary>{says.more(more.length)}</summary>
          <ul class="faults">
            {more.map((check) => (
              <FaultLine
                key={`${check.name} ${check.ids.join(' ')}`}
                {...{ check, bench, length, onMended }}
              />
            ))}
          </ul>
        </details>
      ) : null}
      {known ? <Aloud checks={known} /> : null}
    </div>
  )
}
