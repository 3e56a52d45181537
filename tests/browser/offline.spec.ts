// After one visit the book works without a network, all of it, and a change of it is fetched alone. In a folder of a
// host, since what keeps it there keeps it at a root too; but not the other way round.
import { expect, test } from '@playwright/test'
import type { Elsewhere } from './elsewhere.ts'
import { servedBelow } from './elsewhere.ts'

test.use({ serviceWorkers: 'allow' })

let site: Elsewhere

test.beforeAll(async () => {
  site = await servedBelow('/some/where/')
})

test.afterAll(() => site.stop())

test('after one visit chapters, search, the planning page and their sheets need no network', async ({
  page,
  context,
}) => {
  await page.goto(`${site.home}words/`)
  await expect(page.locator('#offline-says')).toHaveText(/it works without a network/, { timeout: 45_000 })
  // The worker keeps what lies beside it, and no more of the host.
  const [scope] = await page.evaluate(async () =>
    (await navigator.serviceWorker.getRegistrations()).map((one) => one.scope),
  )
  expect(scope).toBe(site.home)
  await context.setOffline(true)
  for (const address of ['', 'chapters/layers/', 'fault/', 'garden/', 'dummy/', 'steps/?from=owl']) {
    const answer = await page.goto(site.home + address)
    expect(answer?.ok(), address).toBe(true)
  }
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Owl, step by step')
  await page.goto(`${site.home}chapters/layers/`)
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
  await page.locator('.bench[data-awake="true"]').first().waitFor()
  await page.getByRole('button', { name: 'Print the template' }).first().click()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the template' }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(/^layers-.*\.pdf$/)
  expect(site.beside).toEqual([])
})
