import type { JSX } from 'preact'
import { wayOf } from '../paper/index.ts'
import type { Bench } from './bench-model.ts'

/** Which way the mechanisms named by the chapter go as the card opens, one sentence each. */
export function WayNote({ bench }: { readonly bench: Bench }): JSX.Element | null {
  const ids = bench.config.ways ?? []
  if (ids.length === 0) return null
  const design = bench.design.value
  return (
    <div class="way-note">
      {ids.map((id) => (
        <p key={id}>{wayOf(design, id).sentence}</p>
      ))}
    </div>
  )
}
