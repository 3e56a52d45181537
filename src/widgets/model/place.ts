/**
 * Addresses within the site, wherever it lies. `/dummy/` is the planning page, also where the site is a folder of
 * another one, `https://school.example/paper/`. What the server writes into pages is turned when the site is built
 * (`src/house/portable.mjs`); what a script asks for is turned here.
 */

/** Where the site begins: its manifest lies there, and every page names that. */
const home = (): URL =>
  new URL('.', document.querySelector<HTMLLinkElement>('link[rel=manifest]')?.href ?? location.origin)

/** The address of a page as it is called: on a disk by its file, since no server finds that in its folder. */
export const called = (address: string): string =>
  location.protocol === 'file:' ? address.replace(/^([^?#]*\/)(?=$|[?#])/, '$1index.html') : address

/** The address of a place of this site. */
export const placed = (path: string): string =>
  typeof document === 'undefined' ? path : called(new URL(`.${path}`, home()).href)

/** The path of the page within the site, as `/chapters/layers/`. */
export const pathHere = (): string => location.pathname.slice(home().pathname.length - 1)
