import type { JSX } from 'preact'
import * as says from '../../../content/words/keeping/own-cards.ts'
import { ownKey } from './own-cards.ts'
import type { Entry } from './shelf.ts'

/** In a list of cards those that the reader keeps, if there are any. */
export function OwnCards({ own }: { readonly own: readonly Entry[] }): JSX.Element | null {
  if (own.length === 0) return null
  return (
    <optgroup label={says.mine}>
      {own.map((entry) => (
        <option key={entry.id} value={ownKey(entry)}>
          {entry.name}
        </option>
      ))}
    </optgroup>
  )
}
