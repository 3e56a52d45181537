import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { open, openBench, visit } from './site.ts'

const BEAK = '/chapters/one-slit-two-v-folds/'

const bench = (page: Page, address = BEAK): Promise<void> => openBench(page, address)

const field = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true })

/** The script of this name does not come. */
async function lose(page: Page, name: string): Promise<void> {
  await page.route(new RegExp(`/_astro/${name}[^/]*.js`), (route) => route.abort())
}

test.describe('what does not load is named, with the reason', () => {
  const lost = (what: string) =>
    new RegExp(`${what} could not be loaded: the site did not answer\\. Try again\\.`)

  test('the template of a bench; asked again it comes', async ({ page }) => {
    await lose(page, 'SheetDialog')
    await bench(page)
    const print = page.getByRole('button', { name: 'Print the template' })
    await print.click()
    await expect(page.getByRole('alert').filter({ hasText: lost('The template') })).toBeVisible()
    await page.unrouteAll()
    await page.reload()
    // The first move after a load has no length: it may be the page that moved.
    for (const at of [8, 9]) await page.mouse.move(at, at)
    await page.locator('.bench[data-awake="true"]').first().waitFor()
    await print.click()
    await expect(page.getByRole('dialog')).toBeVisible()
  })

  test('the font of a template', async ({ page }) => {
    await page.route(/\.woff$/, (route) => route.abort())
    await bench(page)
    await page.getByRole('button', { name: 'Print the template' }).click()
    await page.getByRole('button', { name: 'Save the template' }).click()
    await expect(page.locator('.sheet-says')).toHaveText(lost('The font of the template'))
  })

  test('the checks', async ({ page }) => {
    await lose(page, 'checker')
    await bench(page)
    await field(page, 'Slit').fill('50')
    await expect(page.locator('.bench-notes')).toContainText(lost('What checks the card'))
    await expect(field(page, 'Slit')).toHaveValue('50')
  })

  test('the reader of links; the page’s own sizes stand', async ({ page }) => {
    await lose(page, 'read-link')
    await bench(page, `${BEAK}#beak.cut=50`)
    await expect(page.locator('.bench-notes')).toContainText(lost('What reads the link'))
    await expect(field(page, 'Slit')).toHaveValue('42.0')
  })

  test('what sets the sizes; asked again it comes', async ({ page }) => {
    await lose(page, 'beside')
    await open(page, BEAK)
    await page.locator('.bench[data-awake="true"]').first().waitFor()
    const more = page.getByRole('button', { name: 'Slit: more' }).first()
    await more.hover()
    await expect(page.locator('.bench-notes').first()).toContainText(lost('What sets the sizes'))
    await page.unrouteAll()
    await page.mouse.move(4, 4)
    await more.click()
    await expect(field(page, 'Slit').first()).toHaveValue('43.0')
  })

  test('the chart; its first picture stays', async ({ page }) => {
    await lose(page, 'ChartFigure')
    await bench(page)
    await page.locator('.figure-chart').scrollIntoViewIfNeeded()
    await expect(page.locator('.bench-notes')).toContainText(lost('The chart'))
    await expect(page.locator('.stage-chart svg .m-curve').first()).toBeAttached()
  })

  test('what seeks sizes for a place', async ({ page }) => {
    await lose(page, 'AimPanel')
    await bench(page)
    await page.locator('.aim summary').click()
    await expect(page.locator('.aim')).toContainText(lost('What works the sizes out'))
  })

  test('what compares a reading', async ({ page }) => {
    await lose(page, 'MeasureTools')
    await bench(page)
    const ruler = page.getByRole('textbox', { name: 'My ruler says' })
    await ruler.scrollIntoViewIfNeeded()
    await ruler.fill('29')
    await expect(page.locator('.measure-says')).toContainText(lost('What compares your reading'))
  })

  test('what tells which way a part goes', async ({ page }) => {
    await lose(page, 'checker')
    await bench(page, '/chapters/v-on-v/')
    const ways = page.locator('.way-note')
    await page.locator('.fields .field-number button').first().click()
    await expect(ways).toContainText(lost('What tells which way it goes'))
  })
})

