// A lesson that asks before it tells: guesses, phrases that move the card, ticks that stay, and where it all stands.
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { benchAwake, open, remember } from './site.ts'

const BEAK = '/chapters/one-slit-two-v-folds/'

async function bench(page: Page, address = BEAK): Promise<void> {
  await open(page, address)
  await benchAwake(page)
}

/** As on a device on which the guess was made before. */
async function guessed(page: Page, slug = 'one-slit-two-v-folds'): Promise<void> {
  await page.addInitScript((key) => localStorage.setItem(key, 'shown'), `hingebook.guess.${slug}`)
}

const reading = (page: Page, name: string): Locator =>
  page.locator(`.readings [data-reading="${name}"] .reading-number`)

const phrase = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true })

test.describe('a guess', () => {
  test('is made before anything that answers it is seen or heard', async ({ page }) => {
    await bench(page)
    await expect(reading(page, 'rise')).toBeHidden()
    await expect(page.locator('.stage-section .drawing')).toBeHidden()
    await expect(page.locator('.answer')).toBeHidden()
    // What is spoken of the card does not tell either.
    expect(await page.locator('.stage-view .drawing').getAttribute('aria-label')).not.toMatch(/\d mm/)
    await page.locator('.cell-predict').getByText('Stand lower').click()
    await expect(reading(page, 'rise')).toBeVisible()
    await expect(page.locator('.stage-section .drawing')).toBeVisible()
    await expect(page.locator('.answer')).toBeVisible()
    // It is remembered, with what was chosen.
    await page.reload()
    await expect(reading(page, 'rise')).toBeVisible()
    await expect(page.locator('.cell-predict details[open]')).toContainText('Stand lower')
  })

  test('is not answered by what the server says, nor by how far a challenge is to go', async ({ page }) => {
    await page.route('**/_astro/bench.*.js', (route) => route.abort())
    await page.goto('/chapters/it-starts-at-the-gutter/')
    await expect(
      page.locator('.opening-bar [role="slider"], .opening-bar input[type="range"]'),
    ).toHaveAttribute('aria-valuetext', '100.0 degrees')
    await expect(page.locator('.stage-view .drawing')).toHaveAttribute('aria-label', /^[^.]*°\.$/)
    await page.unroute('**/_astro/bench.*.js')
    await bench(page, '/chapters/it-starts-at-the-gutter/')
    const task = page.locator('.challenge').filter({ hasText: '60 mm' }).first()
    await task.scrollIntoViewIfNeeded()
    await expect(task.locator('.challenge-says')).toContainText('Covered until you have guessed')
    await expect(task.getByText(/It needs|too much/)).toBeHidden()
    await page.locator('.cell-predict').getByText('Less than twice').click()
    await expect(task.getByText(/It needs|too much/)).toBeVisible()
    await expect(task.locator('.cover-mark')).toBeHidden()
  })

  test('need not be made: Show me lifts the covers, by keyboard too', async ({ page }) => {
    await bench(page)
    await page.locator('.guess-note').getByRole('button', { name: 'Show me' }).focus()
    await page.keyboard.press('Enter')
    await expect(reading(page, 'rise')).toBeVisible()
    await expect(page.locator('.answer')).toBeVisible()
    await expect(page.locator('.guess-note')).toBeHidden()
  })

  test('about tabs and joints covers where the tip is', async ({ page }) => {
    await bench(page, '/chapters/paper-itself/')
    for (const name of ['rise', 'reach']) await expect(reading(page, name)).toBeHidden()
    await expect(page.locator('.stage-section .drawing')).toBeHidden()
    await expect(reading(page, 'margin')).toBeVisible()
    await page.locator('.cell-predict').getByText('It rises higher').click()
    for (const name of ['rise', 'reach']) await expect(reading(page, name)).toBeVisible()
  })

  test('about two parts that may meet covers what the checks say, in words and in the pictures', async ({
    page,
  }) => {
    await bench(page, '/chapters/a-scene/')
    const farCut = page.getByRole('textbox', { name: 'Lantern: far cut', exact: true })
    const sound = await farCut.inputValue()
    // Neither does the ground of the reading tell, green or not, nor a line round it.
    const margin = page.locator('.readings [data-reading="margin"]')
    const none = 'rgba(0, 0, 0, 0)'
    await expect(margin).toHaveAttribute('data-state', 'good')
    await expect(margin).toHaveCSS('background-color', none)
    await farCut.fill('58')
    await expect(margin).toHaveCSS('background-color', none)
    await expect(margin).toHaveCSS('outline-style', 'none')
    await expect(page.locator('.fault-note')).toHaveAttribute('data-state', 'fault')
    await expect(page.locator('.fault-note')).toBeHidden()
    const marks = page.locator('.stage-view .drawing .m-fault')
    expect(await marks.count()).toBeGreaterThan(0)
    await expect(marks.first()).toBeHidden()
    await page.locator('.cell-predict').getByText('No, they meet on the way').click()
    await expect(page.locator('.fault-note')).toContainText('run into each other')
    await expect(marks.first()).toBeVisible()
    await farCut.fill(sound)
    await expect(margin).not.toHaveCSS('background-color', none)
  })

  test('is not answered by the small card that a phrase brings, nor aloud', async ({ page }) => {
    await bench(page)
    await phrase(page, 'lean up').scrollIntoViewIfNeeded()
    await phrase(page, 'lean up').click()
    const strip = page.locator('.phrase-strip')
    await expect(strip.locator('.stage-view .drawing')).toBeVisible()
    const told = [
      strip.locator('.phrase-number'),
      strip.locator('.phrase-section .drawing'),
      strip.locator('.stage-view text.m-dimension:not([data-of="veil"])'),
    ]
    for (const one of told) {
      await expect(one).toHaveCount(1)
      await expect(one).toBeHidden()
    }
    await expect(strip.locator('.cover-mark')).toBeVisible()
    await expect(strip.locator('[aria-live]')).toHaveText('')
    await page.locator('.cell-predict').getByText('Stand lower').click()
    for (const one of told) await expect(one).toBeVisible()
  })

  test('about where a card stops covers the end of its slider, in words and in the pictures', async ({
    page,
  }) => {
    await bench(page, '/chapters/a-v-fold-of-its-own-card/')
    const base = page.getByRole('textbox', { name: 'Base angle', exact: true })
    await base.fill('60')
    const first = page.locator('.bench').first()
    const slider = first.locator('.opening-bar input[type="range"]')
    await slider.focus()
    await page.keyboard.press('End')
    const told = [first.locator('.fault-note'), first.locator('.opening-stop')]
    for (const one of told) await expect(one).toContainText('stops the card at 109.4°')
    for (const one of told) await expect(one).toBeHidden()
    await expect(slider).toHaveAccessibleDescription('Covered until you have guessed.')
    const way = () => slider.evaluate((one) => getComputedStyle(one).getPropertyValue('--shut').trim())
    expect(await way()).toBe('none')
    // The number of the opening would say where it stands now, or refuse what lies beyond.
    const number = first.locator('.opening-bar').getByRole('textbox')
    await expect(number).toHaveCount(0)
    await expect(first.locator('.opening-bar .cover-mark')).toBeVisible()
    await page.locator('.cell-predict').getByText('It stops before it is flat').click()
    await expect(number).toHaveValue(/^109/)
    for (const one of told) await expect(one).toBeVisible()
    await expect(slider).toHaveAccessibleDescription(/stops the card at 109\.4°/)
    expect(await way()).toContain('gradient')
  })

  test('of one chapter lifts no cover of another', async ({ page }) => {
    await guessed(page, 'layers')
    await bench(page)
    await expect(reading(page, 'rise')).toBeHidden()
  })
})

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false })

  test('nothing is covered, and phrases are plain words', async ({ page }) => {
    await page.goto(BEAK)
    await expect(reading(page, 'rise')).toBeVisible()
    await expect(page.locator('.stage-section .drawing')).toBeVisible()
    await expect(page.locator('.cover').first()).toBeHidden()
    const border = await page
      .locator('.phrase')
      .first()
      .evaluate((one) => getComputedStyle(one).borderBottomWidth)
    expect(border).toBe('0px')
  })
})

