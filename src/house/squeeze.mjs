// Lays a squeezed twin beside every text file of the built site: whoever serves the folder need not squeeze again.
import { readFileSync, writeFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import { filesIn } from './files.mjs'

const [smallBr, smallGz] = [promisify(brotliCompress), promisify(gzip)]

const TEXT = new Set(['.html', '.css', '.js', '.mjs', '.svg', '.json', '.txt', '.xml'])

/** Below this a header costs more than is saved, bytes. */
const SMALL = 1000

/** What pictures fill. */
const DRAWN = new Set(['.html', '.svg'])

/** One quality more takes twenty times as long for three thousandths of the size; of pictures two take off an eighth. */
const QUALITY = { usual: 8, drawn: 10 }

/** @param {string} folder every text file in it gets a `.br` and a `.gz` beside it */
export async function squeeze(folder) {
  await Promise.all(
    filesIn(folder).map(async (name) => {
      const kind = extname(name)
      if (!TEXT.has(kind)) return
      const path = join(folder, name)
      const text = readFileSync(path)
      if (text.length < SMALL) return
      const quality = DRAWN.has(kind) ? QUALITY.drawn : QUALITY.usual
      const params = { [constants.BROTLI_PARAM_QUALITY]: quality }
      const [br, gz] = await Promise.all([smallBr(text, { params }), smallGz(text, { level: 9 })])
      writeFileSync(`${path}.br`, br)
      writeFileSync(`${path}.gz`, gz)
    }),
  )
}