test.describe('the template beside the steps', () => {
  const link = (page: Page) =>
    page.locator('[data-cell="make-it"]').getByRole('link', { name: 'Template on A4', exact: true })

  const says = (page: Page) => page.locator('.template-says').first()

  test('is saved, and the page stays', async ({ page }) => {
    await visit(page, BEAK)
    const address = page.url()
    const [file] = await Promise.all([page.waitForEvent('download'), link(page).click()])
    expect(file.suggestedFilename()).toBe('one-slit-two-v-folds-a4.pdf')
    await expect(says(page)).toHaveText('one-slit-two-v-folds-a4.pdf is saved. Print it at 100 %.')
    expect(page.url()).toBe(address)
  })

  test('without a network it says that the device has none', async ({ page, context }) => {
    await visit(page, BEAK)
    await context.setOffline(true)
    await link(page).click()
    await expect(says(page)).toHaveText(
      'The template could not be loaded: this device has no network now. Try again.',
    )
    expect(new URL(page.url()).pathname).toBe(BEAK)
  })

  test('another cause is told as what it is', async ({ page }) => {
    await visit(page, BEAK)
    await page.route(/\.pdf$/, (route) => route.fulfill({ status: 503 }))
    await link(page).click()
    await expect(says(page)).toHaveText(
      'The template could not be loaded: the site answered with error 503. Try again.',
    )
  })
})

test('by keyboard the template is a few steps away, and every size after it', async ({ page }) => {
  await bench(page)
  const skip = page.getByRole('link', { name: 'Skip to the template' })
  for (let k = 0; k < 14; k++) {
    await page.keyboard.press('Tab')
    if (await skip.evaluate((element) => element === document.activeElement)) break
  }
  await expect(skip).toBeFocused()
  await expect(skip).toBeInViewport({ ratio: 1 })
  await page.keyboard.press('Enter')
  const print = page.getByRole('button', { name: 'Print the template' })
  await expect(print).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog')).toBeVisible()
})

test('the slider of the opening speaks the opening and the rise', async ({ page }) => {
  await bench(page)
  const slider = page.getByRole('slider', { name: 'Opening', exact: true })
  await expect(slider).toHaveAttribute('aria-valuetext', '96.0 degrees, rise 31.1 millimetres')
  await slider.focus()
  const before = await slider.getAttribute('aria-valuetext')
  await page.keyboard.press('Shift+ArrowRight')
  await expect(slider).toHaveAttribute('aria-valuetext', /^106\.0 degrees, rise \d+\.\d millimetres$/)
  expect(await slider.getAttribute('aria-valuetext')).not.toBe(before)
})

test('where the tip stands past the card, the arrow of the section stays on the sheet', async ({ page }) => {
  // A wide wedge carries the tip past the end of the gutter as the card shuts.
  await bench(page, `${BEAK}#beak.lean=60&jaw.lean=60&opening=20&beak.apex=148&beak.run=-72`)
  // 148 mm is the height of the card.
  const reach = page.locator('.reading-cell[data-reading="reach"] .reading-number')
  await expect.poll(async () => Number(await reach.textContent())).toBeGreaterThan(148)
  const [arrow, stage] = await Promise.all(
    [
      page.getByRole('slider', { name: 'Where the section is cut', exact: true }),
      page.locator('.stage-sheet'),
    ].map((one) => one.boundingBox()),
  )
  if (!arrow || !stage) throw new Error('not on the page')
  expect(arrow.y + arrow.height / 2).toBeGreaterThan(stage.y)
  expect(arrow.y + arrow.height / 2).toBeLessThan(stage.y + stage.height)
})

test('nothing is green beside what a check refuses, and no reading says 0.0 as if it were room', async ({
  page,
}) => {
  await bench(page)
  const cell = page.locator('.reading-cell[data-reading="margin"]')
  await expect(cell).toHaveAttribute('data-state', 'good')
  await page.getByRole('slider', { name: 'End of the slit' }).focus()
  await page.keyboard.press('End')
  await expect(page.locator('.fault-note')).toHaveAttribute('data-state', 'fault')
  await expect(cell).not.toHaveAttribute('data-state', 'good')
  await expect(cell).not.toContainText(/by 0\.0/)
})
