// A bench in the frame of somebody else's page (WHATWG HTML, the iframe element).
import { expect, test } from '@playwright/test'
import { openBench } from './site.ts'

test('a frame for another page shows the bench as it stands, and nothing else of the chapter', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await openBench(page, '/chapters/one-slit-two-v-folds/')
  const slit = page.getByRole('textbox', { name: 'Slit', exact: true })
  await slit.fill('60')
  await slit.press('Enter')
  await page.getByRole('button', { name: 'Copy a frame' }).click()
  await expect(page.getByText('The frame is copied.')).toBeVisible()
  const frame = await page.evaluate(() => navigator.clipboard.readText())
  // Another page, of the same place so that the test's rules let it look inside.
  await page.goto('/nowhere/')
  await page.evaluate((html) => {
    document.body.innerHTML = html
  }, frame)
  const inside = page.frameLocator('iframe')
  await expect(inside.locator('.bench')).toBeVisible()
  await expect(inside.getByRole('textbox', { name: 'Slit', exact: true })).toHaveValue('60.0')
  for (const part of ['header.top', '.opener', '.foot', '.cell:not(.cell-try-it)'])
    await expect(inside.locator(part).first()).toBeHidden()
  await expect(page.locator('iframe')).toHaveAttribute('title', /heron/i)
})