test.describe('a phrase of the prose', () => {
  test('moves the card, says what was, and puts back the very state it found', async ({ page }) => {
    await guessed(page)
    // A state of the reader's own: another slit, another opening.
    await bench(page, `${BEAK}#beak.cut=36&jaw.cut=36&opening=80`)
    await expect(page.getByRole('textbox', { name: 'Opening', exact: true })).toHaveValue('80.0')
    const rise = await reading(page, 'rise').textContent()
    await phrase(page, '10 mm deeper').click()
    await expect(phrase(page, '10 mm deeper')).toHaveAttribute('aria-pressed', 'true')
    // tan(φ/2) = 52/48 cos 45°, rise = 48 sin φ sin 45°: 32.8 mm.
    await expect(reading(page, 'rise')).toHaveText('32.8')
    await expect(page.locator('.readings [data-reading="rise"] .was')).toContainText(rise ?? '')
    // What takes it back follows it in the order of the keyboard.
    await page.keyboard.press('Tab')
    await expect(page.getByRole('button', { name: 'put it back' })).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(phrase(page, '10 mm deeper')).toBeFocused()
    await expect(reading(page, 'rise')).toHaveText(rise ?? '')
    await expect(page).toHaveURL(/#beak\.cut=36&jaw\.cut=36&opening=80$/)
    await expect(page.getByRole('button', { name: 'put it back' })).toHaveCount(0)
  })

  test('puts the one before it back first', async ({ page }) => {
    await guessed(page)
    await bench(page)
    await phrase(page, 'Open the card flat').click()
    await expect(reading(page, 'rise')).toHaveText('0.0')
    await phrase(page, '10 mm deeper').click()
    await expect(reading(page, 'rise')).toHaveText('32.8')
    await expect(page.getByRole('button', { name: 'put it back' })).toHaveCount(1)
    await page.getByRole('button', { name: 'put it back' }).click()
    // 96 degrees, as the page began.
    await expect(page.getByRole('textbox', { name: 'Opening', exact: true }).first()).toHaveValue('96.0')
  })

  test('lets go once the reader moves what it moved', async ({ page }) => {
    await guessed(page)
    await bench(page)
    await phrase(page, 'Open the card flat').click()
    await expect(reading(page, 'rise')).toHaveText('0.0')
    await page.getByRole('textbox', { name: 'Opening', exact: true }).first().fill('70')
    await expect(phrase(page, 'Open the card flat')).toHaveAttribute('aria-pressed', 'false')
  })

  test('brings a small card when the bench is out of sight, which goes when the bench is back', async ({
    page,
  }) => {
    await guessed(page)
    await bench(page)
    await phrase(page, '10 mm deeper').evaluate((one) => {
      scrollTo(0, scrollY + one.getBoundingClientRect().top - 400)
    })
    await phrase(page, '10 mm deeper').click()
    const strip = page.locator('.phrase-strip')
    await expect(strip).toBeInViewport({ ratio: 0.9 })
    await expect(strip.locator('.phrase-reading')).toContainText('32.8')
    await strip.getByRole('button', { name: 'Up to the bench' }).click()
    await expect(strip).toHaveCount(0)
    await expect(page.locator('.figure-view').first()).toBeInViewport()
  })
})

test('a challenge keeps its tick, shows at the bench when it is met, and on the path', async ({ page }) => {
  await guessed(page)
  // 36 mm high: a ridge of 54 mm and a slit as deep, two thirds of the ridge.
  await bench(page, `${BEAK}#beak.apex=130&beak.run=-54&beak.cut=54&jaw.cut=54`)
  await expect(page.locator('.met-note')).toContainText('A tall beak')
  await page.goto('/chapters/')
  await expect(page.locator('[data-stop="one-slit-two-v-folds"]')).toContainText(
    'You are here. 1 of 3 challenges met.',
  )
  await bench(page)
  const first = page.locator('.challenge').first()
  // It wakes when one comes to it.
  await first.scrollIntoViewIfNeeded()
  await expect(first).toHaveAttribute('data-done', 'true')
  await first.getByRole('link').click()
  await expect(page.locator('.met-note')).toContainText('A tall beak')
})

test('at the back of the room two figures stand side by side', async ({ page }) => {
  await remember(page, 'projector')
  await guessed(page)
  await bench(page)
  for (const [width, height] of [
    [1280, 720],
    [1920, 1080],
  ] as const) {
    await page.setViewportSize({ width, height })
    await page.getByLabel('Figure on the right').selectOption('sheet')
    for (const part of ['.figure-view .stage', '.figure-sheet .stage', '.play', '.lead-reading'])
      await expect(page.locator(part).first(), part).toBeInViewport({ ratio: 1 })
    await expect(page.locator('.figure-section').first()).toBeHidden()
    await page.getByLabel('Figure on the right').selectOption('section')
    await expect(page.locator('.figure-section .stage')).toBeInViewport({ ratio: 1 })
    await expect(page.locator('.figure-sheet')).toBeHidden()
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    )
  }
})

test('on a phone the card and its section stay in sight over a size that is changed', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await guessed(page)
  await bench(page)
  const size = page.locator('.field-row').nth(2).getByRole('slider')
  await size.scrollIntoViewIfNeeded()
  await size.focus()
  for (const part of ['.figure-view .stage', '.figure-section .stage', '.lead-reading'])
    await expect(page.locator(part).first(), part).toBeInViewport({ ratio: 1 })
  await expect(size).toBeInViewport({ ratio: 1 })
  await page.getByRole('radio', { name: 'Chart' }).check({ force: true })
  await expect(page.locator('.figure-chart .stage')).toBeInViewport({ ratio: 0.9 })
})
