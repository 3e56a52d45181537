import type { JSX } from 'preact'
import type { Dummy } from './dummy-model.ts'
import { Slip } from './Slip.tsx'

/** A tip where it should be: what finds mechanisms for it comes next. */
export function WishSlip({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  return (
    <Slip dummy={dummy} title="Your wish">
      <p />
    </Slip>
  )
}
