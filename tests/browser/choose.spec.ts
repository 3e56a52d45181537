// The page that helps to choose: what is wanted stays, and all cards open together.
import { expect, test } from '@playwright/test'
import { open } from './site.ts'

const shown = '.choice:visible'

test.describe('with script turned off', () => {
  test.use({ javaScriptEnabled: false })

  test('plain words leave the mechanisms that do it, each with its picture', async ({ page }) => {
    await page.goto('/choose/')
    const all = await page.locator(shown).count()
    expect(all).toBeGreaterThan(6)
    await page.getByRole('radio', { name: 'opens like a mouth' }).check({ force: true })
    await expect(page.locator(shown)).toHaveCount(1)
    await expect(page.locator(shown)).toContainText('Slit')
    await expect(page.locator(`${shown} img`)).toBeVisible()
    await page.getByRole('radio', { name: 'may do anything' }).check({ force: true })
    await expect(page.locator(shown)).toHaveCount(all)
  })
})

test('one slider opens all cards, by keys too, and they swing until they are stopped', async ({ page }) => {
  await open(page, '/choose/')
  const slider = page.getByRole('slider', { name: 'Opening of all cards' })
  const pictures = page.locator('.choice-figure svg')
  await expect(pictures.first()).toHaveAccessibleName(/100/)
  await slider.focus()
  await page.keyboard.press('End')
  for (const k of [0, 1]) await expect(pictures.nth(k)).toHaveAccessibleName(/170/)
  await page.getByRole('button', { name: 'Open and shut them' }).click()
  await expect(pictures.first()).not.toHaveAccessibleName(/170/)
  await page.getByRole('button', { name: 'Stop' }).click()
  await page.getByRole('button', { name: 'Open and shut them' }).waitFor()
  const rested = await slider.inputValue()
  await page.waitForTimeout(200)
  expect(await slider.inputValue()).toBe(rested)
})

test('with reduced motion one press is one step', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, '/choose/')
  const slider = page.getByRole('slider', { name: 'Opening of all cards' })
  await page.getByRole('button', { name: 'Open and shut them' }).click()
  await expect(slider).toHaveValue('115')
})
