// Makes the built site work wherever it lies: at the root of a host, in a folder of one, or in a folder of a disk. What
// its files call by `/…` they then call from where they stand themselves.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { filesIn } from './files.mjs'

/** Shown at addresses that nobody knows before: it alone must call everything by its whole path. */
const LOST = '404.html'

/** @param {string} text */
const literally = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/**
 * A page with what it calls turned: in attributes, in styles and scripts within it, and in what islands are given. What
 * an address says after its `?` is no call, and stays.
 * @param {string} html
 * @param {readonly string[]} names the files and folders that lie at the root of the site
 * @param {string} to the way from the page to that root: `./`, `../../`
 */
export const pageFrom = (html, names, to) =>
  html
    .replace(
      new RegExp(`(["'\`(]|&quot;)/(?=(?:${names.map(literally).join('|')})(?:[/"'\`?#)]|&quot;))`, 'g'),
      `$1${to}`,
    )
    .replace(/(\bhref=["'])\/(?=["'?#])/g, `$1${to}`)

/**
 * A script with the files beside it turned, by whichever quotes its minifier likes.
 * @param {string} script
 * @param {string} folder the folder at the root of the site in which scripts and styles lie
 */
export function scriptFrom(script, folder) {
  const quote = '["\'`]'
  const file = `(?<quote>${quote})/${literally(folder)}/([\\w.-]+)\\k<quote>`
  return script
    .replace(
      new RegExp(`new URL\\(${file}(?=,(?:${quote}{2}\\+)?import\\.meta\\.url\\))`, 'g'),
      'new URL("$2"',
    )
    .replace(new RegExp(file, 'g'), 'new URL("$2",import.meta.url).href')
}

/**
 * A style sheet with the files beside it turned.
 * @param {string} css
 * @param {string} folder
 */
export const styleFrom = (css, folder) =>
  css.replace(new RegExp(`(url\\(["']?)/${literally(folder)}/`, 'g'), '$1')

/**
 * How the text of a file is turned, by the end of its name.
 * @type {Readonly<Record<string, (text: string, where: { names: readonly string[], assets: string, to: string }) => string>>}
 */
const TURNS = {
  '.html': (text, { names, to }) => pageFrom(text, names, to),
  '.js': (text, { assets }) => scriptFrom(text, assets),
  '.css': (text, { assets }) => styleFrom(text, assets),
}

/**
 * @param {string} folder the built site: its pages, scripts and styles are written anew
 * @param {string} assets the folder in it where scripts and styles lie
 * @param {string} place where the site will lie on its host, as `/paper/`: for the page that is shown for what is not there
 */
export function makePortable(folder, assets, place) {
  // A page is called by its folder.
  const names = readdirSync(folder).filter((name) => extname(name) !== '.html')
  for (const path of filesIn(folder)) {
    const way = path.split('/')
    const to = path === LOST ? place : '../'.repeat(way.length - 1) || './'
    const end = extname(path)
    const turn = end === '.html' || way[0] === assets ? TURNS[end] : undefined
    const file = join(folder, path)
    if (turn) writeFileSync(file, turn(readFileSync(file, 'utf8'), { names, assets, to }))
  }
}
