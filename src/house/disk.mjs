// Makes the built site work from a folder of a disk. There a browser gives a page neither modules nor workers nor what
// it would fetch, but classic scripts it gives: so everything that is asked for by script lies in `disk/` once more, each
// file as one script, which public/folder.js brings. A page from a host loads none of it.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, extname, join } from 'node:path'
// The bundler that vite brings: what made these files knows best how to turn them.
import { rolldown } from 'rolldown'
import { filesIn, turnPages } from './files.mjs'

/** Where those scripts lie in the built site. */
export const DISK = 'disk'

/** What a service worker fetches, and no page. */
const LEFT = new Set(['kept.json'])

/** A worker as a script starts it. */
const WORKER = /new URL\((["'`])([\w.-]+\.js)\1,(?:(["'`])\3\+)?import\.meta\.url\)/g

/** A font file, as a script names it. */
const FONT = /[\w.-]+\.woff(?!2)/g

/**
 * A page in which nothing is asked for that a disk does not give: there a font that is loaded ahead, and a module that is
 * a file, are troubles told to the console. From a host both come as before.
 * @param {string} html
 */
export function pageForDisk(html) {
  const [ahead, font] = /<link rel="preload" href="([^"']+)" as="font"[^>]*>/.exec(html) ?? []
  if (ahead === undefined)
    throw new Error('no font is loaded ahead in a page, or not as src/house/disk.mjs knows it')
  // The first drag counts every byte of a script.
  const page = html
    .replace(
      ahead,
      `<script>document.write(/^file/.test(location)?'<script src="/folder.js"><\\/script>':'<link rel=preload as=font crossorigin href="${font}">')</script>`,
    )
    .replace(/<script type="module" src="([^"]+)"><\/script>/g, '<script type="module">import"$1"</script>')
  if (/<script type="module"(?!>import"[^"]+"<\/script>)/.test(page))
    throw new Error('a page has a module of its own, which public/folder.js cannot bring')
  return page
}

/** @param {string} folder the built site, before its addresses are turned: its pages are written anew */
export const readyForDisk = (folder) => turnPages(folder, pageForDisk)

/** What a module is called while it is turned. */
const ALONE = '/alone.js'

/**
 * A module as a function of what it needs: `import` of files becomes `require`, and what is imported later is brought.
 * Each is turned alone, since of several the bundler would make what suits it best.
 * @param {string} file
 * @returns {Promise<string>} the body of the function
 */
async function asFunction(file) {
  const bundle = await rolldown({
    input: ALONE,
    external: (_, from) => from !== undefined,
    plugins: [
      {
        name: 'alone',
        // By no path: of a file of a package the bundler would think that what it needs are Node's modules.
        resolveId: (id) => (id === ALONE ? id : null),
        load: (id) => (id === ALONE ? readFileSync(file, 'utf8') : null),
      },
    ],
    treeshake: false,
    platform: 'browser',
    transform: { define: { 'import.meta.url': 'atDisk.here' } },
  })
  const { output } = await bundle.generate({ format: 'cjs', exports: 'named', minify: true })
  await bundle.close()
  const code = output[0].code.replace(/\bimport\((?=["'`]\.\/)/g, 'atDisk.later(')
  if (output.length > 1 || /\bimport\s*\(|\bimport\.meta\b/.test(code))
    throw new Error(`${file} asks for something that a disk does not give`)
  return code
}

/**
 * Lays the scripts for a disk beside the built site.
 * @param {string} folder the built site, finished
 * @param {string} assets the folder in it where scripts and styles lie
 */
export async function layForDisk(folder, assets) {
  const text = (/** @type {string} */ path) => readFileSync(join(folder, path), 'utf8')
  const lay = (/** @type {string} */ path, /** @type {string} */ what) => {
    const to = join(folder, DISK, `${path}.js`)
    mkdirSync(dirname(to), { recursive: true })
    writeFileSync(to, `atDisk.lay(${JSON.stringify(path)},{${what}})\n`)
  }
  const files = filesIn(folder).filter((path) => !path.startsWith(`${DISK}/`))
  const known = new Set(files)
  // A part of a name is no file.
  const beside = (/** @type {Iterable<string>} */ names) =>
    JSON.stringify([...new Set(names)].map((name) => `${assets}/${name}`).filter((path) => known.has(path)))
  for (const path of files) {
    if (extname(path) === '.json' && !LEFT.has(path)) lay(path, `text:${JSON.stringify(text(path))}`)
    // Fonts for paper, and those of the page itself for a browser that gives a file of a disk no font.
    if (extname(path) === '.woff' || dirname(path) === `${assets}/fonts`)
      lay(path, `base64:${JSON.stringify(readFileSync(join(folder, path), 'base64'))}`)
  }
  const scripts = files.filter((path) => dirname(path) === assets && extname(path) === '.js')
  /** @type {Record<string, string[]>} */
  const workersOf = Object.fromEntries(
    scripts.map((path) => [path, [...text(path).matchAll(WORKER)].map(([, , name = '']) => name)]),
  )
  const workers = new Set(Object.values(workersOf).flat())
  for (const name of workers) {
    const code = text(`${assets}/${name}`).replaceAll('import.meta.url', 'atDisk.here')
    lay(`${assets}/${name}`, `needs:${beside(code.match(FONT) ?? [])},worker:${JSON.stringify(code)}`)
  }
  const parts = scripts.filter((path) => !workers.has(path.slice(assets.length + 1)))
  await Promise.all(
    parts.map(async (path) => {
      const code = await asFunction(join(folder, path))
      const needs = [...code.matchAll(/\brequire\(["'`]\.\/([^"'`]+)["'`]\)/g)].map(([, name = '']) => name)
      lay(
        path,
        `needs:${beside([...needs, ...(workersOf[path] ?? [])])},make(require,exports){'use strict';${code}}`,
      )
    }),
  )
}
