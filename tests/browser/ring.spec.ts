// The handle that a chapter's task names wears a ring (in each chapter: chapters.spec.ts) until it is used; a crowded sheet shows one mechanism at a time.
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { openBench } from './site.ts'

const ringed = (page: Page) => page.locator('.stage-sheet .grip[data-ringed="true"]')

test('the ring goes when its handle is used, and no sooner', async ({ page }) => {
  await openBench(page, '/chapters/one-slit-two-v-folds/')
  await page.getByRole('slider', { name: 'End of the slit' }).focus()
  await page.keyboard.press('ArrowRight')
  await expect(ringed(page)).toHaveAccessibleName('Upper apex')
  await ringed(page).focus()
  await page.keyboard.press('ArrowUp')
  await expect(ringed(page)).toHaveCount(0)
})

test('the ring beats for less than five seconds, and then keeps still (WCAG 2.2, 2.2.2)', async ({
  page,
}) => {
  await openBench(page, '/chapters/layers/')
  const seconds = await ringed(page).evaluate((grip) => {
    const { animationDuration, animationIterationCount } = getComputedStyle(grip, '::after')
    return Number.parseFloat(animationDuration) * Number(animationIterationCount)
  })
  expect(seconds).toBeGreaterThan(0)
  expect(seconds).toBeLessThan(5)
})

test('with reduced motion the ring keeps still', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openBench(page, '/chapters/layers/')
  const name = await ringed(page).evaluate((grip) => getComputedStyle(grip, '::after').animationName)
  expect(name).toBe('none')
})

test('a crowded sheet shows one mechanism, another when it is chosen or its size is taken in hand', async ({
  page,
}) => {
  await openBench(page, '/chapters/tents-and-floating-layers/')
  const pick = page.getByLabel('Pieces shown on the flat sheet')
  await expect(pick).toHaveValue('body')
  const foot = page.getByRole('slider', { name: 'Left foot of the heap' })
  await expect(foot).toHaveCount(0)
  await pick.selectOption('heap')
  await expect(foot).toBeVisible()
  await expect(page.locator('.stage-sheet')).not.toContainText('pond platform')
  await page.getByRole('textbox', { name: 'Pond: height of the walls' }).focus()
  await expect(pick).toHaveValue('pond')
  await expect(page.locator('.stage-sheet')).toContainText('pond platform')
  await pick.selectOption({ label: 'All pieces' })
  for (const name of ['body', 'heap', 'pond platform'])
    await expect(page.locator('.stage-sheet')).toContainText(name)
})
