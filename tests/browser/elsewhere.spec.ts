// The built site as it is, in a folder of another host, and in one of a disk: nothing of it is built anew.
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import type { Elsewhere } from './elsewhere.ts'
import { servedBelow } from './elsewhere.ts'
import { benchAwake, chapterPages, firstChapterPages, open, pages, visit } from './site.ts'

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

/** Takes hold of something with the mouse, and moves it to the right, px. */
async function dragRight(page: Page, grip: Locator, by: number): Promise<void> {
  await grip.scrollIntoViewIfNeeded()
  const { x = 0, y = 0, width = 0, height = 0 } = (await grip.boundingBox()) ?? {}
  await page.mouse.move(x + width / 2, y + height / 2)
  await page.mouse.down()
  await page.mouse.move(x + width / 2 + by, y + height / 2, { steps: 6 })
  await page.mouse.up()
}

/** The file of a page in the folder: `/chapters/layers/`. */
const onDisk = (way: string): string => {
  const [, path = '', rest = ''] = /^\/([^?#]*)(.*)$/.exec(way) ?? []
  return `${pathToFileURL(`${DIST}${path}index.html`).href}${rest}`
}

test.describe('from a folder of a disk', () => {
  // There a browser refuses modules, workers and fetch, and says so to the console: HTML, 8.1.4.2 (fetch a module script:
  // CORS), 10.2.6.3 (workers: same origin); Fetch, 4.1 (a file's address is left to the browser, and each refuses).
  test('it can be read: pictures and styles show, links lead on', async ({ page }) => {
    await page.goto(onDisk('/'))
    await page.getByRole('link', { name: 'Layers', exact: true }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Layers')
    expect(page.url()).toMatch(/\/chapters\/layers\/index\.html$/)
    await expect(page.locator('.stage-view svg').first()).toBeVisible()
    // Its links name files once all of it is there.
    await page.waitForLoadState()
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
    await expect(page.locator('#offline-says')).toContainText('you cannot install the book')
  })

  test('a handle is dragged, a guess made, a task met, a template printed, and the card taken along and back', async ({
    page,
  }) => {
    const said = troubles(page)
    await open(page, onDisk('/chapters/one-slit-two-v-folds/'))
    const rise = page.locator('.reading-cell[data-reading="rise"] .reading-number')
    await expect(rise).toBeHidden()
    await page.locator('.cell-predict').getByText('Stand lower').click()
    await expect(page.locator('.answer')).toBeVisible()
    await expect(rise).toBeVisible()
    await benchAwake(page)
    const grip = page.getByRole('slider', { name: 'End of the slit' })
    await expect(grip).toHaveAttribute('aria-valuetext', 'slit 42.0 mm, lean 0.0 mm')
    await dragRight(page, grip, 40)
    await expect(grip).toHaveAttribute('aria-valuetext', /^slit (4[5-9]|5\d|6\d)\.\d mm/)
    await expect(page).toHaveURL(/index\.html#beak\.cut=\d+/)
    const challenge = page.locator('.challenge').first()
    await challenge.scrollIntoViewIfNeeded()
    await page.getByRole('textbox', { name: 'Upper apex', exact: true }).fill('128')
    await page.getByRole('textbox', { name: 'Slit', exact: true }).fill('60')
    await page.getByRole('textbox', { name: 'Slit', exact: true }).blur()
    // A longer upper half and a deeper slit: 52 sin(2 atan(60 cos 45 / 52)) sin 45 = 36.0.
    await expect(challenge).toContainText('Done. Rise is 36.0 mm at 90°.')
    await page.getByRole('button', { name: 'Print the template' }).first().click()
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the template' }).click(),
    ])
    expect(readFileSync(await file.path(), 'latin1')).toMatch(/^%PDF-/)
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Copy the link' }).first().click()
    await expect(page.locator('.bench-actions').first()).toMatchAriaSnapshot(
      '- text: It opens on this device only.',
    )
    await page.getByRole('button', { name: 'Take it to my dummy' }).first().click()
    await page.locator('.dummy[data-awake="true"]').waitFor()
    await page.getByRole('link', { name: 'Back to where it was taken from' }).click()
    await expect(page).toHaveURL(/one-slit-two-v-folds\/index\.html#.*beak\.cut=60/)
    expect(said).toEqual([])
  })

  test('by fingers too: a second chapter wakes at once, and its ready template is saved', async ({
    browser,
  }) => {
    const page = await browser.newPage({ hasTouch: true, viewport: { width: 390, height: 844 } })
    const said = troubles(page)
    await page.goto(onDisk('/chapters/layers/'))
    await page.locator('.bench[data-awake="true"]').first().waitFor()
    const grip = page.locator('.bench').first().getByRole('slider').first()
    const before = await grip.getAttribute('aria-valuetext')
    await dragRight(page, grip, 30)
    await expect(grip).not.toHaveAttribute('aria-valuetext', before ?? '')
    const opening = await page.getByRole('textbox', { name: 'Opening', exact: true }).inputValue()
    await expect(grip).toHaveAttribute('aria-valuetext', `${opening} degrees`)
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('.templates a[download]').first().click(),
    ])
    expect(readFileSync(await file.path(), 'latin1')).toMatch(/^%PDF-/)
    expect(said).toEqual([])
    await page.close()
  })

  test('a word is searched, and steps of a card of the garden opened and put on paper', async ({ page }) => {
    const said = troubles(page)
    await open(page, onDisk('/search/'))
    await page.getByRole('searchbox').fill('gape')
    await page.locator('main').getByRole('link', { name: 'gape', exact: true }).click()
    await expect(page).toHaveURL(/\/words\/index\.html#gape$/)
    await open(page, onDisk('/garden/'))
    await page.getByRole('link', { name: 'Owl, step by step', exact: true }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Owl, step by step')
    await page.getByRole('button', { name: 'Next' }).click()
    await expect(page.locator('.book-count')).toHaveText(/^Step 2 of/)
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Booklet as PDF' }).click(),
    ])
    expect(readFileSync(await file.path(), 'latin1')).toMatch(/^%PDF-/)
    expect(said).toEqual([])
  })

  test('a card is planned: workers offer and check, it is kept, and what cannot be sent from here is said', async ({
    page,
  }) => {
    const said = troubles(page)
    const awake = () => page.locator('.dummy[data-awake="true"]').waitFor()
    await open(page, onDisk('/dummy/'))
    await awake()
    await page.locator('.fold-ring').first().click()
    await page.locator('.offers .offer').filter({ hasText: 'Layer' }).first().click()
    await expect(page.locator('.dummy-margin')).toContainText('It works as paper')
    await page.getByRole('button', { name: 'Save, open, send' }).click()
    await page.getByRole('button', { name: 'Copy the link' }).click()
    await expect(page.locator('.dummy-slip')).toContainText('a link would open on this device alone')
    await page.reload()
    await awake()
    await expect(page.getByRole('treeitem').filter({ hasText: 'Layer 1' })).toBeVisible()
    await open(page, onDisk('/garden/'))
    await page.getByRole('link', { name: 'Take it: Owl', exact: true }).click()
    await expect(page.getByLabel('Name of this dummy')).toHaveValue('Owl')
    await page.getByRole('button', { name: 'Save, open, send' }).click()
    await page.getByRole('button', { name: 'Make it, step by step' }).click()
    await expect(page).toHaveURL(/\/steps\/index\.html#d=/)
    await expect(page.locator('.book-count')).toHaveText(/^Step 1 of/)
    expect(said).toEqual([])
  })

  test('a lesson: all cards open together, a fault is found, a pack for the class is made', async ({
    page,
  }) => {
    const said = troubles(page)
    await open(page, onDisk('/choose/'))
    await page.getByRole('slider', { name: 'Opening of all cards' }).focus()
    await page.keyboard.press('End')
    await expect(page.locator('.choice-figure svg').first()).toHaveAccessibleName(/170/)
    await open(page, onDisk('/fault/'))
    await page.getByRole('link', { name: 'Something sticks out' }).click()
    const row = page.locator('.trouble-row', { hasText: 'The box sticks out of the shut card.' })
    await row.getByRole('link').click()
    await expect(page.locator('#the-box-sticks-out-of-the-shut-card')).toBeInViewport()
    await open(page, onDisk('/class/'))
    const [pack] = await Promise.all([
      page.waitForEvent('download', { timeout: 30_000 }),
      page.getByRole('button', { name: 'Get the pack' }).click(),
    ])
    expect(readFileSync(await pack.path(), 'latin1')).toMatch(/^%PDF-/)
    expect(said).toEqual([])
  })

  test('where a browser gives a file of a disk no font, its letters are lent: they are as wide as elsewhere', async ({
    browser,
  }) => {
    const width = async (isGiven: boolean) => {
      const page = await browser.newPage()
      if (!isGiven) await page.route('**/*.woff2', (route) => route.abort())
      await page.goto(onDisk('/chapters/layers/'))
      const wide = () =>
        page.getByRole('heading', { level: 1 }).evaluate((heading) => {
          const words = document.createRange()
          words.selectNodeContents(heading)
          return words.getBoundingClientRect().width
        })
      const loaded = () => page.evaluate(() => [...document.fonts].some(({ status }) => status === 'loaded'))
      await expect.poll(loaded).toBe(true)
      const found = await wide()
      await page.close()
      return found
    }
    expect(await width(false)).toBe(await width(true))
  })

  test('where a file of the folder is missing, the page says which, and the folder is asked for once more', async ({
    page,
  }) => {
    await page.route('**/disk/_astro/bench.*.js', (route) => route.abort())
    await open(page, onDisk('/chapters/layers/'))
    await expect(page.getByRole('alert')).toHaveText(
      /^Something here does not work: the folder of this book has no file disk\/_astro\/bench\.[\w-]+\.js\.js\. Copy the whole folder once more\.$/,
    )
  })

  // Between them the first chapters have every cell and every figure there is. The page for lost readers is shown by hosts alone.
  const others = chapterPages.filter((way) => !firstChapterPages.includes(way))
  const ways = pages.filter((way) => way !== '/nowhere/' && !others.includes(way))
  for (const way of [...ways, '/steps/?from=owl', '/dummy/?from=moth'])
    test(`${way} wakes, down to its last island, and nothing is told to the console`, async ({ page }) => {
      const said = troubles(page)
      await visit(page, onDisk(way))
      expect(said).toEqual([])
    })
})
