import type { JSX } from 'preact'
import * as says from '../../../content/words/bench.ts'
import { coverAnswers, covering } from '../model/page.ts'

/*
 * What covers an answer is always in the page; the page's own attribute, set before anything is painted, shows
 * it and hides what lies under it (site/guess.ts). Without script the attribute is not there.
 */

/** Over a figure. */
export function Cover(): JSX.Element {
  return (
    <p class="cover">
      <span aria-hidden="true">?</span>
      <span class="aloud">{says.covered}</span>
    </p>
  )
}

/** In place of a number. */
export function Mark(): JSX.Element {
  return (
    <span class="cover-mark">
      <span aria-hidden="true">?</span>
      <span class="aloud">{says.covered}</span>
    </span>
  )
}

/** At the back of a room: shows the answers, or covers them again. */
export function ShowHide(): JSX.Element {
  return (
    <button type="button" class="button show-hide" onClick={() => coverAnswers(!covering.peek())}>
      {covering.value ? says.show : says.hide}
    </button>
  )
}
