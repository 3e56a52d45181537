// What axe has against the pages as a hand leaves them; pages.spec.ts asks it about all of them as they first stand.
import { expect, test } from '@playwright/test'
import { LOOKS, objections } from './axe.ts'
import { desk, firstChapterPages, openBench, remember, unfold, visit } from './site.ts'

// Axe reads every element of a long page, several times over.
test.slow()

// A colour that is half way to the other theme is neither's.
test.use({ contextOptions: { reducedMotion: 'reduce' } })

// Chapters are made of the same cells: every other one is looked at in every way.
for (const address of firstChapterPages.filter((_, k) => k % 2 === 0))
  test(`${address}, unfolded, has nothing that axe objects to in forced colours, for reading and for the projector`, async ({
    page,
  }) => {
    await page.setViewportSize(desk)
    await visit(page, address)
    await unfold(page)
    await page.emulateMedia({ forcedColors: 'active' })
    expect(await objections(page, LOOKS), 'forced colours').toBe('')
    await page.emulateMedia({ forcedColors: 'none' })
    for (const name of ['Reading', 'Projector']) {
      await page.getByRole('button', { name, exact: true }).click()
      expect(await objections(page, LOOKS), name).toBe('')
    }
  })

test.describe('by night for the projector, nothing that axe objects to', () => {
  test.beforeEach(async ({ page }) => {
    await page.setViewportSize({ width: 1280, height: 720 })
    for (const look of ['night', 'projector'] as const) await remember(page, look)
  })

  test('with an error shown, a word explained and the sheet asked for', async ({ page }) => {
    await openBench(page, firstChapterPages[2] ?? '/')
    const size = page.locator('.fields input[type=text], .fields input[inputmode]').first()
    await size.fill('far')
    await size.press('Enter')
    await expect(page.locator('.bench [aria-invalid=true]').first()).toBeVisible()
    await page.locator('button.term').first().click()
    expect(await objections(page), 'error and word').toBe('')
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Print the template' }).first().click()
    await expect(page.getByRole('dialog')).toBeVisible()
    expect(await objections(page), 'dialog').toBe('')
  })

  test('on the dummy page with an offer, a fault and the sheets asked for', async ({ page }) => {
    await page.goto('/dummy/')
    await page.locator('.dummy[data-awake="true"]').waitFor()
    await page.locator('.fold-ring').first().click()
    const layer = page.locator('.dummy-slip .offers .offer').filter({ hasText: 'Layer' }).first()
    await layer.waitFor()
    expect(await objections(page), 'offers').toBe('')
    await layer.click()
    const depth = page.getByRole('textbox', { name: 'Depth', exact: true })
    await depth.fill('100')
    await depth.press('Enter')
    await page.getByRole('button', { name: 'See and mend' }).click()
    await expect(page.locator('.dummy-slip').getByRole('button', { name: /^Mend/ })).toBeEnabled()
    expect(await objections(page), 'fault').toBe('')
    await page.getByRole('button', { name: 'Print the sheets' }).click()
    await expect(page.getByRole('dialog')).toBeVisible()
    expect(await objections(page), 'sheets').toBe('')
  })

  test('with the tools at the wall over a page, a booklet and a lesson', async ({ page }) => {
    const tools = page.getByRole('toolbar', { name: 'At the wall' })
    for (const address of ['/choose/', '/steps/?from=heron', '/class/?chapter=layers']) {
      await visit(page, address)
      if (address.startsWith('/class/'))
        await page.getByRole('button', { name: 'Put it on the wall' }).click()
      await page.getByRole('button', { name: 'Tools', exact: true }).last().click()
      await tools.waitFor()
      for (const key of ['d', 't', '?']) await page.keyboard.press(key)
      expect(await objections(page), address).toBe('')
      if (!address.startsWith('/class/')) continue
      await page.keyboard.press('PageDown')
      await page.keyboard.press('?')
      await page.keyboard.press('h')
      await page.keyboard.press('s')
      expect(await objections(page), 'hands').toBe('')
      const [notes] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')])
      await notes.getByRole('heading').waitFor()
      expect(await objections(notes), 'notes').toBe('')
    }
  })
})
