import { gzipSync } from 'node:zlib'
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { objections } from './axe.ts'
import type { Look } from './site.ts'
import { chapterPages, desk, firstChapterPages, pages, phone, remember, unfold, visit } from './site.ts'

/** Bytes of script, gzipped, that a chapter may load on a desk before anything is moved or pressed. */
const BEFORE_INPUT = 30_000

/**
 * The same until the first frame of the first drag is painted, d3 included: of a hand that goes straight from its first
 * move to the drag. All that has come by then counts, whatever asked for it. What is beside the figures is asked for when
 * that frame is painted; a hand that comes to it before, or does nothing for a second and a half, gets it sooner.
 */
const FIRST_DRAG = 70_000

// One load serves all of it: most of the time goes into loading. The steps of a card are there once the address asks for one.
for (const address of [...pages, '/steps/?from=owl'])
  test(`${address} says nothing to the console, asks no other host, stays where it is while it wakes, never scrolls sideways, says what it is, offers to skip to it, and axe has nothing against it`, async ({
    page,
    baseURL,
  }) => {
    // Axe reads every element of a long page, several times over.
    test.slow()
    const said: string[] = []
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type())) said.push(message.text())
    })
    page.on('pageerror', (error) => said.push(error.message))
    page.on('request', (request) => {
      const url = new URL(request.url())
      if (/^https?:$/.test(url.protocol) && url.origin !== baseURL) said.push(`asks ${url.origin}`)
    })
    page.on('response', (response) => {
      const path = new URL(response.url()).pathname
      if (response.status() >= 400 && path !== '/nowhere/') said.push(`${response.status()} ${path}`)
    })
    await page.setViewportSize(desk)
    await watchShifts(page)
    await visit(page, address)
    // The browser itself notes that the page which leads nowhere is answered with 404, and the test's own block what the
    // page asks for once it has time.
    expect(
      said.filter(
        (text) =>
          !text.includes('blocked by Playwright') && (address !== '/nowhere/' || !text.includes('404')),
      ),
    ).toEqual([])
    if (chapterPages.includes(address)) await expectStill(page)
    await unfold(page)
    for (const width of [320, 390, 1280]) {
      await page.setViewportSize({ width, height: 800 })
      const wide = await page.evaluate(
        () =>
          new Promise<number>((done) =>
            requestAnimationFrame(() => done(document.documentElement.scrollWidth)),
          ),
      )
      expect(wide, `${width} px wide`).toBeLessThanOrEqual(width)
    }
    await expect(page.locator('h1')).toHaveCount(1)
    expect(await page.title()).toMatch(/Hingebook/)
    expect((await page.locator('meta[name=description]').getAttribute('content'))?.length).toBeGreaterThan(20)
    await expect(page.locator('html')).toHaveAttribute('lang', 'en')
    await page.keyboard.press('Tab')
    const skip = page.getByRole('link', { name: 'Skip to the page' })
    await expect(skip).toBeFocused()
    await expect(skip).toBeInViewport()
    await page.keyboard.press('Enter')
    await expect(page.locator('main')).toBeFocused()
    // A colour that is half way to the other theme is neither's.
    await page.emulateMedia({ reducedMotion: 'reduce' })
    expect(await objections(page), 'on a desk by day').toBe('')
    // What a theme does to a colour it does at every width (tests/site/contrast.test.ts). Chapters are made of the same
    // cells: every other one is looked at by night, and those between in all other looks (axe.spec.ts).
    if (chapterPages.includes(address) && firstChapterPages.indexOf(address) % 2 !== 1) return
    await page.setViewportSize(phone)
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await objections(page), 'on a phone by night').toBe('')
  })

const watchShifts = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const moved: number[] = []
    Object.assign(globalThis, { moved })
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) moved.push((entry as unknown as { value: number }).value)
    }).observe({ type: 'layout-shift', buffered: true })
  })

/** Core Web Vitals call a shift of 0.1 good; we ask for a tenth of that. */
async function expectStill(page: Page): Promise<void> {
  const moved = await page.evaluate(() => (globalThis as unknown as { moved: number[] }).moved)
  expect(moved.reduce((sum, value) => sum + value, 0)).toBeLessThan(0.01)
}

