/**
 * Scrolls to a heading that lies above the window or behind the card that is pinned on a narrow page, or, from
 * anywhere, below the window too: its style says as scroll margins what is pinned. What is in sight stays where it is.
 */
export function intoSight(heading: HTMLElement, from: 'above' | 'anywhere'): void {
  const { scrollMarginTop, scrollMarginBottom } = getComputedStyle(heading)
  const { top, bottom } = heading.getBoundingClientRect()
  const isAbove = top < Number.parseFloat(scrollMarginTop)
  const isBelow = bottom > innerHeight - Number.parseFloat(scrollMarginBottom)
  if (isAbove || (isBelow && from === 'anywhere')) heading.scrollIntoView({ block: 'start' })
}
