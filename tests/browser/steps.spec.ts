// The steps of a card, one at a time: by mouse, by keys, on paper; of the garden's, and of one's own.
import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { figureOf, orderOf } from '../../src/booklet/index.ts'
import type { Drawing } from '../../src/drawing/pen/marks.ts'
import type { Printed } from '../../src/drawing/pen/printed.ts'
import { printed } from '../../src/drawing/pen/printed.ts'
import { dummy } from '../sheet/designs.ts'
import { readPdf } from '../sheet/read-pdf.ts'

const moth = dummy('moth')

const count = (page: Page) => page.locator('.book-count')

const title = (page: Page) => page.locator('.book-words h2')

test('a card of the garden is made step by step: by buttons, by keys, and a link comes back to the step', async ({
  page,
}) => {
  await page.goto('/garden/')
  await page.getByRole('link', { name: 'Owl, step by step' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Owl, step by step')
  await expect(count(page)).toHaveText(/^Step 1 of \d+$/)
  const next = page.getByRole('button', { name: 'Next' })
  const back = page.getByRole('button', { name: 'Back' })
  await expect(back).toHaveAttribute('aria-disabled', 'true')
  const first = await title(page).textContent()
  await next.click()
  await expect(count(page)).toHaveText(/^Step 2 of/)
  await expect(title(page)).not.toHaveText(first ?? '')
  await expect(title(page)).toBeFocused()
  await expect(title(page)).toHaveAccessibleName(/^Step 2 of \d+: /)
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('PageDown')
  await expect(count(page)).toHaveText(/^Step 4 of/)
  await page.keyboard.press('ArrowLeft')
  await expect(count(page)).toHaveText(/^Step 3 of/)
  await page.keyboard.press('End')
  await expect(next).toHaveAttribute('aria-disabled', 'true')
  await page.keyboard.press('Home')
  await expect(back).toHaveAttribute('aria-disabled', 'true')
  await expect(count(page)).toHaveText(/^Step 1 of/)
  await page.keyboard.press('ArrowRight')
  await expect(page).toHaveURL(/#step=2$/)
  await page.reload()
  await expect(count(page)).toHaveText(/^Step 2 of/)
  await expect(page.locator('.book-figure .drawing')).toHaveAccessibleName(/\.$/)
})

test('all steps are on paper, so many to a page as chosen, and gone again after', async ({ page }) => {
  await page.goto('/steps/?from=heron-in-the-reeds')
  await expect(count(page)).toHaveText(/^Step 1 of 8$/)
  await page.getByLabel('to a page').selectOption('6')
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('.book-sheets > li:visible')).toHaveCount(8)
  await expect(page.locator('.book-bar')).toBeHidden()
  // Two pages of A4 for eight steps, six to a page. Each figure keeps its own clips.
  const pdf = await page.pdf({ format: 'A4' })
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBeLessThanOrEqual(3)
  const ids = await page.locator('.book [id]').evaluateAll((all) => all.map(({ id }) => id))
  expect(new Set(ids).size).toBe(ids.length)
  await page.emulateMedia({ media: 'screen' })
  await page.evaluate(() => dispatchEvent(new Event('afterprint')))
  await expect(page.locator('.book-sheets')).toHaveCount(0)
})

test('a dummy of one’s own has its steps; what no address brings is told', async ({ page }) => {
  await page.goto('/dummy/?from=moth')
  await page.locator('.dummy[data-awake="true"]').waitFor()
  await page.getByRole('button', { name: 'Save, open, send' }).click()
  await page.getByRole('button', { name: 'Make it, step by step' }).click()
  await expect(page).toHaveURL(/\/steps\/#d=/)
  await expect(count(page)).toHaveText(/^Step 1 of \d+$/)
  await page.getByRole('button', { name: 'Next' }).click()
  await expect(page).toHaveURL(/#d=[^&]+&step=2$/)
  const here = page.getByRole('navigation').locator('[aria-current]')
  await expect(here).toHaveText('My dummy')
  await page.goto('/steps/?from=dragon')
  await expect(here).toHaveText('Garden')
  await expect(page.getByRole('alert')).toContainText('could not be taken from the garden')
  await page.goto('/steps/#d=1.broken')
  await page.reload()
  await expect(page.getByRole('alert')).toContainText('The link is damaged')
  await expect(page.getByRole('link', { name: 'Owl', exact: true })).toBeVisible()
})

/** The step at which the beak and what else is cut are pushed through. */
const PUSH = '/steps/?from=heron-in-the-reeds#step=4'

const figure = (page: Page) => page.locator('.book-figure .drawing')

test('a step that moves is played: by a button, by Space, by its slider', async ({ page }) => {
  await page.goto(PUSH)
  const slider = page.getByRole('slider', { name: 'How far the motion is' })
  await expect(slider).toHaveAttribute('aria-valuetext', 'card open 110°')
  const still = await figure(page).innerHTML()
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await expect.poll(async () => Number(await slider.inputValue())).toBeGreaterThan(0.1)
  await page.getByRole('button', { name: 'Pause' }).click()
  const at = await slider.inputValue()
  await expect(figure(page)).toHaveAccessibleName(/Now: card open \d+°\.$/)
  await title(page).focus()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible()
  await page.keyboard.press('Space')
  expect(Number(await slider.inputValue())).toBeGreaterThanOrEqual(Number(at))
  // Where the strip comes over, the card lies flat.
  await slider.fill('0.5')
  await expect(slider).toHaveAttribute('aria-valuetext', 'card open 180°')
  await page.getByRole('button', { name: 'Picture' }).click()
  expect(await figure(page).innerHTML()).toBe(still)
  // What lies on the table does not move.
  await page.keyboard.press('Home')
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toHaveCount(0)
})

test('where motion is unwelcome it goes in steps, and says so', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await page.goto(PUSH)
  await expect(page.getByText('It goes in steps, as your device asks.')).toBeVisible()
  const slider = page.getByRole('slider', { name: 'How far the motion is' })
  const next = page.getByRole('button', { name: 'Next position' })
  const seen: (string | null)[] = []
  for (let k = 0; k < 3; k++) {
    await next.click()
    seen.push(await slider.getAttribute('aria-valuetext'))
  }
  expect(seen).toEqual(['card open 110°', 'card open 124°', 'card open 138°'])
  await expect(page.getByRole('button', { name: 'Pause' })).toHaveCount(0)
})

test('a booklet is made beside the page and saved, so many steps to a page', async ({ page }) => {
  await page.goto(PUSH)
  await page.getByLabel('to a page').selectOption('2')
  await page.getByLabel('Paper').selectOption('letter')
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Booklet as PDF' }).click()
  const file = await saved
  expect(file.suggestedFilename()).toBe('heron-in-the-reeds-steps-letter.pdf')
  await expect(page.locator('.book-ways [role="status"]')).toHaveText(/is saved: 4 pages\.$/)
  const { pages } = await readPdf(readFileSync(await file.path()))
  expect(pages.map(({ box }) => box)).toEqual(pages.map(() => [0, 0, 612, 792]))
  expect(pages).toHaveLength(4)
})

/** What a pen without a style sheet makes of a figure, path by path, but for what is drawn on the paper. */
function looks(drawing: Drawing): { role: string; colour: string; alpha: number }[] {
  const lookOf = (role: string, one: Printed | undefined) => {
    const look = one?.what === 'shape' ? (one.fill ?? one.line) : null
    return look ? [{ role, colour: look.colour, alpha: look.alpha }] : []
  }
  return drawing.marks.flatMap((mark) => {
    if (mark.mark !== 'path' || !mark.on) return []
    const [ground, held] = printed({ marks: [mark] })
    const inner = held?.what === 'clip' ? [...held.inner] : []
    const on = mark.on.flatMap((one) => {
      const found = inner.splice(0, one.mark === 'art' ? one.shapes.length : 1)
      return one.mark === 'art' || one.fade ? [] : lookOf(one.role, found[0])
    })
    return [...lookOf(mark.role, ground), ...on]
  })
}

test('what goes into a file has the colours that the style sheet prints', async ({ page }) => {
  // The browser's own CSS is the outside: custom properties, color-mix and calc, computed for each path.
  await page.goto('/steps/?from=moth#step=1')
  await page.emulateMedia({ media: 'print', colorScheme: 'light' })
  const steps = orderOf(moth)
  const number = 1 + steps.findIndex(({ does }) => does === 'open')
  await page.evaluate((n) => location.replace(`/steps/?from=moth#step=${n}`), number)
  await page.reload()
  await expect(count(page)).toHaveText(new RegExp(`^Step ${number} of`))
  const found = await page
    .locator('.book-figure .sheet path[class^="m-"]:not(.m-fade)')
    .evaluateAll((paths) =>
      paths.map((path) => {
        const look = getComputedStyle(path)
        const isLine = look.fill === 'none'
        const text = isLine ? look.stroke : look.fill
        const numbers = text.match(/[\d.]+(?:e-?\d+)?/g)?.map(Number) ?? []
        return {
          role: /m-([a-z]+)/.exec(path.getAttribute('class') ?? '')?.[1] ?? '',
          channels: text.startsWith('color(') ? numbers.slice(0, 3).map((n) => 255 * n) : numbers.slice(0, 3),
          alpha: Number(isLine ? look.strokeOpacity : look.fillOpacity),
        }
      }),
    )
  const work = steps[number - 1]
  if (!work) throw new Error('a moth is opened')
  const wanted = looks(figureOf(moth, work, { width: 560, height: 400 }))
  expect(found.map(({ role }) => role)).toEqual(wanted.map(({ role }) => role))
  expect(new Set(wanted.map(({ role }) => role)).size).toBeGreaterThan(3)
  found.forEach(({ channels, alpha, role }, k) => {
    const { colour, alpha: own } = wanted[k] as (typeof wanted)[number]
    const rgb = [1, 3, 5].map((n) => Number.parseInt(colour.slice(n, n + 2), 16))
    channels.forEach((value, n) => {
      expect(Math.abs(value - (rgb[n] as number)), `${role} ${k}`).toBeLessThan(2)
    })
    expect(alpha, `${role} ${k}`).toBeCloseTo(own, 2)
  })
})