test('every page has a title of its own; every link leads somewhere, and every place that is linked to is there', async ({
  page,
  request,
}) => {
  const titles = new Set<string>()
  const asked = new Map<string, number>()
  const ids = new Map<string, readonly string[]>()
  const placed: { readonly from: string; readonly url: URL }[] = []
  await page.goto('/nowhere/')
  for (const address of pages) {
    // Asked for and read in the browser: what comes over to the test is little.
    const found = await page.evaluate(async (at) => {
      const text = await (await fetch(at)).text()
      const read = new DOMParser().parseFromString(text, 'text/html')
      const hrefs = [...read.querySelectorAll('a[href]')].map((a) => a.getAttribute('href') ?? '')
      return {
        title: read.title,
        links: hrefs.map((href) => new URL(href, new URL(at, location.href)).href),
        ids: [...read.querySelectorAll('[id]')].map(({ id }) => id),
      }
    }, address)
    titles.add(found.title)
    ids.set(address, found.ids)
    for (const link of found.links) {
      const url = new URL(link)
      // What has an equals sign is the state of a bench.
      if (url.hash !== '' && !url.hash.includes('=')) placed.push({ from: address, url: new URL(link) })
      url.hash = ''
      if (!asked.has(url.href)) asked.set(url.href, (await request.get(url.href)).status())
    }
  }
  const lost = placed.filter(
    ({ url }) => ids.get(url.pathname)?.includes(decodeURIComponent(url.hash.slice(1))) === false,
  )
  expect(lost.map(({ from, url }) => `${from}: ${url.pathname}${url.hash}`)).toEqual([])
  expect(placed.filter(({ url }) => ids.has(url.pathname)).length).toBeGreaterThan(150)
  expect(titles.size).toBe(pages.length)
  expect([...asked].filter(([url, status]) => status !== 200 && !url.endsWith('/nowhere/'))).toEqual([])
  expect(asked.size).toBeGreaterThan(pages.length)
})

test('whatever has focus shows it', async ({ page }) => {
  await visit(page, firstChapterPages[0] ?? '/')
  const unseen: string[] = []
  let last = ''
  for (let k = 0; k < 120; k++) {
    await page.keyboard.press('Tab')
    const seen = await page.evaluate(() => {
      const element = document.activeElement
      if (!element || element === document.body) return null
      const parts = [element, ...(element.parentElement ? [element.parentElement] : []), ...element.children]
      const shown = parts.some((part) => {
        const style = getComputedStyle(part)
        return (
          (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2) ||
          style.boxShadow !== 'none'
        )
      })
      return { html: element.outerHTML.slice(0, 120), shown }
    })
    if (!seen) break
    if (!seen.shown) unseen.push(seen.html)
    last = seen.html
  }
  expect(unseen).toEqual([])
  expect(last).not.toBe('')
})

test('a chapter spends nothing on pictures far below, and prints them', async ({ page }) => {
  await page.goto('/chapters/tents-and-floating-layers/')
  const pictures = page.locator(':is(.step-figure, .slip-picture) svg > *:first-child')
  const drawn = () =>
    pictures.evaluateAll((all) => all.map((one) => one.checkVisibility({ contentVisibilityAuto: true })))
  expect((await drawn()).filter(Boolean)).toEqual([])
  await pictures.first().scrollIntoViewIfNeeded()
  await expect.poll(async () => (await drawn())[0]).toBe(true)
  await page.emulateMedia({ media: 'print' })
  await expect.poll(async () => (await drawn()).every(Boolean)).toBe(true)
  // What is pressed to get a template is of no use on paper (common practice, no source).
  for (const ways of await page.locator('.templates').all()) await expect(ways).toBeHidden()
})

