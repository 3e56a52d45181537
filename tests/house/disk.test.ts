// What modules give is told by Node's own modules; pages are read by linkedom as a browser reads them.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { runInNewContext } from 'node:vm'
import { parseHTML } from 'linkedom'
import { afterAll, expect, test } from 'vitest'
import { layForDisk, pageForDisk } from '../../src/house/disk.mjs'
import { kept } from '../../src/house/offline.mjs'

/** A small site as the bundler writes it: what is exported changes later, two files need one another, one comes later. */
const SITE: Readonly<Record<string, string>> = {
  'index.html': '<!doctype html>',
  'folder.js': 'never kept',
  'kept.json': '{}',
  'search.json': '{"quote":"\u2028 </script> \\" `$1`"}',
  'dummies/owl.json': '{"title":"Owl"}',
  '_astro/page.A1.js':
    'import{n as e,a as t}from"./count.B2.js";import r,{even as o}from"./parity.C3.js";t();var i=()=>import(`./late.D4.js`).then(e=>e.word),s=()=>new Worker(new URL(`work-E5.js`,``+import.meta.url),{type:`module`}),c=`the import of paper`;export{e as n,o as even,r as parity,i as later,s as start,c as words,d as default};function d(){return this===void 0}',
  '_astro/count.B2.js': 'let n=1;const a=()=>{n++};export{n,a}',
  '_astro/parity.C3.js':
    'import{odd as o}from"./odd.F6.js";export const even=n=>n===0||o(n-1);export default n=>even(n)?"even":"odd"',
  '_astro/odd.F6.js': 'import{even as e}from"./parity.C3.js";export const odd=n=>n!==0&&e(n-1)',
  '_astro/late.D4.js': 'export const word="late"',
  '_astro/work-E5.js': 'self.font=new URL("f.G7.woff",import.meta.url).href,self.other=self.x+`-normal.woff`',
  '_astro/f.G7.woff': 'wOFF',
  '_astro/f.G7.woff2': 'wOF2',
}

const folder = mkdtempSync(join(tmpdir(), 'disk-'))
for (const [path, text] of Object.entries(SITE)) {
  mkdirSync(dirname(join(folder, path)), { recursive: true })
  writeFileSync(join(folder, path), text)
}
writeFileSync(join(folder, '_astro/package.json'), '{"type":"module"}')
afterAll(() => rmSync(folder, { recursive: true }))

interface Laid {
  readonly needs?: readonly string[]
  readonly text?: string
  readonly base64?: string
  readonly worker?: string
  readonly make?: (require: (near: string) => unknown, exports: object) => void
}

/** The scripts for a disk, run as classic ones are: in one scope that has nothing but `atDisk`. */
async function laid(): Promise<Map<string, Laid>> {
  await layForDisk(folder, '_astro')
  const found = new Map<string, Laid>()
  const atDisk = {
    here: 'file:///stick/_astro/',
    lay: (path: string, what: Laid) => void found.set(path, what),
    later: async (near: string) => given(found, near.replace('./', '_astro/')),
  }
  for (const entry of readdirSync(join(folder, 'disk'), { recursive: true, withFileTypes: true }))
    if (entry.isFile())
      runInNewContext(readFileSync(join(entry.parentPath, entry.name), 'utf8'), { atDisk, URL, Worker })
  return found
}

/** What a worker was started with. */
class Worker {
  readonly href: string
  constructor(address: URL) {
    this.href = address.href
  }
}

const made = new WeakMap<Laid, object>()

function given(found: Map<string, Laid>, path: string): object {
  const part = found.get(path)
  if (!part?.make) throw new Error(`${path} is no module`)
  const gives = made.get(part) ?? {}
  if (!made.has(part)) {
    made.set(part, gives)
    part.make((near) => given(found, near.replace('./', '_astro/')), gives)
  }
  return gives
}

interface Page {
  readonly n: number
  readonly even: (n: number) => boolean
  readonly parity: (n: number) => string
  readonly later: () => Promise<string>
  readonly start: () => Worker
  readonly words: string
  readonly default: () => boolean
}

