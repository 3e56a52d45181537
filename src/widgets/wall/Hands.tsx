import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/wall.ts'
import type { Asked } from './at-wall.ts'

/** No class is larger. */
const MOST = 99

/** The guesses of a class, counted by hands; then what is right. */
export function Hands({ asked }: { readonly asked: Asked | null }): JSX.Element {
  return (
    <section class="wall-slip wall-hands" aria-label={says.countHands}>
      {asked && asked.guesses.length > 0 ? (
        // Another question begins from none.
        <Count key={asked.asks} {...asked} />
      ) : (
        <p>{says.nothingAsked}</p>
      )}
    </section>
  )
}

function Count({ guesses, covered, onCover }: Asked): JSX.Element {
  const [counts, setCounts] = useState<readonly number[]>(() => guesses.map(() => 0))
  const most = Math.max(1, ...counts)
  const set = (k: number, value: number) =>
    setCounts(counts.map((count, n) => (n === k ? Math.min(MOST, Math.max(0, value)) : count)))
  return (
    <>
      <ul>
        {guesses.map(({ says: guess, right }, k) => {
          const count = counts[k] ?? 0
          return (
            <li key={guess} data-right={right && !covered}>
              <span class="wall-guess">
                {right && !covered ? '✓ ' : ''}
                {guess}
                {right && !covered ? <span class="aloud">{says.isRight}</span> : null}
                <span class="wall-track" aria-hidden="true">
                  <span class="wall-bar" style={{ width: `${(100 * count) / most}%` }} />
                </span>
              </span>
              <button
                type="button"
                class="button"
                aria-label={says.oneLess(guess)}
                onClick={() => set(k, count - 1)}
              >
                −
              </button>
              <input
                type="text"
                inputMode="numeric"
                autocomplete="off"
                aria-label={says.handsFor(guess)}
                value={String(count)}
                onInput={(event) => {
                  const value = Number(event.currentTarget.value)
                  if (Number.isInteger(value)) set(k, value)
                }}
              />
              <button
                type="button"
                class="button"
                aria-label={says.oneMore(guess)}
                onClick={() => set(k, count + 1)}
              >
                +
              </button>
            </li>
          )
        })}
      </ul>
      <button type="button" class="button" onClick={() => onCover(!covered)}>
        {covered ? says.showRight : says.hideRight}
      </button>
    </>
  )
}
