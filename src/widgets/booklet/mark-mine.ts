/** Marks at the top that one is with one's own card, and not in the garden. `mine`: the address of the planning page. */
export function markMine(page: ParentNode, mine: string): void {
  for (const way of page.querySelectorAll<HTMLAnchorElement>('.ways a'))
    if (way.href === mine) way.setAttribute('aria-current', 'true')
    else way.removeAttribute('aria-current')
}