const says = async ({ n, even, parity, later, words, default: alone }: Page): Promise<unknown> => ({
  n,
  even: [0, 1, 7, 8].map(even),
  parity: [7, 8].map(parity),
  later: await later(),
  words,
  // A module is strict: a function that nobody calls upon has no `this`.
  alone: Reflect.apply(alone, undefined, []),
})

test('a module for a disk gives what it gives to those who can import it', async () => {
  const found = await laid()
  const page = given(found, '_astro/page.A1.js') as Page
  const imported = (await import(
    /* @vite-ignore */ pathToFileURL(join(folder, '_astro/page.A1.js')).href
  )) as Page
  expect(await says(page)).toEqual(await says(imported))
  expect(page.n).toBe(2)
  expect(page.start().href).toBe('file:///stick/_astro/work-E5.js')
  // All that must be there before it is made, and nothing that comes later.
  expect([...(found.get('_astro/page.A1.js')?.needs ?? [])].sort()).toEqual([
    '_astro/count.B2.js',
    '_astro/parity.C3.js',
    '_astro/work-E5.js',
  ])
})

test('what is fetched lies there letter by letter, and a worker with the fonts that it asks for', async () => {
  const found = await laid()
  expect(found.get('search.json')?.text).toBe(SITE['search.json'])
  expect(found.get('dummies/owl.json')?.text).toBe(SITE['dummies/owl.json'])
  expect(Buffer.from(found.get('_astro/f.G7.woff')?.base64 ?? '', 'base64').toString()).toBe('wOFF')
  expect(found.has('kept.json')).toBe(false)
  const work = found.get('_astro/work-E5.js')
  // A part of a name is no file.
  expect([...(work?.needs ?? [])]).toEqual(['_astro/f.G7.woff'])
  const self = { x: 'bold', font: '' }
  runInNewContext(work?.worker ?? '', { self, URL, atDisk: { here: 'file:///stick/_astro/' } })
  expect(self.font).toBe('file:///stick/_astro/f.G7.woff')
})

test('no device keeps what is for a disk', async () => {
  await laid()
  const addresses = Object.keys(kept(folder))
  expect(addresses).toContain('./search.json')
  expect(addresses.filter((address) => /disk|folder/.test(address))).toEqual([])
})

const HEAD =
  '<link rel="preload" href="/_astro/fonts/a.woff2" as="font" type="font/woff2" crossorigin><style></style>'

/** What a page asks for when its own short scripts have written what they write, at an address. */
function asked(html: string, location: string): readonly string[] {
  const written = html.replace(/<script>(document\.write.*?)<\/script>/g, (_, script: string) => {
    let text = ''
    runInNewContext(script, { location, document: { write: (more: string) => (text += more) } })
    return text
  })
  const { document } = parseHTML(written)
  return [...document.querySelectorAll('script[src], link')].map(
    (one) => one.getAttribute('src') ?? one.getAttribute('href') ?? '',
  )
}

test('a page from a host asks for its font and not for what helps a disk; from a disk the other way round', () => {
  const page = pageForDisk(`<html><head>${HEAD}</head><body></body></html>`)
  expect(asked(page, 'https://h.example/paper/')).toEqual(['/_astro/fonts/a.woff2'])
  expect(asked(page, 'file:///stick/index.html')).toEqual(['/folder.js'])
  // Of a shared folder, a file's address names a host too: RFC 8089.
  expect(asked(page, 'file://server/stick/index.html')).toEqual(['/folder.js'])
})

test('a module of a page is asked for from within it', () => {
  const page = pageForDisk(`${HEAD}<script type="module" src="/_astro/at-hand.js"></script>`)
  expect(page).toContain('<script type="module">import"/_astro/at-hand.js"</script>')
  expect(() => pageForDisk(`${HEAD}<script type="module">let a</script>`)).toThrow(/module of its own/)
  expect(() => pageForDisk('<head></head>')).toThrow(/no font/)
})
