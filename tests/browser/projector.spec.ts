// At the back of a room: what is asked, what is covered, and the keys of a clicker.
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { benchAwake, open, remember } from './site.ts'

const BEAK = '/chapters/one-slit-two-v-folds/'

async function lesson(page: Page, address = BEAK): Promise<void> {
  await remember(page, 'projector')
  await open(page, address)
  await benchAwake(page)
  await page.locator('.class-bar').waitFor()
}

const says = (page: Page) => page.locator('.class-says')

const rise = (page: Page) => page.locator('.lead-reading .lead-number')

const SIZES = [
  [1280, 720],
  [1920, 1080],
] as const

test('no word is under 1/20 of the height, and no dot that is dragged is smaller than its words', async ({
  page,
}) => {
  await lesson(page)
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height })
    const words = await page
      .locator('.class-bar :is(p, button), .figure-pick, .bench-bar :is(button, span, input), .stage text')
      .evaluateAll((found) =>
        found
          .filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.textContent?.trim())
          .map((one) => Number.parseFloat(getComputedStyle(one).fontSize)),
      )
    expect(Math.min(...words)).toBeGreaterThanOrEqual(height / 20 - 0.1)
    const dots = await page
      .locator('.grip[data-shape="dot"], .grip:not([data-shape])')
      .evaluateAll((found) =>
        found
          .filter((one) => one.checkVisibility())
          .map((one) => Number.parseFloat(getComputedStyle(one, '::before').width)),
      )
    expect(dots.length).toBeGreaterThan(1)
    expect(Math.min(...dots)).toBeGreaterThanOrEqual(height / 20)
  }
})

test('a word that is explained is explained on the screen', async ({ page }) => {
  await lesson(page)
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height })
    const words = page.locator('.readings .tip-word')
    for (let k = 0; k < (await words.count()); k++) {
      await words.nth(k).focus()
      const tip = page.locator('.readings .tip-says').nth(k)
      await expect(tip).toBeVisible()
      const box = await tip.boundingBox()
      expect(box?.x).toBeGreaterThanOrEqual(0)
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width)
      // Nothing lies on it.
      const free = await tip.evaluate((one) => {
        const { left, top, width, height } = one.getBoundingClientRect()
        const y = Math.max(4, top + height / 2)
        return one.contains(document.elementFromPoint(left + width / 2, y))
      })
      expect(free).toBe(true)
    }
  }
})

test('Page Down asks, then shows, and keeps what was read before; Page Up goes back', async ({ page }) => {
  await lesson(page)
  await expect(says(page)).toContainText('Drag the upper apex')
  await page.keyboard.press('PageDown')
  await expect(says(page)).toHaveText('A longer slit: what will the tip do?')
  await expect(rise(page)).toBeHidden()
  await expect(page.locator('.lead-reading .cover-mark')).toBeVisible()
  await expect(page.locator('.stage-view text[data-of="veil"]')).toHaveText('?')
  await expect(page.locator('.stage-view text.m-dimension').first()).toBeHidden()
  const slit = page.getByRole('slider', { name: 'End of the slit' })
  await slit.focus()
  for (let k = 0; k < 10; k++) await page.keyboard.press('ArrowRight')
  // The key is the lesson's, though a slider has the focus.
  await page.keyboard.press('PageDown')
  await expect(says(page)).toHaveText(/^It stands higher\. Was 31\.1 mm\.$/)
  await expect(rise(page)).toBeVisible()
  await expect(rise(page)).toContainText('33.9')
  await page.keyboard.press('PageUp')
  await expect(rise(page)).toBeHidden()
  await page.keyboard.press('PageUp')
  await expect(says(page)).toContainText('Drag the upper apex')
})

// What is shown over the page can be put away without anything else happening: WCAG 2.2, 1.4.13.
test('Escape puts away what explains a word first, then ends, and the focus stays in sight', async ({
  page,
}) => {
  await lesson(page)
  const on = page.locator('html[data-projector="on"]')
  const term = page.locator('button.term').first()
  await term.press('Enter')
  await expect(page.locator('.term-says:popover-open')).toHaveCount(1)
  await page.keyboard.press('Escape')
  await expect(page.locator('.term-says:popover-open')).toHaveCount(0)
  await expect(on).toHaveCount(1)
  await page.keyboard.press('Escape')
  await expect(on).toHaveCount(0)
  await expect(term).toBeFocused()
  await expect(term).toBeInViewport()
})

test('who ends it from its own bar is at the switch again', async ({ page }) => {
  await lesson(page)
  await page.getByRole('button', { name: 'End', exact: true }).press('Enter')
  await expect(page.getByRole('button', { name: 'Projector' })).toBeFocused()
})

test('S shows and hides, Space plays, Escape ends', async ({ page }) => {
  await lesson(page)
  await expect(rise(page)).toBeHidden()
  await page.keyboard.press('s')
  await expect(rise(page)).toBeVisible()
  await expect(page.getByRole('button', { name: 'Hide', exact: true })).toBeVisible()
  await page.keyboard.press('s')
  await expect(rise(page)).toBeHidden()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Pause' })).toBeHidden()
  await page.keyboard.press('Escape')
  await expect(page.locator('html')).not.toHaveAttribute('data-projector', /./)
  await expect(page.locator('.class-bar')).toBeHidden()
  // At a desk the keys are the page's again.
  await page.keyboard.press('s')
  await expect(page.locator('html')).toHaveAttribute('data-guess', 'covered')
})

test('after the answer, Next goes to the next chapter, still on the projector', async ({ page }) => {
  await lesson(page)
  for (let k = 0; k < 3; k++) await page.getByRole('button', { name: 'Next', exact: true }).click()
  await expect(page).toHaveURL(/\/chapters\/layers\/$/)
  await expect(page.locator('.class-bar')).toBeVisible()
})

test('keys that are typed are not a clicker’s', async ({ page }) => {
  await lesson(page)
  await page.getByRole('textbox', { name: 'Opening' }).focus()
  await page.keyboard.press('s')
  await expect(rise(page)).toBeHidden()
})
