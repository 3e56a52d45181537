// The built site as it is, in a folder of another host, and in one of a disk: nothing of it is built anew.
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import type { Elsewhere } from './elsewhere.ts'
import { servedBelow } from './elsewhere.ts'
import { benchAwake, open, visit } from './site.ts'

let site: Elsewhere

test.beforeAll(async () => {
  site = await servedBelow('/some/where/')
})

test.afterAll(() => site.stop())

/** What a page says went wrong. */
function troubles(page: Page): readonly string[] {
  const said: string[] = []
  page.on('pageerror', (error) => said.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') said.push(message.text())
  })
  page.on('response', (response) => {
    if (response.status() >= 400) said.push(`${response.status()} ${response.url()}`)
  })
  return said
}

test('below a path: from the first page to a chapter, a drag, its template, and to the planning page and back', async ({
  page,
}) => {
  const said = troubles(page)
  await open(page, site.home)
  await page.getByRole('link', { name: 'One slit, two V-folds' }).first().click()
  await page.waitForURL(`${site.home}chapters/one-slit-two-v-folds/`)
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
  await benchAwake(page)
  const grip = page.getByRole('slider', { name: 'End of the slit' })
  await grip.focus()
  for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowRight')
  await expect(grip).toHaveAttribute('aria-valuetext', 'slit 47.0 mm, lean 0.0 mm')
  await page.getByRole('button', { name: 'Print the template' }).first().click()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the template' }).click(),
  ])
  expect(
    readFileSync(await file.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Take it to my dummy' }).click()
  await expect(page).toHaveURL(`${site.home}dummy/`)
  await page.locator('.dummy[data-awake="true"]').waitFor()
  await page.getByRole('link', { name: 'Back to where it was taken from' }).click()
  await expect(page).toHaveURL(`${site.home}chapters/one-slit-two-v-folds/#beak.cut=47&jaw.cut=47`)
  expect(said).toEqual([])
  expect(site.beside).toEqual([])
})

test('below a path: search, steps, a card of the garden, the lesson and the finder of faults', async ({
  page,
}) => {
  const said = troubles(page)
  await open(page, `${site.home}search/?for=gape`)
  await page.locator('main').getByRole('link', { name: 'gape', exact: true }).click()
  await expect(page).toHaveURL(`${site.home}words/#gape`)
  await visit(page, `${site.home}garden/`)
  await page.getByRole('link', { name: 'Take it: Owl', exact: true }).click()
  await expect(page.getByLabel('Name of this dummy')).toHaveValue('Owl')
  await page.getByRole('link', { name: 'Back to where it was taken from' }).click()
  await page.getByRole('link', { name: 'Owl, step by step', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Owl, step by step')
  for (const way of ['choose/', 'class/', 'fault/', 'plans/heron/', 'steps/', 'formulas/'])
    await visit(page, site.home + way)
  expect(said).toEqual([])
  expect(site.beside).toEqual([])
})

const DIST = fileURLToPath(new URL('../../dist/', import.meta.url))

test('from a folder of a disk it is read: pictures and styles show, links lead on, and what is missing is said', async ({
  page,
}) => {
  await page.goto(pathToFileURL(`${DIST}index.html`).href)
  await expect(page.getByRole('note')).toContainText('opened this page from a folder')
  await page.getByRole('link', { name: 'Layers', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Layers')
  expect(page.url()).toMatch(/\/chapters\/layers\/index\.html$/)
  await expect(page.locator('.stage-view svg').first()).toBeVisible()
  const shown = await page.evaluate(async () => {
    const pictures = [...document.images]
    for (const picture of pictures) picture.loading = 'eager'
    await Promise.all(pictures.map((picture) => picture.decode()))
    return {
      pictures: pictures.length,
      styles: [...document.styleSheets].length,
      ground: getComputedStyle(document.body).margin,
    }
  })
  expect(shown.pictures).toBeGreaterThan(0)
  expect(shown.ground).toBe('0px')
  // Every link of the page is a file that is there.
  const links = await page.evaluate(() =>
    [...document.links].map(({ href }) => href).filter((href) => href.startsWith('file:')),
  )
  expect(links.length).toBeGreaterThan(20)
  const files = new Set(
    readdirSync(DIST, { recursive: true }).map((name) => pathToFileURL(DIST + String(name)).href),
  )
  expect(links.map((link) => link.replace(/[?#].*$/, '')).filter((link) => !files.has(link))).toEqual([])
})