test('the picture on top of the home page comes with it, and those of the path when one comes near', async ({
  page,
}) => {
  const asked: string[] = []
  page.on('request', (request) => asked.push(new URL(request.url()).pathname))
  await page.setViewportSize(phone)
  await page.goto('/', { waitUntil: 'load' })
  expect(asked.filter((path) => path.endsWith('.css'))).toEqual([])
  const pictures = () => asked.filter((path) => path.startsWith('/pictures/'))
  expect(pictures()).not.toContain('/pictures/garden.svg')
  expect(pictures().length).toBeLessThanOrEqual(2)
  const top = page.locator('.swing-stage img')
  expect(await top.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBeGreaterThan(0)
  await page.locator('.stop-figure').last().scrollIntoViewIfNeeded()
  await expect.poll(() => pictures().length).toBeGreaterThan(2)
})

// All chapters share one bench; they differ by what their own page says.
for (const address of chapterPages.filter((_, k) => k % 3 === 0)) {
  test(`${address} loads at most ${BEFORE_INPUT / 1000} kB of script, gzipped, before any input, and ${FIRST_DRAG / 1000} kB for the first drag`, async ({
    page,
  }) => {
    const scripts = new Map<string, number>()
    page.on('response', async (response) => {
      if (response.request().resourceType() !== 'script') return
      // What a worker asks for cannot be read here, and comes after the frame.
      const body = await response.body().catch(() => null)
      if (body) scripts.set(new URL(response.url()).pathname, gzipSync(body).length)
    })
    const expectAtMost = async (budget: number, wanted: (name: string) => boolean) => {
      const inline = await page.evaluate(() =>
        [...document.querySelectorAll('script:not([src], [type="application/json"])')]
          .map((script) => script.textContent ?? '')
          .join('\n'),
      )
      const sizes = [...scripts].filter(([name]) => wanted(name)).map(([name, size]) => ({ name, size }))
      sizes.push({ name: 'inline', size: gzipSync(inline).length })
      sizes.sort((a, b) => b.size - a.size)
      const total = sizes.reduce((sum, { size }) => sum + size, 0)
      expect(
        total,
        `${total}\n${sizes.map(({ name, size }) => `${size} ${name}`).join('\n')}`,
      ).toBeLessThanOrEqual(budget)
    }
    await page.setViewportSize(desk)
    await page.goto(address, { waitUntil: 'networkidle' })
    await expectAtMost(BEFORE_INPUT, () => true)
    await page.mouse.move(3, 3)
    await page.mouse.move(4, 4)
    await page.locator('.bench[data-awake="true"]').first().waitFor()
    // A drag that changes the design asks for most: on the flat sheet.
    const box = await page.locator('.stage-sheet .grip:not([data-shape="arrow"])').first().boundingBox()
    if (!box) throw new Error('the sheet has nothing to drag')
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.evaluate(
      () =>
        new Promise<void>((held) =>
          requestAnimationFrame(() =>
            setTimeout(() => {
              const sheet = document.querySelector('.stage-sheet')
              const painted = new Promise<number>((done) => {
                const watch = new MutationObserver(() => {
                  watch.disconnect()
                  requestAnimationFrame(() => done(performance.now()))
                })
                if (sheet) watch.observe(sheet, { subtree: true, attributes: true, childList: true })
              })
              Object.assign(globalThis, { painted })
              held()
            }),
          ),
        ),
    )
    await page.mouse.move(x + 6, y + 4)
    const before = await page.evaluate(async () => {
      const painted = await (globalThis as unknown as { painted: Promise<number> }).painted
      return performance
        .getEntriesByType('resource')
        .filter(({ startTime }) => startTime < painted)
        .map(({ name }) => new URL(name).pathname)
    })
    await page.waitForLoadState('networkidle')
    const known = before.filter((name) => name.endsWith('.js'))
    expect(known.length).toBeGreaterThan(1)
    expect(known.filter((name) => !scripts.has(name))).toEqual([])
    await expectAtMost(FIRST_DRAG, (name) => before.includes(name))
    await page.mouse.up()
  })
}

for (const address of firstChapterPages)
  test(`${address} stays where it is while it wakes, on a phone`, async ({ page }) => {
    await page.setViewportSize(phone)
    await watchShifts(page)
    await visit(page, address)
    await expectStill(page)
  })

test.describe('with script turned off', () => {
  test.use({ javaScriptEnabled: false })

  for (const address of firstChapterPages) {
    test(`${address} can be read, unfolded and printed`, async ({ page, request }) => {
      await page.goto(address)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      for (const name of [
        'Try it',
        'Predict',
        'Why',
        'Make it',
        'Measure yours',
        'Challenge',
        'When it goes wrong',
        'For teachers',
      ])
        await expect(page.getByRole('heading', { level: 2, name, exact: true })).toBeVisible()
      await expect(page.locator('[data-cell="try-it"] svg.drawing').first()).toBeVisible()
      await expect(page.locator('[data-cell="make-it"] .step svg.drawing').first()).toBeVisible()
      // Switches that could do nothing are not shown.
      await expect(page.getByRole('button', { name: 'Projector' })).toBeHidden()
      // A guess shows what there is to say about it.
      const guess = page.locator('.guess').first()
      await expect(guess.locator('.guess-says')).toBeHidden()
      await guess.locator('summary').click()
      await expect(guess.locator('.guess-says')).toBeVisible()
      // The maths unfolds.
      await page.locator('.formula summary').first().click()
      await expect(page.locator('.formula math').first()).toBeVisible()
      // The template is there without script.
      for (const paper of ['A4', 'US Letter']) {
        const href = await page
          .locator('[data-cell="make-it"]')
          .getByRole('link', { name: paper })
          .first()
          .evaluate((link: HTMLAnchorElement) => link.href)
        const answer = await request.get(href)
        expect(answer.status()).toBe(200)
        expect(answer.headers()['content-type']).toContain('application/pdf')
        expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-')
      }
    })
  }
})

test.describe('predict', () => {
  test('an answer is hidden until a guess is made, by mouse and by keyboard', async ({ page }) => {
    await visit(page, firstChapterPages[0] ?? '/')
    const [first, second] = [page.locator('.guess').nth(0), page.locator('.guess').nth(1)]
    const answer = page.locator('.answer')
    await expect(answer).toBeHidden()
    await first.locator('summary').click()
    await expect(first.locator('.guess-says')).toBeVisible()
    await expect(answer).toBeVisible()
    await second.locator('summary').focus()
    await page.keyboard.press('Enter')
    await expect(second.locator('.guess-says')).toBeVisible()
    await expect(first.locator('.guess-says')).toBeHidden()
  })
})

test('a word of the trade says what it means when pressed, and Escape puts it away', async ({ page }) => {
  await visit(page, firstChapterPages[0] ?? '/')
  const term = page.locator('button.term').first()
  const says = page.locator(`#${await term.getAttribute('popovertarget')}`)
  await expect(says).toBeHidden()
  await term.focus()
  await page.keyboard.press('Enter')
  await expect(says).toBeVisible()
  await expect(says).toBeInViewport({ ratio: 1 })
  await page.keyboard.press('Escape')
  await expect(says).toBeHidden()
  await expect(term).toBeFocused()
})

test.describe('the switches', () => {
  const press = async (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

  for (const name of ['Projector', 'Reading', 'Night']) {
    test(`${name} is pressed once and remembered on every page`, async ({ page }) => {
      await page.goto('/')
      const button = page.getByRole('button', { name, exact: true })
      await expect(button).toHaveAttribute('aria-pressed', 'false')
      await press(page, name)
      await expect(button).toHaveAttribute('aria-pressed', 'true')
      await page.goto('/chapters/')
      await expect(button).toHaveAttribute('aria-pressed', 'true')
      await press(page, name)
      await page.reload()
      await expect(button).toHaveAttribute('aria-pressed', 'false')
    })
  }

  test('Night follows the device until it is pressed', async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'dark' })
    await page.goto('/')
    await expect(page.getByRole('button', { name: 'Night' })).toHaveAttribute('aria-pressed', 'true')
    await press(page, 'Night')
    await page.reload()
    await expect(page.getByRole('button', { name: 'Night' })).toHaveAttribute('aria-pressed', 'false')
  })

  for (const [look, scheme] of [
    ['night', 'light'],
    ['day', 'dark'],
  ] as const) {
    test(`the first frame is already ${look} on a ${scheme} device`, async ({ page }) => {
      await page.emulateMedia({ colorScheme: scheme })
      await remember(page, look as Look)
      await page.addInitScript(() => {
        const seen: string[] = []
        Object.assign(globalThis, { seen })
        const watch = () => {
          if (document.body) seen.push(getComputedStyle(document.documentElement).backgroundColor)
          if (seen.length < 30) requestAnimationFrame(watch)
        }
        requestAnimationFrame(watch)
      })
      await page.goto('/')
      // A page may be loaded before its first frame.
      const frames = () => page.evaluate(() => (globalThis as unknown as { seen: string[] }).seen)
      await expect.poll(async () => (await frames()).length).toBe(30)
      const seen = await frames()
      expect(new Set(seen).size).toBe(1)
      expect(seen[0]).toBe(look === 'night' ? 'rgb(20, 23, 43)' : 'rgb(253, 253, 250)')
    })
  }

  test('Reading parts letters, words and lines by what WCAG 2.2, 1.4.12 names', async ({ page }) => {
    await remember(page, 'reading')
    await visit(page, firstChapterPages[0] ?? '/')
    const spaces = await page.locator('[data-cell="why"] p').evaluateAll((found) =>
      found.map((element) => {
        const style = getComputedStyle(element)
        const size = Number.parseFloat(style.fontSize)
        const em = (value: string) => Number.parseFloat(value) / size
        return { letter: em(style.letterSpacing), word: em(style.wordSpacing), line: em(style.lineHeight) }
      }),
    )
    expect(spaces.length).toBeGreaterThan(1)
    for (const { letter, word, line } of spaces) {
      expect(letter).toBeGreaterThanOrEqual(0.12 - 1e-6)
      expect(word).toBeGreaterThanOrEqual(0.16 - 1e-6)
      expect(line).toBeGreaterThanOrEqual(1.5)
    }
  })

  test('Projector makes what matters 1/20 of the height', async ({ page }) => {
    await page.setViewportSize(desk)
    await remember(page, 'projector')
    await visit(page, firstChapterPages[0] ?? '/')
    for (const viewport of [desk, { width: 1920, height: 1080 }]) {
      await page.setViewportSize(viewport)
      const small = await page
        .locator(
          'h1, .lead, .cell-name, .cell p, .cell li, .cell summary, .cell .button, .cell dt, .cell dd, .cell label, .cell h3',
        )
        .evaluateAll((found) =>
          found
            .filter((element) => element.checkVisibility() && (element.textContent ?? '').trim() !== '')
            .map((element) => ({
              text: (element.textContent ?? '').trim().slice(0, 40),
              size: Number.parseFloat(getComputedStyle(element).fontSize),
            }))
            .filter(({ size }) => size < innerHeight / 20 - 0.1),
        )
      expect(small, `${viewport.width} × ${viewport.height}`).toEqual([])
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true)
    }
  })
})
