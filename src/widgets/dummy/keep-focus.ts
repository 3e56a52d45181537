/** Where the keys go on when what had the focus is gone: nothing that can be pressed lies at the page's beginning. */
const PLACES = [
  // What lies there now is what was asked for last.
  '.dummy-slip .slip-head h2[tabindex]',
  '.sizes-head h2',
  '.outline [tabindex="0"]',
  'summary',
] as const

/**
 * Gives the focus a place each time its button goes with a slip or a part: the slip that lies there, else the part that
 * is taken up, else the list. A hand that presses beside all buttons lets the focus go, and it stays so. Returns what
 * ends it.
 */
export function keepFocus(root: HTMLElement): () => void {
  let last: Element | null = null
  const onFocus = ({ target }: FocusEvent) => {
    last = target instanceof Element ? target : null
  }
  const onDown = () => {
    last = null
  }
  const seen = new MutationObserver(() => {
    if (!last || last.isConnected || document.activeElement !== document.body) return
    for (const place of PLACES) {
      root.querySelector<HTMLElement>(place)?.focus({ preventScroll: true })
      if (document.activeElement !== document.body) return
    }
  })
  root.addEventListener('focusin', onFocus)
  root.addEventListener('pointerdown', onDown)
  seen.observe(root, { childList: true, subtree: true })
  return () => {
    root.removeEventListener('focusin', onFocus)
    root.removeEventListener('pointerdown', onDown)
    seen.disconnect()
  }
}
