// The picture that a page shows before all others stands in the page itself, and is there with it: fetched by its
// address it would come an answer later, after whatever else the page asks for.
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { turnPages } from './files.mjs'

/** A drawing that a page asks to have before others. */
const FIRST = /(<img\b[^>]*?\ssrc=")([^":]+\.svg)("[^>]*\sfetchpriority="high")/g

/**
 * A drawing as an address that holds it (RFC 2397), to stand between double quotes in HTML. A parser of addresses drops
 * ends of lines (WHATWG, URL, 4.4).
 * @param {string} svg
 */
const asAddress = (svg) =>
  `data:image/svg+xml,${svg.replace(/[%#"]/g, encodeURIComponent).replace(/\s+/g, ' ').replaceAll('&', '&amp;')}`

/**
 * @param {string} html
 * @param {(address: string) => string | undefined} drawing what lies at an address, as the page calls it
 */
export const withFirstPicture = (html, drawing) =>
  html.replace(FIRST, (all, before, address, after) => {
    const svg = drawing(address)
    return svg === undefined ? all : before + asAddress(svg) + after
  })

/** @param {string} folder the built site: its pages are written anew */
export const placeFirstPictures = (folder) =>
  turnPages(folder, (html, path) =>
    withFirstPicture(html, (address) => {
      const file = join(folder, dirname(path), address)
      return existsSync(file) ? readFileSync(file, 'utf8') : undefined
    }),
  )
