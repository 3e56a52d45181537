// The pictures beside words: each opens and shuts when it is pressed, by mouse or by keys.
import { expect, test } from '@playwright/test'
import { open } from './site.ts'

const figure = (word: string) => `Open and shut the picture of “${word}”`

test('a pressed picture opens and shuts its card once, and stands as before', async ({ page }) => {
  await open(page, '/words/')
  const ridge = page.getByRole('button', { name: figure('ridge') })
  await ridge.scrollIntoViewIfNeeded()
  await expect(ridge).toBeEnabled()
  const before = await ridge.innerHTML()
  await ridge.focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => ridge.innerHTML()).not.toBe(before)
  await expect.poll(() => ridge.innerHTML(), { timeout: 15_000 }).toBe(before)
  // What is no card in motion has nothing to press.
  await expect(page.getByRole('button', { name: figure('template') })).toHaveCount(0)
})

test('with reduced motion one press is one step', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, '/words/')
  const gutter = page.getByRole('button', { name: figure('gutter') })
  await gutter.scrollIntoViewIfNeeded()
  await expect(gutter).toBeEnabled()
  const shown = () => gutter.innerHTML()
  const before = await shown()
  await gutter.click()
  // The first time its card is fetched.
  await expect.poll(shown).not.toBe(before)
  const once = await shown()
  await page.waitForTimeout(300)
  expect(await shown()).toBe(once)
  await gutter.click()
  await expect.poll(shown).not.toBe(once)
})
