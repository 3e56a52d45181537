import type { JSX } from 'preact'

/** Why something is covered, and both ways to lift it. */
export function GuessNote(): JSX.Element {
  return (
    <p class="guess-note">
      What is marked <strong>?</strong> is covered. <a href="#predict">Guess first</a>, or{' '}
      <button type="button" data-show-me>
        Show me
      </button>
    </p>
  )
}
