// Addresses are taken apart by Node's URL (the URL standard, url.spec.whatwg.org) and pages by linkedom.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseHTML } from 'linkedom'
import { expect, test } from 'vitest'
import { makePortable, pageFrom, scriptFrom, styleFrom } from '../../src/house/portable.mjs'
import { ROOT } from './tree.ts'

const NAMES = ['_astro', 'chapters', 'favicon.svg', 'keep.js', 'pictures', 'sheets']

/** What a page calls, as the site's own pages write it. */
const PAGE = `<head><link rel="icon" href="/favicon.svg"><style>@font-face{src:url("/_astro/fonts/a.woff2")}</style></head>
<body><a id="home" href="/">Home</a><a id="asked" href="/chapters/layers/?from=owl&back=/chapters/#why">x</a>
<a id="here" href="#why">x</a><a id="away" href="https://example.org/chapters/">x</a><a id="other" href="/chapters-of-mine/">x</a>
<img src="/pictures/owl.svg"><div data-lesson="{&quot;after&quot;:&quot;/chapters/&quot;}"></div>
<script>setTimeout(()=>import('/keep.js'))</script><script>fetch(\`/sheets/a.pdf\`)</script><p id="prose">It is 5 mm/chapters, or 1/2.</p></body>`

/** Where a site may lie, and how deep a page in it. */
const PLACES = [
  'https://h.example/',
  'https://h.example/paper/',
  'https://h.example/a/b/c/',
  'file:///stick/book/',
]
const DEPTHS = ['', 'chapters/', 'chapters/layers/']

for (const place of PLACES)
  test.each(DEPTHS)(`below ${place}%s everything is called from where the page stands`, (way) => {
    const at = new URL(way, place)
    const { document } = parseHTML(pageFrom(PAGE, NAMES, '../'.repeat(way.split('/').length - 1) || './'))
    const called = (selector: string, attribute: string): string =>
      new URL(document.querySelector(selector)?.getAttribute(attribute) ?? '', at).href
    expect(called('#home', 'href')).toBe(place)
    expect(called('link', 'href')).toBe(`${place}favicon.svg`)
    expect(called('img', 'src')).toBe(`${place}pictures/owl.svg`)
    // Behind the `?` stands a path of the site: the page that reads it knows where the site lies.
    expect(called('#asked', 'href')).toBe(`${place}chapters/layers/?from=owl&back=/chapters/#why`)
    expect(called('#here', 'href')).toBe(`${at.href}#why`)
    expect(called('#away', 'href')).toBe('https://example.org/chapters/')
    // No file of the site: whose it is we cannot know.
    expect(document.querySelector('#other')?.getAttribute('href')).toBe('/chapters-of-mine/')
    expect(document.querySelector('#prose')?.textContent).toBe('It is 5 mm/chapters, or 1/2.')
    const { after } = JSON.parse(document.querySelector('div')?.getAttribute('data-lesson') ?? '')
    expect(new URL(after, at).href).toBe(`${place}chapters/`)
    const script = /import\('([^']+)'\)/.exec(document.querySelector('script')?.textContent ?? '')?.[1] ?? ''
    expect(new URL(script, at).href).toBe(`${place}keep.js`)
    const [, fetched = ''] =
      /fetch\(`([^`]+)`\)/.exec(document.querySelectorAll('script')[1]?.textContent ?? '') ?? []
    expect(new URL(fetched, at).href).toBe(`${place}sheets/a.pdf`)
    // Without a dot at its head it would be the name of a package: HTML, 8.1.6.2, resolving module specifiers.
    expect(script).toMatch(/^\.\.?\//)
    const font = /url\("([^"]+)"\)/.exec(document.querySelector('style')?.textContent ?? '')?.[1] ?? ''
    expect(new URL(font, at).href).toBe(`${place}_astro/fonts/a.woff2`)
  })

// Minifiers write their texts in any of the three.
test.each(['"', "'", '`'])(
  'a script calls the files beside it, as a worker and as an address: %s',
  (quote) => {
    const script =
      'export const a=["/_astro/x.W0ff.woff"],w=u=>u(new URL("/_astro/w-1_a.js",""+import.meta.url)),v=e=>e.endsWith("/tip")'
    const from = scriptFrom(script.replaceAll('"', quote), '_astro')
    const meta = 'https://h.example/paper/_astro/bench.js'
    const run = new Function(
      'URL',
      'u',
      `${from.replaceAll('import.meta.url', JSON.stringify(meta)).replace('export const', 'const')};return [a[0], w(u).href, v('/tip')]`,
    ) as (url: typeof URL, u: (at: URL) => URL) => unknown
    expect(run(URL, (at) => at)).toEqual([
      'https://h.example/paper/_astro/x.W0ff.woff',
      'https://h.example/paper/_astro/w-1_a.js',
      true,
    ])
  },
)

test('a style sheet calls the files beside it', () => {
  const css = 'a{src:url(/_astro/x.woff2)}b{background:url("/_astro/y.svg")}c{fill:url(#d)}'
  expect(styleFrom(css, '_astro')).toBe('a{src:url(x.woff2)}b{background:url("y.svg")}c{fill:url(#d)}')
})

test('a whole folder: each file from its own depth, and the page for lost readers by its whole path', () => {
  mkdirSync(join(ROOT, '.cache'), { recursive: true })
  const folder = mkdtempSync(join(ROOT, '.cache', 'portable-'))
  const link = '<a href="/chapters/">x</a><a href="/">y</a>'
  const files = {
    'index.html': link,
    '404.html': link,
    'chapters/index.html': link,
    'chapters/layers/index.html': link,
    '_astro/a.js': 'f("/_astro/b.js","/chapters/")',
    '_astro/a.css': 'a{src:url(/_astro/b.woff2)}',
    'worker.js': 'f("/_astro/b.js")',
  }
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(folder, name, '..'), { recursive: true })
    writeFileSync(join(folder, name), text)
  }
  makePortable(folder, '_astro', '/paper/')
  const now = (name: string) => readFileSync(join(folder, name), 'utf8')
  const linked = (to: string) => `<a href="${to}chapters/">x</a><a href="${to}">y</a>`
  expect(now('index.html')).toBe(linked('./'))
  expect(now('404.html')).toBe(linked('/paper/'))
  expect(now('chapters/index.html')).toBe(linked('../'))
  expect(now('chapters/layers/index.html')).toBe(linked('../../'))
  // What a script asks for by a path of the site it turns itself.
  expect(now('_astro/a.js')).toBe('f(new URL("b.js",import.meta.url).href,"/chapters/")')
  expect(now('_astro/a.css')).toBe('a{src:url(b.woff2)}')
  expect(now('worker.js')).toBe(files['worker.js'])
  rmSync(folder, { recursive: true })
})
