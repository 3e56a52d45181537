/** How a projector's page is brought back to a reader's. */

/** Whether words are shown over the page for what has the focus: Escape is theirs first. */
export const isExplained = (target: EventTarget | null): boolean =>
  document.querySelector(':popover-open') !== null ||
  (target instanceof Element && target.closest('.tip[data-open="true"]') !== null)

/** Ends it. What has the focus stays in sight on the page that comes back; what is not there any more gives it to the switch. */
export function endProjector(): void {
  const had = document.activeElement
  const toggle = document.querySelector<HTMLElement>('[data-switch="projector"]')
  toggle?.click()
  if (!(had instanceof HTMLElement) || had === document.body) return
  requestAnimationFrame(() => {
    if (had.isConnected && had.checkVisibility()) had.scrollIntoView({ block: 'nearest' })
    else toggle?.focus()
  })
}
