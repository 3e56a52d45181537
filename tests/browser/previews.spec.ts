// What others show beside a link to a page: the Open Graph protocol (ogp.me) names four properties that every page
// must have, title, type, image and url, and wants an `image:alt` with an image.
import { expect, test } from '@playwright/test'
import { pages } from './site.ts'

/** Width and height as a PNG's header has them: ISO/IEC 15948, 5.2 and 11.2.1. */
function sizeOf(png: Buffer): { width: number; height: number } {
  expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  expect(png.toString('latin1', 12, 16)).toBe('IHDR')
  return { width: png.readUInt32BE(16), height: png.readUInt32BE(20) }
}

test('every page names a picture of its own, which is there, and says what it shows', async ({
  page,
  request,
}) => {
  await page.goto('/nowhere/')
  const pictures = new Map<string, string>()
  for (const address of pages) {
    const html = await (await request.get(address)).text()
    const told = await page.evaluate((text) => {
      const read = new DOMParser().parseFromString(text, 'text/html')
      const metas = [...read.querySelectorAll<HTMLMetaElement>('meta[property^="og:"]')]
      return Object.fromEntries(metas.map((meta) => [meta.getAttribute('property') ?? '', meta.content]))
    }, html)
    const image = new URL(told['og:image'] ?? '')
    const png = await (await request.get(image.pathname)).body()
    expect(sizeOf(png), address).toEqual({ width: 1200, height: 630 })
    expect([told['og:image:width'], told['og:image:height']], address).toEqual(['1200', '630'])
    expect(told['og:type'], address).toBe('website')
    // Whoever asks has no page to begin from.
    expect(image.protocol, address).toMatch(/^https?:$/)
    if (address === '/nowhere/') continue
    expect(new URL(told['og:url'] ?? '').pathname).toBe(address)
    const title = address === '/' ? 'How pop-up paper works' : (told['og:title'] ?? 'no title')
    expect(told['og:image:alt'], address).toContain(`: ${title}. `)
    pictures.set(address, png.toString('base64'))
  }
  expect(new Set(pictures.values()).size).toBe(pages.length - 1)
})

test('no reader’s device keeps these pictures', async ({ request }) => {
  const kept = Object.keys((await (await request.get('/kept.json')).json()) as Record<string, string>)
  expect(kept).toContain('./icon-512.png')
  expect(kept.filter((path) => path.includes('preview'))).toEqual([])
})
