// Keeps the whole site on the device, so that it works without a network. What is kept is listed in kept.json, each
// file with a mark of what is in it: after a change only what is new is fetched. A reader's own work is not here, it
// is in the browser's database, and nothing below touches that.

const STORE = 'hingebook'

/** Where the site lies: beside this file. */
const HOME = new URL('.', self.location).pathname

const LIST = `${HOME}kept.json`

/** Longer than this nobody waits for a network that may not be there, ms. */
const PATIENCE = 4000

self.addEventListener('install', (event) => {
  event.waitUntil(self.skipWaiting())
})

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim())
})

/** A list whose addresses begin with the site's own place, whatever they began with. */
const placed = (list) =>
  Object.fromEntries(
    Object.entries(list).map(([address, mark]) => [new URL(address, self.location).pathname, mark]),
  )

/** The list as it was when the files were last fetched; empty before. */
async function listBefore(store) {
  const before = await store.match(LIST)
  return before ? placed(await before.json()) : {}
}

let keeping = null

/** Fetches what is new, lets go of what is gone, and tells the page how far it is. */
async function keepAll(tell) {
  const store = await caches.open(STORE)
  const answer = await fetch(LIST, { cache: 'no-store' })
  if (!answer.ok) throw new Error(`${LIST}: ${answer.status}`)
  const list = placed(await answer.json())
  const before = await listBefore(store)
  const paths = Object.keys(list)
  let kept = 0
  for (const path of paths) {
    if (before[path] !== list[path] || !(await store.match(path))) {
      const file = await fetch(path, { cache: 'no-cache' })
      if (!file.ok) throw new Error(`${path}: ${file.status}`)
      await store.put(path, file)
    }
    kept += 1
    if (kept % 20 === 0) tell({ kept, of: paths.length })
  }
  // Only now is the new list true.
  await store.put(LIST, new Response(JSON.stringify(list), { headers: { 'Content-Type': 'application/json' } }))
  for (const path of Object.keys(before)) if (!(path in list)) await store.delete(path)
  tell({ kept, of: paths.length })
}

self.addEventListener('message', (event) => {
  if (event.data !== 'keep') return
  const tell = (said) => event.source?.postMessage(said)
  keeping ??= keepAll(tell).finally(() => {
    keeping = null
  })
  event.waitUntil(keeping.catch(() => tell({ failed: true })))
})

/** From the network if it answers soon, else as it was kept. */
async function freshOrKept(request, path) {
  const kept = async () => (await caches.open(STORE)).match(path)
  const fresh = fetch(request)
  try {
    const slow = new Promise((resolve) => setTimeout(resolve, PATIENCE)).then(kept)
    const first = await Promise.race([fresh, slow])
    return first ?? (await fresh)
  } catch (error) {
    const found = await kept()
    if (found) return found
    throw error
  }
}

/** What is named after its content is the same for good. */
async function keptOrFresh(request, path) {
  return (await (await caches.open(STORE)).match(path)) ?? fetch(request)
}

self.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin || pathname === LIST) return
  event.respondWith(
    pathname.startsWith(`${HOME}_astro/`) ? keptOrFresh(request, pathname) : freshOrKept(request, pathname),
  )
})
