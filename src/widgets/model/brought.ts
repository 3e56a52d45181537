import type { Design } from '../../paper/index.ts'

/** A design, or the name under which the page brings it. */
export type DesignSource = Design | string

const brought = new Map<string, Design>()

/** The id of the page's element that holds a design. */
export const holderOf = (name: string): string => `design-${name}`

/** While a page is made: makes a design known to its islands, and returns the text that its holder holds. */
export function bring(name: string, design: Design): string {
  brought.set(name, design)
  // Nothing in it may end the element that holds it.
  return JSON.stringify(design).replaceAll('<', '\\u003c')
}

/**
 * A design that the page brings once, however many of its islands speak of it. Throws a RangeError if it brings none
 * of that name.
 */
export function designFrom(source: DesignSource): Design {
  if (typeof source !== 'string') return source
  let design = brought.get(source)
  if (!design) {
    const text =
      typeof document === 'undefined' ? null : document.getElementById(holderOf(source))?.textContent
    if (!text) throw new RangeError(`there is no design ${source}`)
    // The site's own, checked when the page was made.
    design = JSON.parse(text) as Design
    brought.set(source, design)
  }
  return design
}
