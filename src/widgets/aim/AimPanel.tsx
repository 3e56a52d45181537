/** Loaded when it is unfolded. */
import type { JSX } from 'preact'
import { useEffect, useId, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/aim/panel.ts'
import type { Design, Target } from '../../paper/index.ts'
import type { Bench } from '../model/bench-model.ts'
import { lengthUnit } from '../model/page.ts'
import type { LengthUnit } from '../state/format.ts'
import { digits, large, shown, unitSign } from '../state/format.ts'
import type { Answer, Read, Tools, Way, Wish } from './aiming.ts'
import { answering, placeIn, readWish, taken, takenSays, WISHES } from './aiming.ts'

/** So long the answer may be worked at before the page gets its turn, ms. */
const TURN = 12

/** Ways shown at once; more are folded away. */
const MOST = 3

/** A wish as it was made: of this card, at this opening. */
interface Asked {
  readonly design: Design
  readonly target: Target
  readonly length: LengthUnit
}

const nextPicture = () => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done)))

const nextTurn = () => new Promise<void>((done) => setTimeout(done))

/** Works something out between the page's turns, and not while a hand drags; null if it is called off. */
async function workOut<T>(
  steps: Generator<void, T>,
  isBusy: () => boolean,
  isOff: () => boolean,
): Promise<T | null> {
  await nextPicture()
  while (!isOff()) {
    const until = performance.now() + TURN
    while (!isBusy() && performance.now() < until) {
      const { done, value } = steps.next()
      if (done) return value
    }
    await nextTurn()
  }
  return null
}

interface AimPanelProps {
  readonly tools: Tools
  readonly bench: Bench
  /** The mechanism whose tip it is. */
  readonly id: string
  /** What a ruler is held to: its tip or its ridge. */
  readonly top: string
}

/** A wanted rise and reach, and every way to get there. */
export function AimPanel({ tools, bench, id, top }: AimPanelProps): JSX.Element {
  const name = useId()
  const length = lengthUnit.value
  const { design, opening } = bench.state.value
  const now = placeIn(bench.measured.value.measure, id)
  const [texts, setTexts] = useState<Readonly<Record<Wish, string>>>({ rise: '', reach: '' })
  const [fault, setFault] = useState<Read['fault']>(null)
  const [asked, setAsked] = useState<Asked | null>(null)
  const [answer, setAnswer] = useState<Answer | null>(null)
  const [done, setDone] = useState<{ readonly design: Design; readonly says: string } | null>(null)
  const status = useRef<HTMLParagraphElement>(null)
  const mine = useRef(0)
  useEffect(
    () => () => {
      mine.current++
    },
    [],
  )

  /** An answer holds for the card and the unit it was worked out for. */
  const holds = (one: Asked | null): one is Asked =>
    one !== null &&
    one.design === bench.design.peek() &&
    one.target.opening === bench.state.peek().opening &&
    one.length === lengthUnit.peek()

  const ask = async () => {
    bench.pause()
    bench.rest()
    const state = bench.state.peek()
    const read = readWish(
      texts,
      state.design,
      placeIn(bench.measured.peek().measure, id),
      state.opening,
      length,
    )
    setFault(read.fault)
    setAnswer(null)
    setDone(null)
    setAsked(null)
    const ticket = ++mine.current
    if (!read.target) {
      document.getElementById(`${name}-${read.fault.field ?? 'rise'}`)?.focus()
      return
    }
    const wish: Asked = { design: state.design, target: read.target, length }
    setAsked(wish)
    const found = await workOut(
      answering(tools, bench, state.design, id, read.target, length),
      () => bench.held.peek() !== null,
      () => ticket !== mine.current || (bench.held.peek() === null && !holds(wish)),
    )
    if (ticket !== mine.current) return
    if (found) setAnswer(found)
    else setAsked(null)
  }
  const take = (way: Way) => {
    if (!holds(asked)) return
    const next = taken(tools, asked.design, id, asked.target, way)
    bench.step('aim', (state) => ({ ...state, design: next }))
    bench.rest()
    setDone({ design: next, says: takenSays(next, id, asked.target, length) })
    setAnswer(null)
    setAsked(null)
    status.current?.focus()
  }

  const fresh = holds(asked)
  const ways = fresh && answer ? answer.ways : []
  const told = fresh
    ? (answer?.says ?? says.working)
    : done?.design === design
      ? done.says
      : (fault?.says ?? '')
  const list = (some: readonly Way[]) => (
    <ul class="aim-ways">
      {some.map((way) => (
        <li key={way.says} class="aim-way">
          <span>{way.says}</span>
          <button
            type="button"
            class="repair"
            aria-label={says.useThisWay(way.says)}
            onClick={() => take(way)}
          >
            {says.useThis}
          </button>
        </li>
      ))}
    </ul>
  )
  return (
    <form
      class="aim-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void ask()
      }}
    >
      <p>{says.typeWhere(shown(opening, 'deg', length), top)}</p>
      <div class="aim-ask">
        {WISHES.map((wish) => (
          <label key={wish}>
            {large(says.wishes[wish])}
            <input
              id={`${name}-${wish}`}
              type="text"
              class="number-input"
              inputMode="decimal"
              autocomplete="off"
              placeholder={digits(now[wish], 'mm', length)}
              value={texts[wish]}
              aria-invalid={fault?.field === wish}
              aria-describedby={`${name}-says`}
              onInput={(event) => {
                setTexts({ ...texts, [wish]: event.currentTarget.value })
                setFault(null)
              }}
            />
            <span class="unit" aria-hidden="true">
              {unitSign('mm', length)}
            </span>
          </label>
        ))}
        <button type="submit" class="button">
          {says.workOut}
        </button>
      </div>
      <p
        ref={status}
        id={`${name}-says`}
        class="aim-says"
        data-state={fault ? 'fault' : undefined}
        role="status"
        tabIndex={-1}
      >
        {told}
      </p>
      {list(ways.slice(0, MOST))}
      {ways.length > MOST ? (
        <details class="aim-more">
          <summary>{says.moreWays(ways.length - MOST)}</summary>
          {list(ways.slice(MOST))}
        </details>
      ) : null}
    </form>
  )
}
