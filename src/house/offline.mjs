// Lists what a device keeps of the built site, so that it works without a network: public/worker.js fetches it.
import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { basename, extname, join } from 'node:path'
import { DISK } from './disk.mjs'
import { filesIn } from './files.mjs'

/** Templates are made on the device too, and a squeezed file is fetched by its plain name. */
const LEFT = new Set(['.pdf', '.br', '.gz'])

/** Pictures for those who link to a page: no reader sees them here. */
const FOR_OTHERS = 'previews'

/** What helps a page from a disk is no help to one that a host gave. */
const FOR_DISK = new Set(['folder.js', DISK])

/** The worker is kept by the browser itself. */
const OWN = new Set(['worker.js', 'kept.json'])

/**
 * @param {string} folder the built site
 * @returns {Record<string, string>} a mark of what is in it for each address, which begins where the list lies
 */
export function kept(folder) {
  /** @type {Record<string, string>} */
  const list = {}
  for (const path of filesIn(folder)) {
    if (LEFT.has(extname(path)) || OWN.has(basename(path))) continue
    const [first = ''] = path.split('/')
    if (first === FOR_OTHERS || FOR_DISK.has(first)) continue
    const address = `./${path}`.replace(/\/index\.html$/, '/')
    const text = readFileSync(join(folder, path))
    list[address] = createHash('sha256').update(text).digest('base64url').slice(0, 12)
  }
  return Object.fromEntries(Object.entries(list).sort(([a], [b]) => (a < b ? -1 : 1)))
}

/** @param {string} folder the built site: gets its list as kept.json */
export const listKept = (folder) => writeFileSync(join(folder, 'kept.json'), JSON.stringify(kept(folder)))
