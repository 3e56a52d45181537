// Ways to and from the planning page: the garden's cards, the plans, and files of other kinds.
import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { validateBytes } from 'gltf-validator'
import { SaxesParser } from 'saxes'
import sharp from 'sharp'
import { open } from './site.ts'

const table = (page: import('@playwright/test').Page) => page.locator('.dummy[data-awake="true"]')

test('a card of the garden is taken to the planning page, and there is a way back', async ({ page }) => {
  await open(page, '/garden/')
  await page.getByRole('link', { name: 'Take it: Owl', exact: true }).click()
  await expect(table(page)).toBeVisible()
  await expect(page.getByLabel('Name of this dummy')).toHaveValue('Owl')
  // The link is used up: what is done now belongs to the dummy.
  await expect(page).toHaveURL(/\/dummy\/$/)
  await expect(page.getByRole('tree').getByText('Left wing')).toBeVisible()
  await page.getByRole('link', { name: 'Back to where it was taken from' }).click()
  await expect(page).toHaveURL(/\/garden\/$/)
})

test('what cannot be taken is told, and the table stays as it was', async ({ page }) => {
  await open(page, '/dummy/?from=nothing-of-ours')
  await expect(page.getByRole('alert')).toContainText('could not be taken from the garden')
  await open(page, '/dummy/?from=../../secret')
  await expect(page.getByRole('alert')).toContainText('names no dummy of the garden')
})

test('cards are chosen by what hands can do, without any script', async ({ browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false })
  const page = await context.newPage()
  await page.goto('/garden/')
  const titles = () => page.locator('.shown:visible h3').allTextContents()
  expect(await titles()).toContain('Moth')
  await page.getByLabel('cut only').check()
  expect(await titles()).not.toContain('Moth')
  expect(await titles()).toContain('Reeds')
  await page.getByLabel('easy').check()
  expect(await titles()).toContain('Heron')
  expect(await titles()).not.toContain('Reeds')
  await context.close()
})

test('a file of the garden is the file as it was written, and each sheet is there', async ({ page }) => {
  const written = readFileSync(new URL('../../content/dummies/reeds.hingebook.json', import.meta.url), 'utf8')
  const got = await page.request.get('/dummies/reeds.hingebook.json')
  expect(await got.text()).toBe(written)
  await page.goto('/garden/')
  const sheets = await page
    .locator('.shown a[href*="/sheets/"]')
    .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).href))
  expect(sheets.length).toBeGreaterThan(16)
  for (const sheet of sheets) expect((await page.request.head(sheet)).status(), sheet).toBe(200)
})

test('a plan opens its start on the planning page', async ({ page }) => {
  await open(page, '/plans/class-card/')
  await page.getByRole('link', { name: 'Open the start' }).click()
  await expect(table(page)).toBeVisible()
  await expect(page.getByLabel('Name of this dummy')).toHaveValue('Class card')
  await page.getByRole('button', { name: 'Change the card' }).click()
  await page.getByLabel('Pages').selectOption('A6, gutter upright')
  await expect(page.getByRole('heading', { name: '2 things to mend' }).first()).toBeVisible()
  await page.getByRole('button', { name: 'See and mend' }).click()
  await page.getByRole('button', { name: /^Mend all/ }).click({ timeout: 60_000 })
  await expect(page.getByRole('heading', { name: 'It works as paper' })).toBeVisible({ timeout: 30_000 })
})

test('a dummy leaves as a picture, a moving one, a flip book and a model, each a file that others read', async ({
  page,
}) => {
  test.setTimeout(240_000)
  await open(page, '/dummy/?from=heron-in-the-reeds')
  await expect(table(page)).toBeVisible()
  await page.getByRole('button', { name: 'Save, open, send' }).click()
  const file = async (name: string): Promise<Buffer<ArrayBuffer>> => {
    const coming = page.waitForEvent('download', { timeout: 120_000 })
    await page.getByRole('button', { name }).click()
    const download = await coming
    expect(download.suggestedFilename()).toMatch(/^heron-in-the-reeds/)
    return Buffer.from(readFileSync(await download.path()))
  }
  const svg = await file('Picture as SVG, to edit')
  const png = await file('Picture as PNG, to show')
  expect(String(svg)).not.toMatch(/<style|var\(|color-mix|class=|https?:(?!\/\/www\.w3\.org)/)
  new SaxesParser({ xmlns: true }).write(String(svg)).close()
  // The plain picture, drawn by librsvg, is what the browser painted.
  const small = { width: 300, height: 200, fit: 'fill' } as const
  const [a, b] = await Promise.all(
    [svg, png].map((bytes) => sharp(bytes).resize(small).removeAlpha().raw().toBuffer()),
  )
  const pixels = [...(a ?? [])]
  const off = pixels.reduce((sum, value, k) => sum + Math.abs(value - (b?.[k] ?? 0)), 0) / pixels.length
  expect(off).toBeLessThan(6)
  expect(await sharp(png).metadata()).toMatchObject({ width: 2400, height: 1600 })
  const gif = await sharp(await file('Moving picture as GIF'), { pages: -1 }).metadata()
  expect(gif).toMatchObject({ format: 'gif', width: 480, pageHeight: 320, pages: 46, loop: 0 })
  const pdf = await file('Flip book to print on A4 paper')
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
  const report = await validateBytes(await file('Model in 3D as glTF, opening and shutting'))
  expect(report.issues).toMatchObject({ numErrors: 0, numWarnings: 0 })
  // The pieces for a cutting machine: one sheet as it is, several in one ZIP file (PKWARE, APPNOTE 4.3.6: PK, 3, 4).
  await page.getByText('For a cutting machine').click()
  expect(String(await file('Pieces for a cutting machine as DXF'))).toMatch(/^0\nSECTION\n/)
  expect(String(await file('Pieces for a cutting machine as SVG'))).toMatch(/^<svg [^>]*width="210mm"/)
  const copies = page.getByRole('textbox', { name: 'Copies' })
  await copies.fill('0')
  await expect(page.getByRole('alert')).toHaveText('A whole number of copies from 1 to 100.')
  await copies.fill('3')
  expect([...(await file('Pieces for a cutting machine as DXF')).subarray(0, 4)]).toEqual([0x50, 0x4b, 3, 4])
})
