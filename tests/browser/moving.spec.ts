// The painter paints beside the page what moves; held against the same marks as elements of the page, drawn by the
// browser's own SVG (W3C, SVG 2), one by which it is kept from coming.
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import sharp from 'sharp'
import { desk, openFile, remember } from './site.ts'

/** A part of the page as a picture, when it has come to rest: the last frame is painted a little after the last move. */
async function settled(part: Locator): Promise<Buffer> {
  let before = await part.screenshot()
  for (;;) {
    const now = await part.screenshot()
    if (now.equals(before)) return now
    before = now
  }
}

/** The standing card while its edge is held on the way to shut, as a picture. */
async function held(page: Page, look: 'day' | 'night', withBrush: boolean): Promise<Buffer> {
  if (!withBrush) await page.route(/\/brush\.[^/]*\.js$/, (route) => route.abort())
  await page.setViewportSize(desk)
  await remember(page, look)
  const asked = page.waitForRequest(/\/brush\.[^/]*\.js$/)
  await page.goto('/garden/')
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
  await page.locator('.bench[data-awake="true"]').first().waitFor()
  const handle = page.getByRole('slider', { name: 'Opening, by the edge of the page', exact: true })
  await handle.scrollIntoViewIfNeeded()
  await (await asked).response().catch(() => null)
  await page.waitForLoadState('networkidle')
  const box = await handle.boundingBox()
  if (!box) throw new Error('the edge of the page is not on the screen')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - 60, y - 30)
  await page.mouse.move(x - 120, y - 70)
  await expect(page.locator('.stage-view > .canvas:visible')).toHaveCount(withBrush ? 1 : 0)
  await expect(page.locator('.stage-view .drawing > .card')).toHaveCSS('opacity', withBrush ? '0' : '1')
  const picture = await settled(page.locator('.stage-view'))
  await page.mouse.up()
  // At rest the elements are back, and what stands there can be chosen and read again.
  await expect(page.locator('.stage-view .drawing > .card')).toHaveCSS('opacity', '1')
  await expect(page.locator('.stage-view > .canvas:visible')).toHaveCount(0)
  return picture
}

/** The share of pixels that differ by more than a sixth of the way from black to white. */
const differing = (page: Page, one: Buffer, other: Buffer): Promise<number> =>
  page.evaluate(
    async (pictures) => {
      const [a, b] = await Promise.all(
        pictures.map(async (picture) => {
          const bitmap = await createImageBitmap(
            await (await fetch(`data:image/png;base64,${picture}`)).blob(),
          )
          const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d')
          context?.drawImage(bitmap, 0, 0)
          return context?.getImageData(0, 0, bitmap.width, bitmap.height).data ?? new Uint8ClampedArray()
        }),
      )
      if (!a || a.length !== b?.length) return 1
      let count = 0
      for (let k = 0; k < a.length; k += 4)
        if ([0, 1, 2].some((c) => Math.abs((a[k + c] ?? 0) - (b[k + c] ?? 0)) > 42)) count++
      return (4 * count) / a.length
    },
    [one.toString('base64'), other.toString('base64')],
  )

for (const look of ['day', 'night'] as const)
  test(`by ${look} a card in motion looks as its elements would`, async ({ page, context }) => {
    const painted = await held(page, look, true)
    const other = await context.newPage()
    const drawn = await held(other, look, false)
    expect(await differing(other, painted, drawn)).toBeLessThan(0.012)
  })

