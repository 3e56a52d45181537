// The files of the built site.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'

/**
 * @param {string} folder
 * @returns {string[]} all files below it, as `chapters/index.html`
 */
export const filesIn = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))

/**
 * Writes every page below a folder anew.
 * @param {string} folder
 * @param {(html: string, path: string) => string | Promise<string>} turn path: of the page, from the folder
 */
export async function turnPages(folder, turn) {
  for (const path of filesIn(folder).filter((one) => extname(one) === '.html')) {
    const file = join(folder, path)
    writeFileSync(file, await turn(readFileSync(file, 'utf8'), path))
  }
}
