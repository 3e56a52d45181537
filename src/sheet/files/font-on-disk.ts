/** For Node only: the build and the command line. A browser fetches the same files. */
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import type { SheetFont } from './font.ts'
import { loadFont } from './font.ts'

/** Reads the font from the installed package. */
export function fontOnDisk(): Promise<SheetFont> {
  const require = createRequire(join(process.cwd(), 'package.json'))
  return loadFont((file) => readFile(require.resolve(`@fontsource/atkinson-hyperlegible-next/files/${file}`)))
}
