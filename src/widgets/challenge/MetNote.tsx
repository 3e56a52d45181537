import type { JSX } from 'preact'
import * as says from '../../../content/words/challenge-met.ts'
import { metOn } from '../model/met.ts'

/** At the bench: which challenge it meets just now. */
export function MetNote({ slug }: { readonly slug: string }): JSX.Element {
  const met = metOn(slug).value
  return (
    <div class="met-note" data-met={met !== null}>
      {met ? (
        <p>
          <strong>{says.met}</strong> <a href="#challenge">{met.name}</a>
        </p>
      ) : null}
    </div>
  )
}
