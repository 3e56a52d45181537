// Scripts that stand in the pages themselves are made as small as those beside them: no page waits for them, and each
// reader fetches them with every page.
import { minify } from 'terser'
import { turnPages } from './files.mjs'

/** A script of a page's own: neither fetched by its address nor data. */
const OWN = /(<script(?![^>]*(?:\ssrc=|json))[^>]*>)([\s\S]+?)(<\/script>)/g

/** @type {Map<string, string>} the same few stand in every page */
const known = new Map()

/** @param {string} script */
async function smaller(script) {
  const found = known.get(script)
  if (found !== undefined) return found
  const { code = script } = await minify(script, { ecma: 2020, compress: { passes: 3 } })
  known.set(script, code)
  return code
}

/** @param {string} html */
export async function withSmallScripts(html) {
  let page = ''
  let end = 0
  for (const { 0: all, 1: opened, 2: script, 3: shut, index } of html.matchAll(OWN)) {
    page += html.slice(end, index) + opened + (await smaller(script ?? '')) + shut
    end = index + all.length
  }
  return page + html.slice(end)
}

/** @param {string} folder the built site: its pages are written anew */
export const shrinkInline = (folder) => turnPages(folder, withSmallScripts)
