// What takes time into account: these run when all others are done, one after the other.
import { expect, test } from '@playwright/test'
import { openBench } from './site.ts'

test('looking for repairs keeps nobody waiting', async ({ page }) => {
  await openBench(page, '/chapters/tents-and-floating-layers/')
  await page.evaluate(() => {
    const waits: number[] = []
    Object.assign(globalThis, { waits })
    let last = performance.now()
    setInterval(() => {
      waits.push(performance.now() - last)
      last = performance.now()
    }, 20)
  })
  await page.getByRole('slider', { name: 'Right foot of the body' }).focus()
  await page.keyboard.press('Shift+ArrowRight')
  await expect(page.locator('.repair').first()).toBeVisible({ timeout: 30_000 })
  const waits = await page.evaluate(() => (globalThis as unknown as { waits: number[] }).waits)
  // Nielsen, Usability Engineering (1993): up to a second the flow of thought is not broken. From memory.
  expect(Math.max(...waits)).toBeLessThan(1000)
})
