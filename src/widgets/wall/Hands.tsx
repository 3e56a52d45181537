import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import { coverAnswers, covering } from '../model/page.ts'

/** No class is larger. */
const MOST = 99

/** The answers that the page's guess offers, in its words. */
const offered = (): readonly string[] =>
  [...document.querySelectorAll('[data-guesses] > .guess > summary')].map(({ textContent }) =>
    textContent.trim(),
  )

/** The guesses of a class, counted by hands; then what is right. */
export function Hands(): JSX.Element {
  const [guesses] = useState(offered)
  const [counts, setCounts] = useState<readonly number[]>(() => guesses.map(() => 0))
  const most = Math.max(1, ...counts)
  const set = (k: number, value: number) =>
    setCounts(counts.map((count, n) => (n === k ? Math.min(MOST, Math.max(0, value)) : count)))
  if (guesses.length === 0)
    return (
      <section class="wall-slip" aria-label="Count hands">
        <p>This page asks nothing.</p>
      </section>
    )
  return (
    <section class="wall-slip wall-hands" aria-label="Count hands">
      <ul>
        {guesses.map((guess, k) => (
          <li key={guess}>
            <span class="wall-guess">{guess}</span>
            <button
              type="button"
              class="button"
              aria-label={`One less: ${guess}`}
              onClick={() => set(k, (counts[k] ?? 0) - 1)}
            >
              −
            </button>
            <input
              type="text"
              inputMode="numeric"
              autocomplete="off"
              aria-label={`Hands for: ${guess}`}
              value={String(counts[k] ?? 0)}
              onInput={(event) => {
                const value = Number(event.currentTarget.value)
                if (Number.isInteger(value)) set(k, value)
              }}
            />
            <button
              type="button"
              class="button"
              aria-label={`One more: ${guess}`}
              onClick={() => set(k, (counts[k] ?? 0) + 1)}
            >
              +
            </button>
            <span class="wall-track" aria-hidden="true">
              <span class="wall-bar" style={{ width: `${(100 * (counts[k] ?? 0)) / most}%` }} />
            </span>
          </li>
        ))}
      </ul>
      <button type="button" class="button" onClick={() => coverAnswers(!covering.peek())}>
        {covering.value ? 'Show what is right' : 'Hide what is right'}
      </button>
    </section>
  )
}
