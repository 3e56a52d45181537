// Lantern, moth and moon with their art on one card, from an empty card to a printed sheet, in as few presses as it
// takes. What is pressed is counted by the page itself.
import { readFileSync } from 'node:fs'
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { check, parseDesign } from '../../src/paper/index.ts'

const slip = (page: Page): Locator => page.locator('.dummy-slip')

const rows = (page: Page): Locator => page.getByRole('treeitem')

/** Somebody who has read chapter 2 finds each of these in a few seconds: a press every ten is under three minutes. */
const MOST_PRESSES = 14

test('lantern, moth and moon with art, from an empty card to a sheet', async ({ page }) => {
  test.setTimeout(180_000)
  await page.addInitScript(() => {
    addEventListener(
      'click',
      ({ isTrusted }) => {
        if (isTrusted) sessionStorage.presses = String(Number(sessionStorage.presses ?? 0) + 1)
      },
      true,
    )
  })
  const works = () =>
    expect(page.locator('.dummy-margin')).toContainText('It works as paper', { timeout: 30_000 })
  const offer = (kind: string) => slip(page).locator('.offers .offer').filter({ hasText: kind }).first()
  const shape = (name: string) => slip(page).getByRole('button', { name, exact: true })
  const gutter = page.getByRole('button', { name: 'Build on the gutter' })
  await page.goto('/dummy/')
  await page.locator('.dummy[data-awake="true"]').waitFor()

  await gutter.click()
  await offer('Layer cut from the card').click()
  await page.getByRole('button', { name: 'Colour and stick' }).click()
  await shape('Lantern').click()
  await expect(rows(page).filter({ hasText: 'Lantern' })).toHaveCount(1)
  await works()

  await gutter.click()
  await offer('V-fold of its own card').click()
  await page.getByRole('button', { name: 'Colour and stick' }).click()
  await slip(page).getByLabel('The same on the other side of the ridge').click()
  await shape('Moth’s wing').click()
  await expect(rows(page).filter({ hasText: /wing/i })).toHaveCount(2)
  await works()

  await rows(page).filter({ hasText: 'Right page' }).click()
  await shape('Moon').click()
  await expect(rows(page).filter({ hasText: 'Moon' })).toHaveCount(1)
  await works()

  await page.getByRole('button', { name: 'Print the sheets' }).click()
  const coming = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save the template' }).click()
  const pdf = readFileSync(await (await coming).path())
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
  const presses = Number(await page.evaluate(() => sessionStorage.presses))
  test.info().annotations.push({ type: 'presses', description: String(presses) })
  expect(presses).toBeLessThanOrEqual(MOST_PRESSES)

  // What lies there is sound, and is drawn on: judged by the file that the page hands out.
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Save, open, send' }).click()
  const file = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Keep a file' }).click()
  const design = parseDesign(JSON.parse(readFileSync(await (await file).path(), 'utf8')))
  expect(check(design).filter(({ ok }) => !ok)).toEqual([])
  for (const word of ['lantern', 'moth', 'moon'])
    expect(design.art?.some(({ on }) => on.startsWith(word)) || design.papers?.[word], word).toBeTruthy()
})
