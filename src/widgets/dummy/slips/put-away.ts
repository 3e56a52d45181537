import type { Dummy } from '../model/dummy-model.ts'

/** What had the focus when a slip was laid there. */
let opener: HTMLElement | null = null

/** Called before a slip takes the focus; one slip may open another. */
export function noteOpener(): void {
  const at = document.activeElement
  if (at instanceof HTMLElement && !at.closest('.dummy-slip')) opener = at
}

const isThere = (element: HTMLElement | null): element is HTMLElement =>
  element?.isConnected === true && element !== document.body && element.checkVisibility()

/**
 * Puts the slip away, if one lies there that can be; what it was about is let go. The keys go back to the button that
 * opened it, else to the list, as from what is offered on a fold.
 */
export function putAway({ slip, chosen, choose }: Dummy): void {
  const lies = slip.peek()
  if (lies === null || lies === 'begin') return
  if (lies === 'offers') choose(null)
  slip.value = null
  if (lies !== 'offers' && isThere(opener)) opener.focus()
  else if (chosen.peek()?.what !== 'part')
    document.querySelector<HTMLElement>('.outline [tabindex="0"]')?.focus()
}
