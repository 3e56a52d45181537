import type { JSX } from 'preact'
import * as says from '../../../content/words/beside.ts'

/** Why something is covered, and both ways to lift it. */
export function GuessNote(): JSX.Element {
  return (
    <p class="guess-note">
      {says.markedBefore} <strong>?</strong> {says.markedAfter} <a href="#predict">{says.guessFirst}</a>
      {says.orElse}{' '}
      <button type="button" data-show-me>
        {says.showMe}
      </button>
    </p>
  )
}
