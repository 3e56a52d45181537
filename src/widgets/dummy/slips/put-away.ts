import type { Dummy } from '../model/dummy-model.ts'

/** Puts the slip away, if one lies there that can be; what it was about is let go, and the keys go back to the list. */
export function putAway({ slip, chosen, choose }: Dummy): void {
  const lies = slip.peek()
  if (lies === null || lies === 'begin') return
  if (lies === 'offers') choose(null)
  slip.value = null
  if (chosen.peek()?.what !== 'part') document.querySelector<HTMLElement>('.outline [tabindex="0"]')?.focus()
}
