import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import type { Asked } from './at-wall.ts'

/** No class is larger. */
const MOST = 99

/** The guesses of a class, counted by hands; then what is right. */
export function Hands({ asked }: { readonly asked: Asked | null }): JSX.Element {
  return (
    <section class="wall-slip wall-hands" aria-label="Count hands">
      {asked && asked.guesses.length > 0 ? (
        // Another question begins from none.
        <Count key={asked.asks} {...asked} />
      ) : (
        <p>Nothing is asked just now.</p>
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
        {guesses.map(({ says, right }, k) => {
          const count = counts[k] ?? 0
          return (
            <li key={says} data-right={right && !covered}>
              <span class="wall-guess">
                {right && !covered ? '✓ ' : ''}
                {says}
                {right && !covered ? <span class="aloud"> is right</span> : null}
                <span class="wall-track" aria-hidden="true">
                  <span class="wall-bar" style={{ width: `${(100 * count) / most}%` }} />
                </span>
              </span>
              <button
                type="button"
                class="button"
                aria-label={`One less: ${says}`}
                onClick={() => set(k, count - 1)}
              >
                −
              </button>
              <input
                type="text"
                inputMode="numeric"
                autocomplete="off"
                aria-label={`Hands for: ${says}`}
                value={String(count)}
                onInput={(event) => {
                  const value = Number(event.currentTarget.value)
                  if (Number.isInteger(value)) set(k, value)
                }}
              />
              <button
                type="button"
                class="button"
                aria-label={`One more: ${says}`}
                onClick={() => set(k, count + 1)}
              >
                +
              </button>
            </li>
          )
        })}
      </ul>
      <button type="button" class="button" onClick={() => onCover(!covered)}>
        {covered ? 'Show what is right' : 'Hide what is right'}
      </button>
    </>
  )
}
