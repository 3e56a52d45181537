// After one visit the book works without a network, all of it, and a change of it is fetched alone.
import { expect, test } from '@playwright/test'

test.use({ serviceWorkers: 'allow' })

test('after one visit chapters, search, the planning page and their sheets need no network', async ({
  page,
  context,
}) => {
  await page.goto('/words/')
  await expect(page.locator('#offline-says')).toHaveText(/it works without a network/, { timeout: 45_000 })
  await context.setOffline(true)
  for (const address of ['/', '/chapters/layers/', '/fault/', '/garden/', '/dummy/', '/steps/?from=owl']) {
    const answer = await page.goto(address)
    expect(answer?.ok(), address).toBe(true)
  }
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Owl, step by step')
  await page.goto('/chapters/layers/')
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
  await page.locator('.bench[data-awake="true"]').first().waitFor()
  await page.getByRole('button', { name: 'Print the template' }).first().click()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the template' }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(/^layers-.*\.pdf$/)
})
