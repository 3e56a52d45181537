// Addresses as Node's URL resolves them (the URL standard). The page is linkedom's.
import { parseHTML } from 'linkedom'
import { afterEach, expect, test, vi } from 'vitest'
import { pathHere, placed } from '../../src/widgets/model/place.ts'

afterEach(() => vi.unstubAllGlobals())

/** A page of a site whose pages name its manifest from where they stand. */
function openAt(address: string, manifest: string): void {
  const { document } = parseHTML('<html><head><link rel="manifest"></head></html>')
  // A browser gives a link's address whole.
  const href = new URL(manifest, address).href
  vi.stubGlobal('document', { querySelector: (found: string) => document.querySelector(found) && { href } })
  vi.stubGlobal('location', new URL(address))
}

test.each([
  ['https://h.example/', './m.webmanifest', 'https://h.example/', '/'],
  [
    'https://h.example/chapters/layers/?alone#a',
    '../../m.webmanifest',
    'https://h.example/',
    '/chapters/layers/',
  ],
  ['https://h.example/paper/words/', '../m.webmanifest', 'https://h.example/paper/', '/words/'],
  ['http://localhost:8000/a/b/', './m.webmanifest', 'http://localhost:8000/a/b/', '/'],
])('at %s the site is found, and where in it the page is', (address, manifest, home, path) => {
  openAt(address, manifest)
  expect(placed('/')).toBe(home)
  expect(placed('/dummy/')).toBe(`${home}dummy/`)
  expect(placed('/steps/?from=owl')).toBe(`${home}steps/?from=owl`)
  expect(placed('/chapters/layers/#a.b=4&c.d=5')).toBe(`${home}chapters/layers/#a.b=4&c.d=5`)
  expect(pathHere()).toBe(path)
  expect(new URL(placed(pathHere())).pathname).toBe(new URL(address).pathname)
})

test('no path leads to another host', () => {
  openAt('https://h.example/paper/', './m.webmanifest')
  for (const path of ['/..//evil.example/', '/../../evil.example/', '/./x', '//evil.example/'])
    expect(new URL(placed(path)).host, path).toBe('h.example')
})

test('on the server an address stays a path of the site', () => {
  expect(placed('/garden/')).toBe('/garden/')
})
