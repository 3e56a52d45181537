// Lays a squeezed twin beside every text file of the built site: whoever serves the folder need not squeeze again.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'

const TEXT = new Set(['.html', '.css', '.js', '.mjs', '.svg', '.json', '.txt', '.xml'])

/** Below this a header costs more than is saved, bytes. */
const SMALL = 1000

/** One quality more takes twenty times as long for three thousandths of the size; of pictures two take off an eighth. */
const QUALITY = { usual: 8, picture: 10 }

/** @param {string} folder every text file in it gets a `.br` and a `.gz` beside it */
export function squeeze(folder) {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !TEXT.has(extname(entry.name))) continue
    const path = join(entry.parentPath, entry.name)
    const text = readFileSync(path)
    if (text.length < SMALL) continue
    writeFileSync(`${path}.gz`, gzipSync(text, { level: 9 }))
    writeFileSync(
      `${path}.br`,
      brotliCompressSync(text, {
        params: {
          [constants.BROTLI_PARAM_QUALITY]: extname(entry.name) === '.svg' ? QUALITY.picture : QUALITY.usual,
        },
      }),
    )
  }
}