test('the garden of the first page is painted while it is dragged, where its picture stands, and drawn at rest', async ({
  page,
}) => {
  await page.setViewportSize(desk)
  await page.goto('/')
  const asked = page.waitForRequest(/\/brush\.[^/]*\.js$/)
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
  const stage = page.locator('.swing-stage')
  await stage.locator('svg').waitFor()
  const box = await stage.boundingBox()
  if (!box) throw new Error('the garden is not on the screen')
  const [x, y] = [box.x + 0.7 * box.width, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 10, y)
  await asked
  // It comes to rest by itself, and the painter may not have come before that.
  const canvas = stage.locator('.canvas')
  let moves = 0
  await expect(async () => {
    moves++
    await page.mouse.move(x + 10 + (moves % 20), y)
    const [painted, drawn] = await stage.evaluate((element) =>
      ['canvas', 'svg'].map((name) => JSON.stringify(element.querySelector(name)?.getBoundingClientRect())),
    )
    expect(painted).toBe(drawn)
  }).toPass()
  await page.mouse.up()
  await expect(canvas).toBeHidden()
})

test('night that comes while the hand rests is painted when it takes hold again', async ({
  page,
  context,
}) => {
  const atNight = await held(page, 'night', true)
  const other = await context.newPage()
  await held(other, 'day', true)
  await other.getByRole('button', { name: 'Night', exact: true }).click()
  const handle = other.getByRole('slider', { name: 'Opening, by the edge of the page', exact: true })
  await handle.scrollIntoViewIfNeeded()
  const box = await handle.boundingBox()
  if (!box) throw new Error('the edge of the page is not on the screen')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await other.mouse.move(x, y)
  await other.mouse.down()
  await other.mouse.move(x - 1, y)
  await other.mouse.move(x, y)
  await expect(other.locator('.stage-view > .canvas:visible')).toHaveCount(1)
  expect(await differing(page, await settled(other.locator('.stage-view')), atNight)).toBeLessThan(0.02)
  await other.mouse.up()
})

/** The share of a picture that is this red, by a reader of pictures of its own. */
async function shareOfRed(picture: Buffer): Promise<number> {
  const { data, info } = await sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true })
  let count = 0
  for (let k = 0; k < data.length; k += info.channels) {
    const [r = 0, g = 0, b = 0] = data.subarray(k, k + 3)
    if (r > 90 && g < 0.4 * r && b < 0.4 * r) count++
  }
  return (info.channels * count) / data.length
}

test('a picture of dots that lies on a face is painted where it lies', async ({ page }) => {
  const dots = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#e01414' } })
    .png()
    .toBuffer()
  const art = {
    on: 'page/right',
    face: 'front',
    shape: [
      [15, 15],
      [95, 15],
      [95, 130],
      [15, 130],
    ],
    picture: `data:image/png;base64,${dots.toString('base64')}`,
  }
  const design = { hingebook: 1, title: 'Red', card: { width: 105, height: 148 }, mechanisms: [], art: [art] }
  await page.setViewportSize(desk)
  const asked = page.waitForRequest(/\/brush\.[^/]*\.js$/)
  await page.goto('/dummy/')
  await page.locator('.dummy[data-awake="true"]').waitFor()
  await page.getByRole('button', { name: 'Save, open, send' }).click()
  await openFile(page, 'red.hingebook.json', Buffer.from(JSON.stringify(design)))
  const stage = page.locator('.stage-view').first()
  await expect(stage.locator('.drawing image').first()).toBeAttached()
  await page.keyboard.press('Escape')
  await asked
  await page.waitForLoadState('networkidle')
  const handle = page.getByRole('slider', { name: 'Opening, by the edge of the page', exact: true })
  const box = await handle.boundingBox()
  if (!box) throw new Error('the edge of the page is not on the screen')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 10, y + 10)
  await page.mouse.move(x + 20, y + 20)
  await expect(stage.locator('.canvas')).toBeVisible()
  const painted = await shareOfRed(await settled(stage))
  await page.mouse.up()
  await expect(stage.locator('.canvas')).toBeHidden()
  const drawn = await shareOfRed(await settled(stage))
  expect(drawn).toBeGreaterThan(0.05)
  // At rest its shadows are softer, and lie on other dots.
  expect(painted / drawn).toBeGreaterThan(0.85)
  expect(painted / drawn).toBeLessThan(1.15)
})
