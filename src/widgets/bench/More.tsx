import type { JSX } from 'preact'
import * as says from '../../../content/words/beside.ts'
import type { FigureName } from '../state/config.ts'
import { captions } from './captions.ts'

/** What is folded away until it is asked for, where there is room for the rest. */
export function More({ folds }: { readonly folds: readonly FigureName[] }): JSX.Element {
  return (
    <fieldset class="bench-more">
      <legend class="aloud">{says.moreToSee}</legend>
      {folds.map((name) => (
        <label key={name}>
          <input type="checkbox" class={`unfold-${name}`} />
          <span>{captions[name]}</span>
        </label>
      ))}
    </fieldset>
  )
}
