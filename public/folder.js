// Runs before all else where a page is opened as a file of a disk. There a browser gives pages no modules, no workers and
// nothing to fetch; classic scripts it gives. What a page asks for lies in disk/ once more as such scripts
// (src/house/disk.mjs), and is brought from there. Nothing of this is loaded from a host.
const atDisk = (() => {
  const root = new URL('.', document.currentScript.src)

  /** What was laid down by the scripts that came, by its path in the site: `_astro/bench.js`. */
  const laid = new Map()
  /** What is on its way or here. */
  const asked = new Map()
  /** What modules give. */
  const given = new Map()

  const pathOf = (address) => new URL(address, document.baseURI).href.replace(/[?#].*$/, '').slice(root.href.length)

  /** Brings one script of disk/. */
  function bring(path) {
    if (!asked.has(path))
      asked.set(
        path,
        new Promise((done, failed) => {
          const script = document.createElement('script')
          script.src = new URL(`disk/${path}.js`, root).href
          script.onload = () => done(laid.get(path))
          script.onerror = () => {
            // It is looked for again when it is asked for again.
            asked.delete(path)
            failed(new Error(`the folder of this book has no file disk/${path}.js`))
          }
          document.head.append(script)
          script.remove()
        }),
      )
    return asked.get(path)
  }

  /** Brings a module with all that it needs, and makes it. Two modules may need one another. */
  async function module(path) {
    const seen = new Set()
    const gather = async (one) => {
      if (seen.has(one)) return
      seen.add(one)
      const { needs = [] } = await bring(one)
      await Promise.all(needs.map(gather))
    }
    try {
      await gather(path)
    } catch (error) {
      sayMissing(error.message)
      throw error
    }
    return made(path)
  }

  /** Where a page says how it is kept, and what it could say there. */
  const foot = () => document.getElementById('offline-says')

  /** Nothing works without it: then that is said where it is seen, once. */
  function sayMissing(what) {
    if (document.getElementById('folder-says')) return
    const cell = document.createElement('div')
    cell.className = 'cell'
    cell.innerHTML = '<div class="in-margin"></div><p class="on-page trouble" role="alert" id="folder-says"></p>'
    document.getElementById('page').prepend(cell)
    cell.lastChild.textContent = foot().dataset.folderLacks.replace('{what}', () => what)
  }

  function made(path) {
    if (!given.has(path)) {
      const gives = {}
      given.set(path, gives)
      laid.get(path).make((near) => made(beside(near)), gives)
    }
    return given.get(path)
  }

  /** Scripts lie side by side. */
  const beside = (near) => near.replace('./', '_astro/')

  const here = new URL('_astro/', root).href

  const bytesOf = (base64) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))

  const answerOf = ({ text, base64 }) => new Response(text ?? bytesOf(base64))

  /** What is written before a worker's own text: it is no file then, and finds what it fetches in its text. */
  const before = (files) => `'use strict'
const atDisk={here:${JSON.stringify(here)},files:${JSON.stringify(files)}}
const bytesOf=${bytesOf}
self.fetch=async(address)=>new Response(bytesOf(atDisk.files[new URL(address).pathname.split('/').pop()]));
`

  function workerText({ worker, needs }) {
    const files = Object.fromEntries(needs.map((path) => [path.split('/').pop(), laid.get(path).base64]))
    return URL.createObjectURL(new Blob([before(files), worker], { type: 'text/javascript' }))
  }

  self.Worker = new Proxy(Worker, {
    construct(Native, [address, options]) {
      const kept = laid.get(pathOf(address))
      return kept?.worker === undefined ? new Native(address, options) : new Native(workerText(kept))
    },
  })

  self.fetch = new Proxy(fetch, {
    apply: (native, self, [address, ...how]) =>
      new URL(address, document.baseURI).protocol === 'file:'
        ? bring(pathOf(address)).then(answerOf, () => new Response(null, { status: 404 }))
        : Reflect.apply(native, self, [address, ...how]),
  })

  // Islands ask for their scripts by this one call of Astro's.
  const { define } = customElements
  customElements.define = function (name, element, ...how) {
    if (name === 'astro-island') element.prototype.importWithRetry = (address) => module(pathOf(address))
    define.call(this, name, element, ...how)
  }

  // A module within the page never runs: it is seen before the browser comes to it, and what it imports is brought.
  const modules = []
  const watch = new MutationObserver((changes) => {
    for (const { addedNodes } of changes)
      for (const node of addedNodes)
        if (node instanceof HTMLScriptElement && node.type === 'module') {
          node.type = 'text/plain'
          modules.push(...[...node.textContent.matchAll(/import"([^"]+)"/g)].map(([, address]) => address))
        }
  })
  watch.observe(document, { childList: true, subtree: true })

  /** Where a browser gives no fonts either, those that the page itself names are made from what is brought. */
  async function lendFonts({ fontfaces }) {
    const lost = new Set(fontfaces.map(({ family }) => plain(family)))
    const sheets = [...document.styleSheets].filter(({ href }) => href === null)
    for (const { style } of sheets.flatMap(({ cssRules }) => [...cssRules])) {
      const told = (what) => style?.getPropertyValue(what) ?? ''
      const address = /url\("?([^")]+\.woff2)/.exec(told('src'))?.[1]
      if (!address || !lost.has(plain(told('font-family')))) continue
      document.fonts.removeEventListener('loadingerror', lendFonts)
      // Without it the device's own letters stand there.
      const { base64 } = await bring(pathOf(address)).catch(() => ({}))
      if (!base64) return
      const about = { weight: told('font-weight'), style: told('font-style'), display: 'swap' }
      document.fonts.add(new FontFace(plain(told('font-family')), bytesOf(base64), about))
    }
  }
  const plain = (family) => family.replace(/["']/g, '')
  document.fonts.addEventListener('loadingerror', lendFonts)

  /** An address that names a folder leads to no page: the page in it is named. */
  const name = (link) => {
    if (link.protocol === 'file:' && link.pathname.endsWith('/')) link.pathname += 'index.html'
  }
  const named = ({ target }) => {
    const link = target instanceof Element && target.closest('a[href]')
    if (link) name(link)
  }

  /** A ready template lies in the folder: the browser takes it by itself, and nothing fetches it. That it was taken is kept. */
  const taken = (event) => {
    const link = event.target instanceof Element ? event.target.closest('a[download]') : null
    if (link?.protocol !== 'file:') return
    event.stopImmediatePropagation()
    if (!link.dataset.prints) return
    try {
      localStorage.setItem(`hingebook.printed.${link.dataset.prints}`, '')
    } catch {
      // Storage may be forbidden: then it is not remembered.
    }
  }

  addEventListener('DOMContentLoaded', () => {
    watch.disconnect()
    for (const address of modules) module(pathOf(address)).catch(() => {})
    for (const link of document.links) name(link)
    for (const sign of ['pointerover', 'focusin', 'click']) addEventListener(sign, named, true)
    addEventListener('click', taken, true)
    const style = document.createElement('style')
    const { opensHereOnly, fromFolder } = foot().dataset
    style.textContent = `.copied:not(:empty)::after{content:${JSON.stringify(opensHereOnly)}}`
    document.head.append(style)
    foot().textContent = fromFolder
  })

  return {
    here,
    later: async (near) => module(beside(near)),
    lay: (path, what) => void laid.set(path, what),
  }
})()
