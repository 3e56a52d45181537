/** From a chapter’s bench to the dummy, and back to the bench as it was. */
import type { Design } from '../../paper/index.ts'
import { linkText } from './link.ts'

const BACK = 'back'

/** A place of this site: a path of it, and perhaps the state of a bench behind `#`. Nothing that leads elsewhere. */
const PLACE = /^\/(?!\/)[\w/.-]{0,200}(?:#[\w.=&%-]{0,2000})?$/

/**
 * The address that opens a design as a new dummy; null where it is too large for a link.
 * @param dummy where the planning page is: `/dummy/`
 * @param from where the maker comes from and can go back to: `/chapters/beak/#beak.cut=38`
 */
export async function takeAddress(design: Design, dummy: string, from: string): Promise<string | null> {
  const link = await linkText(design)
  if (link === null) return null
  return `${dummy}#${link}${PLACE.test(from) ? `&${BACK}=${encodeURIComponent(from)}` : ''}`
}

/** Where a maker who took a design along can go back to; null if the address says none, or no place of this site. */
export function wayBack(hash: string): string | null {
  const from = new URLSearchParams(hash.replace(/^#/, '')).get(BACK)
  return from !== null && PLACE.test(from) ? from : null
}
