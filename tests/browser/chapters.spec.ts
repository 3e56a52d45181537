// What holds of every chapter's bench, on one load of each: most of the time goes into loading.
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { benchAwake, chapterPages, open } from './site.ts'

/** What a reader at a desk looks at together. */
const DESK = [
  'h1',
  '.lead',
  '.figure-view .stage',
  '.figure-section .stage',
  '.figure-sheet .stage',
  '.play',
  '.opening-bar',
  '.readings',
  '.field-row',
]

/** What a class looks at. */
const CLASS = [
  '.class-says',
  '.class-bar .button >> nth=0',
  '.class-bar .button >> nth=1',
  '.figure-view .stage',
  '.figure-sheet .stage',
  '.play',
  '.lead-reading',
]

async function expectInSight(page: Page, parts: readonly string[]): Promise<void> {
  for (const part of parts) await expect(page.locator(part).first(), part).toBeInViewport({ ratio: 1 })
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true)
}

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).first().click()

/** Readings that run out of their cells. */
const wideReadings = (page: Page): Promise<(string | null)[]> =>
  page.locator('.readings .reading-cell').evaluateAll((cells) =>
    cells
      .filter((cell) => {
        const { right } = cell.getBoundingClientRect()
        const parts = [...cell.querySelectorAll('dt, dd, .reading-value')]
        return (
          cell.scrollWidth > cell.clientWidth + 1 ||
          parts.some((part) => part.getBoundingClientRect().right > right + 1)
        )
      })
      .map((cell) => cell.textContent),
  )

for (const address of chapterPages)
  test(`${address}: one handle wears a ring; all that a reader looks at is on the desk, all that a class looks at on the projector; readings keep in their cells`, async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1280, height: 720 })
    await open(page, address)
    await benchAwake(page)
    await expectInSight(page, DESK)
    await expect(page.locator('.stage-sheet .grip[data-ringed="true"]')).toHaveCount(1)
    await press(page, 'Projector')
    await expectInSight(page, CLASS)
    await page.setViewportSize({ width: 1920, height: 1080 })
    await expectInSight(page, CLASS)
    await press(page, 'Projector')
    await expect(page.locator('.class-bar')).toBeHidden()
    // On a narrow desk, once the guess is made, in both units and set for reading.
    await page.setViewportSize({ width: 1024, height: 768 })
    await press(page, 'Show me')
    await page.locator('.fields-more summary').first().click()
    for (const name of ['mm', 'inch', 'Reading']) {
      await press(page, name)
      expect(await wideReadings(page), name).toEqual([])
    }
  })
