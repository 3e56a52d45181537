import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'

const CHAPTERS = fileURLToPath(new URL('../../content/chapters/', import.meta.url))

/** Addresses of the chapters' pages, from the files that they are made of. */
export const chapterPages: readonly string[] = readdirSync(CHAPTERS)
  .filter((name) => name.endsWith('.mdx'))
  .map((name) => `/chapters/${name.replace(/\.mdx$/, '')}/`)

/**
 * Those of the first eight chapters. Between them they have every cell, figure, kind and state there is: what the
 * words of one more chapter cannot change is tried on these alone.
 */
export const firstChapterPages: readonly string[] = readdirSync(CHAPTERS)
  .filter((name) => Number(/^number: (\d+)$/m.exec(readFileSync(`${CHAPTERS}${name}`, 'utf8'))?.[1]) <= 8)
  .map((name) => `/chapters/${name.replace(/\.mdx$/, '')}/`)

/** Every kind of page there is. The last address leads nowhere, on purpose. */
export const pages: readonly string[] = [
  '/',
  '/chapters/',
  '/words/',
  '/formulas/',
  '/subjects/',
  '/garden/',
  '/dummy/',
  '/steps/',
  '/fault/',
  '/search/',
  '/choose/',
  '/class/',
  '/plans/',
  '/plans/heron/',
  '/plans/owl/',
  '/plans/class-card/',
  ...chapterPages,
  '/nowhere/',
]

export const desk = { width: 1280, height: 800 }

export const phone = { width: 390, height: 844 }

export type Look = 'day' | 'night' | 'projector' | 'reading'

/** Sets a look before the page is opened, as a reader's device would remember it. */
export async function remember(page: Page, look: Look): Promise<void> {
  const [name, value] = look === 'day' || look === 'night' ? ['theme', look] : [look, 'on']
  await page.addInitScript(
    ([key, kept]) => localStorage.setItem(`hingebook.${key}`, kept ?? ''),
    [name, value],
  )
}

/** Opens a page as somebody with a mouse does: the first move wakes what waits for a hand. */
export async function open(page: Page, address: string): Promise<void> {
  await page.goto(address)
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
}

/** Opens a file by the button of the planning page's slip for files, which lies open. */
export async function openFile(page: Page, name: string, content: Buffer): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open a file' }).click()
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: content })
}

/** Waits until a page's bench is awake, with what comes a little later than it: here the hand comes to that at once. */
export async function benchAwake(page: Page): Promise<void> {
  const bench = page.locator('.bench[data-awake="true"]').first()
  await bench.waitFor()
  await bench.evaluate(async (element) => {
    const later = [...element.querySelectorAll('astro-island[client="hand"][ssr]')].filter(
      (island) => !island.closest('.figure-chart'),
    )
    await Promise.all(
      later.map(
        (island) =>
          new Promise((done) => {
            island.addEventListener('astro:hydrate', done, { once: true })
            island.dispatchEvent(new Event('pointerover'))
          }),
      ),
    )
  })
}

/** Opens a chapter and waits until its bench is awake, with all that it shows unfolded and uncovered. */
export async function openBench(page: Page, address: string): Promise<void> {
  // As on a device on which the guess was made; lesson.spec.ts tries how it is before.
  const slug = /chapters\/([^/]+)/.exec(address)?.[1] ?? ''
  await page.addInitScript((key) => localStorage.setItem(key, 'shown'), `hingebook.guess.${slug}`)
  await open(page, address)
  await benchAwake(page)
  // A chapter's second bench is tried for itself.
  await page.evaluate(() => {
    for (const aside of document.querySelectorAll('.cell-make-it .bench')) aside.remove()
  })
  // All sizes and the chart, which are folded away at first.
  await page.evaluate(() => {
    for (const more of document.querySelectorAll<HTMLDetailsElement>('.fields-more')) more.open = true
    document.querySelector<HTMLInputElement>('.unfold-chart')?.click()
  })
}

/** Opens a page and waits until its islands are awake, down to the last one. */
export async function visit(page: Page, address: string): Promise<void> {
  await open(page, address)
  await page.evaluate(async () => {
    const step = innerHeight * 0.8
    for (let y = 0; y < document.documentElement.scrollHeight; y += step) {
      scrollTo(0, y)
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
    }
    scrollTo(0, 0)
  })
  await page.waitForLoadState('networkidle')
  // The chart of a bench waits until it is unfolded.
  await page.waitForFunction(
    () =>
      ![...document.querySelectorAll('astro-island[ssr]')].some(
        (island) => !island.matches('.figure-chart *') || island.firstElementChild?.checkVisibility(),
      ),
  )
}

/** Unfolds all that a page folds away. */
export const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) {
      fold.removeAttribute('name')
      fold.open = true
    }
  })
