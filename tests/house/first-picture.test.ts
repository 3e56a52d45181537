// A page's first picture stands in it and is the same picture. Held against the address standard as Node has it
// (WHATWG, URL; RFC 2397 for what such an address says).
import { expect, test } from 'vitest'
import { withFirstPicture } from '../../src/house/first-picture.mjs'

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><style>
.a > path { fill: #fdf; width: 50% }</style><title>Heron &amp; moon’s</title>
  <path class="a"
    d="M0 0L9 9"/></svg>`

const page = (more: string) => `<p>1</p><img src="./pictures/garden.svg" alt="“Garden”" ${more}><p>2</p>`

const placed = (html: string) =>
  withFirstPicture(html, (address) => (address === './pictures/garden.svg' ? SVG : undefined))

/** What HTML and then the address say, as a browser reads them. */
function shown(html: string): string {
  const address = /src="([^"]*)"/.exec(html)?.[1]?.replaceAll('&amp;', '&') ?? ''
  const { protocol, pathname, search, hash } = new URL(address)
  expect([protocol, hash]).toEqual(['data:', ''])
  expect(pathname.startsWith('image/svg+xml,')).toBe(true)
  return decodeURIComponent((pathname + search).slice('image/svg+xml,'.length))
}

test('a picture asked for before others stands in the page, drawn as it was', () => {
  const html = placed(page('width="9" fetchpriority="high"'))
  expect(shown(html)).toBe(SVG.replace(/\s+/g, ' '))
  expect(html.replace(/src="[^"]*"/, '')).toBe(
    page('width="9" fetchpriority="high"').replace(/src="[^"]*"/, ''),
  )
})

test.each([
  ['one that may wait', page('loading="lazy"')],
  ['one that is not there', page('fetchpriority="high"').replace('garden', 'lost')],
  ['one that stands in it already', placed(page('fetchpriority="high"'))],
])('%s is left as it is', (_, html) => {
  expect(placed(html)).toBe(html)
})
