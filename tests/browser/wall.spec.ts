// The tools at the wall: by keys and by mouse, over the page and never of it.
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { benchAwake, open, remember } from './site.ts'

const inked = (page: Page): Promise<number> =>
  page.locator('.wall-ink').evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] }
    let count = 0
    for (let k = 3; k < data.length; k += 4) if ((data[k] ?? 0) > 0) count++
    return count
  })

test('a teacher draws, wipes, freezes, counts hands and sees the notes', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  await remember(page, 'projector')
  await open(page, '/chapters/layers/')
  await benchAwake(page)
  await page.getByRole('button', { name: 'Tools', exact: true }).press('Enter')
  const tools = page.getByRole('toolbar', { name: 'At the wall' })
  await expect(tools.getByRole('button', { name: 'Draw' })).toBeFocused()
  for (const button of await tools.getByRole('button').all())
    await expect(button).toBeInViewport({ ratio: 1 })

  await page.keyboard.press('d')
  await page.mouse.move(300, 300)
  await page.mouse.down()
  await page.mouse.move(420, 380, { steps: 6 })
  await page.mouse.up()
  expect(await inked(page)).toBeGreaterThan(500)
  await page.keyboard.press('d')
  // The line stays when the pen is put down, until it is wiped.
  expect(await inked(page)).toBeGreaterThan(500)
  await page.keyboard.press('w')
  await expect(page.locator('.wall-ink')).toHaveCount(0)

  const opening = page.getByRole('slider', { name: /^Opening/ }).first()
  const value = () => opening.getAttribute('aria-valuenow')
  const before = await value()
  await tools.getByRole('button', { name: 'Freeze' }).click()
  await opening.focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('PageDown')
  expect(await value()).toBe(before)
  await page.keyboard.press('f')
  await opening.focus()
  await page.keyboard.press('ArrowRight')
  await expect.poll(value).not.toBe(before)

  await page.keyboard.press('h')
  const hands = page.getByRole('region', { name: 'Count hands' })
  await hands.getByRole('button', { name: 'One more: As high as the right cuts are deep' }).click()
  await expect(hands.getByRole('textbox', { name: /right cuts are deep/ })).toHaveValue('1')
  await hands.getByRole('button', { name: 'Show what is right' }).click()
  await expect(page.locator('html')).toHaveAttribute('data-guess', 'open')

  await page.keyboard.press('t')
  const timer = page.getByRole('region', { name: 'Timer' })
  await timer.getByRole('textbox').fill('200')
  await expect(timer.getByRole('alert')).toHaveText('1 to 90 minutes.')
  await timer.getByRole('textbox').fill('2')
  await timer.getByRole('button', { name: 'Start' }).click()
  await expect(timer).toContainText('1:5')

  const [notes] = await Promise.all([
    page.waitForEvent('popup'),
    tools.getByRole('button', { name: 'Notes' }).click(),
  ])
  await expect(notes.getByRole('heading', { name: 'For teachers' })).toBeVisible()
  await expect(notes.getByRole('heading', { name: 'Try it' })).toBeHidden()
  await tools.getByRole('button', { name: 'Put away' }).click()
  await expect(page.getByRole('button', { name: 'Tools', exact: true })).toBeFocused()
})
