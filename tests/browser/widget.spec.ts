import { readFileSync } from 'node:fs'
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { open, openBench } from './site.ts'

const BEAK = '/chapters/one-slit-two-v-folds/'

const GUTTER = '/chapters/it-starts-at-the-gutter/'

const bench = (page: Page, address = BEAK): Promise<void> => openBench(page, address)

const slitEnd = (page: Page): Locator => page.getByRole('slider', { name: 'End of the slit' })

const field = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true })

const reading = (page: Page, name: string): Locator =>
  page.locator(`.reading-cell[data-reading="${name}"] .reading-number`)

const card = (page: Page): Locator => page.locator('.stage-view .drawing')

const opening = (page: Page): Locator => field(page, 'Opening')

const number = async (locator: Locator): Promise<number> => Number(await locator.textContent())

const typed = async (locator: Locator): Promise<number> => Number(await locator.inputValue())

async function middle(locator: Locator): Promise<{ x: number; y: number }> {
  const box = await locator.boundingBox()
  if (!box) throw new Error('not on the page')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Screen pixels for each mm of the flat sheet: both apexes lie on the gutter, at 124 and 40 mm. */
async function perMm(page: Page): Promise<number> {
  const [upper, lower] = await Promise.all(
    ['Upper apex', 'Lower apex'].map((name) =>
      middle(page.locator('.stage-sheet').getByRole('slider', { name })),
    ),
  )
  return ((lower?.y ?? 0) - (upper?.y ?? 0)) / 84
}

/** What draws the chart comes when it is seen, and takes over the picture that the page came with. */
const chartIsLive = (page: Page): Promise<void> =>
  expect(page.locator('.figure-chart astro-island[ssr]')).toHaveCount(0)

async function drag(page: Page, from: Locator, dx: number, dy: number): Promise<void> {
  const { x, y } = await middle(from)
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 })
  await page.mouse.move(x + dx, y + dy, { steps: 4 })
  await page.mouse.up()
}

test.describe('the hand', () => {
  test('a mouse drags the slit: the fields, the readings and the address follow', async ({ page }) => {
    await bench(page)
    const rise = await number(reading(page, 'rise'))
    await drag(page, slitEnd(page), 10 * (await perMm(page)), 0)
    expect(Math.abs((await typed(field(page, 'Slit'))) - 52)).toBeLessThanOrEqual(0.3)
    expect(await number(reading(page, 'rise'))).toBeGreaterThan(rise)
    await expect(page).toHaveURL(/#beak\.cut=5[12]/)
  })

  test('while it is dragged the handle is held and its number rides beside it', async ({ page }) => {
    await bench(page)
    const { x, y } = await middle(slitEnd(page))
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 20, y, { steps: 4 })
    await expect(slitEnd(page)).toHaveAttribute('data-held', 'true')
    const rides = slitEnd(page).locator('.grip-rides')
    await expect(rides).toBeVisible()
    await expect(rides).toHaveText(`slit ${await field(page, 'Slit').inputValue()} mm, lean 0.0 mm`)
    await page.mouse.up()
    await expect(rides).toBeHidden()
  })

  test('escape in mid-drag brings back what was there', async ({ page }) => {
    await bench(page)
    const { x, y } = await middle(slitEnd(page))
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 30, y, { steps: 4 })
    await page.keyboard.press('Escape')
    await page.mouse.up()
    expect(await typed(field(page, 'Slit'))).toBe(42)
    await expect(page.getByRole('button', { name: 'Undo' })).toHaveAttribute('aria-disabled', 'true')
  })

  test('keys on the handle do what the mouse and the field do; focus stays', async ({ page }) => {
    await bench(page)
    await drag(page, slitEnd(page), 10 * (await perMm(page)), 0)
    const dragged = await typed(field(page, 'Slit'))
    await field(page, 'Slit').fill(`${dragged}`)
    // The address follows a little later, so that a drag does not flood the browser's history.
    await expect(page).toHaveURL(/#.*beak\.cut=/)
    await page.waitForTimeout(450)
    const byMouse = page.url()
    await page.getByRole('button', { name: 'Start again' }).click()
    await slitEnd(page).focus()
    for (let k = 0; k < 10; k++) await page.keyboard.press('ArrowRight')
    await expect(slitEnd(page)).toHaveAttribute('aria-valuetext', 'slit 52.0 mm, lean 0.0 mm')
    const steps = Math.round((dragged - 52) * 10)
    for (let k = 0; k < Math.abs(steps); k++)
      await page.keyboard.press(steps > 0 ? 'Alt+ArrowRight' : 'Alt+ArrowLeft')
    await expect(slitEnd(page)).toBeFocused()
    await expect(page).toHaveURL(byMouse)
  })

  test('what is spoken lies in the range that is spoken', async ({ page }) => {
    await bench(page, '/chapters/cut-on-the-new-folds/')
    // On a slanting fold there is more room than the card is wide.
    const slit = page.getByRole('slider', { name: 'End of the eye’s slit' })
    await slit.focus()
    for (const key of ['Home', 'End']) {
      const before = await slit.getAttribute('aria-valuenow')
      await page.keyboard.press(key)
      await expect(slit).not.toHaveAttribute('aria-valuenow', before ?? '')
      const [min, now, max] = await Promise.all(
        ['valuemin', 'valuenow', 'valuemax'].map(async (part) =>
          Number(await slit.getAttribute(`aria-${part}`)),
        ),
      )
      expect(now).toBeGreaterThanOrEqual(min ?? Number.NaN)
      expect(now).toBeLessThanOrEqual(max ?? Number.NaN)
    }
  })

  test('shift takes tens, home and end the ends of the range', async ({ page }) => {
    await bench(page)
    await slitEnd(page).focus()
    await page.keyboard.press('Shift+ArrowRight')
    await expect(slitEnd(page)).toHaveAttribute('aria-valuetext', /^slit 52\.0 mm/)
    await page.keyboard.press('Home')
    await expect(slitEnd(page)).toHaveAttribute('aria-valuetext', /^slit 0\.0 mm/)
    await page.keyboard.press('End')
    await expect(slitEnd(page)).toHaveAttribute('aria-valuetext', /^slit 105\.0 mm/)
  })

  test('the card opens and shuts when it is dragged; the table turns it', async ({ page }) => {
    await bench(page)
    const before = await typed(opening(page))
    const edge = page.getByRole('slider', { name: 'Opening, by the edge of the page' })
    await drag(page, edge, -30, -60)
    expect(await typed(opening(page))).not.toBe(before)
    const opened = await typed(opening(page))
    const stage = await page.locator('.stage-view').boundingBox()
    if (!stage) throw new Error('no stage')
    // Flat, the card fills the picture but for its rim.
    await page.mouse.move(stage.x + 5, stage.y + 5)
    await page.mouse.down()
    await page.mouse.move(stage.x + 85, stage.y + 5, { steps: 4 })
    await page.mouse.up()
    expect(await typed(opening(page))).toBe(opened)
    await expect(page).toHaveURL(/turn=/)
  })

  test('opening the card draws what moves, and neither its sheet nor the curve of its chart', async ({
    page,
  }) => {
    await bench(page)
    await expect(page.locator('.stage-chart .grip')).toBeVisible()
    await page.locator('.figure-chart').scrollIntoViewIfNeeded()
    await chartIsLive(page)
    await page.evaluate(() => {
      const changed: string[] = []
      Object.assign(globalThis, { changed })
      const watch = new MutationObserver((list) => {
        for (const { target } of list) {
          const element = target instanceof Element ? target : target.parentElement
          const stage = element?.closest('.stage')?.className
          // The line where the section is cut follows the tip.
          if (stage && element?.closest('svg') && !element.matches('svg, [data-of="section"]'))
            changed.push(`${stage} ${element.getAttribute('class')}`)
        }
      })
      for (const stage of document.querySelectorAll('.stage'))
        watch.observe(stage, { subtree: true, childList: true, attributes: true, characterData: true })
    })
    const before = await typed(opening(page))
    const grip = page.getByRole('slider', { name: 'Opening, on the chart' })
    const { x, y } = await middle(grip)
    await page.mouse.move(x, y)
    await page.mouse.down()
    for (let k = 1; k <= 5; k++) await page.mouse.move(x + 6 * k, y)
    await page.mouse.up()
    await expect.poll(() => typed(opening(page))).toBeGreaterThan(before)
    const changed = await page.evaluate(() => (globalThis as unknown as { changed: string[] }).changed)
    expect(changed.filter((one) => one.includes('stage-view')).length).toBeGreaterThan(10)
    expect(changed.filter((one) => one.includes('stage-sheet'))).toEqual([])
    expect(changed.filter((one) => one.includes('m-curve') && !one.includes('circle'))).toEqual([])
  })

  test('the dot of the chart is the opening', async ({ page }) => {
    await bench(page)
    const dot = page.getByRole('slider', { name: 'Opening, on the chart' })
    await page.locator('.figure-chart').scrollIntoViewIfNeeded()
    await chartIsLive(page)
    await drag(page, dot, 60, 0)
    expect(await typed(opening(page))).toBeGreaterThan(100)
    await dot.focus()
    await page.keyboard.press('Home')
    await expect(opening(page)).toHaveValue('0.0')
  })

  test('the section is cut where the arrow or the slider stands', async ({ page }) => {
    await bench(page)
    const arrow = page.getByRole('slider', { name: 'Where the section is cut', exact: true })
    await drag(page, arrow, 0, 40)
    const slider = page.getByRole('slider', { name: 'Where the section is cut, along the gutter' })
    expect(Number(await slider.inputValue())).toBeLessThan(95)
    await expect(page.getByRole('button', { name: 'Stay at the tip' })).toHaveAttribute(
      'aria-pressed',
      'false',
    )
    await page.getByRole('button', { name: 'Stay at the tip' }).click()
    expect(Number(await slider.inputValue())).toBeCloseTo(await number(reading(page, 'reach')), 0)
  })

  test('the point of a bare card is dragged too', async ({ page }) => {
    await bench(page, GUTTER)
    await page.getByRole('slider', { name: 'Point' }).focus()
    for (let k = 0; k < 10; k++) await page.keyboard.press('ArrowLeft')
    await opening(page).fill('60')
    // A chord: at 60 degrees it is as long as the radius.
    await expect(reading(page, 'gape')).toHaveText('50.0')
  })
})

test.describe('the finger', () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } })

  /** A finger goes from a place by some pixels. */
  async function swipe(page: Page, x: number, y: number, dx: number, dy: number): Promise<void> {
    const client = await page.context().newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', px: number, py: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: px, y: py }],
      })
    await touch('touchStart', x, y)
    for (let k = 1; k <= 8; k++) await touch('touchMove', x + (dx * k) / 8, y + (dy * k) / 8)
    await touch('touchEnd', x + dx, y + dy)
  }

  test('finds a bench that woke by itself, once the page had come and was painted', async ({ page }) => {
    let loaded = false
    let early = false
    page.on('load', () => {
      loaded = true
    })
    page.on('request', (request) => {
      if (/\/bench\.[^/]*\.js$/.test(request.url())) early = !loaded
    })
    // A picture that takes its time: the page has not come before it.
    await page.route('**/pictures/*.svg', async (route) => {
      await new Promise((done) => setTimeout(done, 600))
      await route.continue()
    })
    await page.goto('/chapters/one-slit-two-v-folds/')
    await page.locator('.bench[data-awake="true"]').waitFor()
    expect(early).toBe(false)
    // Drawn for this screen, not shrunk: its words are as large as they are read.
    await expect
      .poll(() =>
        page
          .locator('.stage-sheet')
          .evaluate((stage) => stage.clientWidth - (stage.querySelector('svg')?.viewBox.baseVal.width ?? 0)),
      )
      .toBeCloseTo(0, 1)
  })

  test('one figure is large, the card stays pinned; the switch, the opening and the rise stay in sight', async ({
    page,
  }) => {
    await bench(page)
    await expect(page.locator('.figure-sheet')).toBeVisible()
    await expect(page.locator('.figure-chart')).toBeHidden()
    const small = await page.locator('.stage-view').boundingBox()
    await page.getByRole('radio', { name: 'Standing card' }).check({ force: true })
    await expect(page.locator('.figure-sheet')).toBeHidden()
    const large = await page.locator('.stage-view').boundingBox()
    expect(large?.height ?? 0).toBeGreaterThan(1.5 * (small?.height ?? 0))
    await page.getByRole('radio', { name: 'Flat sheet' }).check({ force: true })
    for (const name of ['Slit', 'Lean of the slit']) {
      await field(page, name).scrollIntoViewIfNeeded()
      for (const part of ['.stage-view', '.figure-switch', '.play', '.lead-reading'])
        await expect(page.locator(part)).toBeInViewport({ ratio: 1 })
    }
  })

  test('a finger drags the slit to where the mouse would', async ({ page }) => {
    await bench(page)
    await page.getByRole('radio', { name: 'Flat sheet' }).check()
    const { x, y } = await middle(slitEnd(page))
    await swipe(page, x, y, 10 * (await perMm(page)), 0)
    expect(Math.abs((await typed(field(page, 'Slit'))) - 52)).toBeLessThanOrEqual(0.4)
    expect(await page.evaluate(() => scrollY)).toBe(0)
  })

  test('where dots lie close together the one under the finger is dragged', async ({ page }) => {
    await bench(page, '/chapters/pieces-that-sweep/')
    await page.getByRole('radio', { name: 'Flat sheet' }).check()
    // A crowded sheet shows one part at a time: all of them are asked for.
    await page.getByLabel('Pieces shown on the flat sheet').selectOption('')
    const [cloud, tree] = ['Cloud', 'Tree'].map((name) => page.getByRole('slider', { name, exact: true }))
    if (!cloud || !tree) throw new Error('no dots')
    const [from, other] = [await middle(cloud), await middle(tree)]
    // They lie nearer to each other than a fingertip is wide: WCAG 2.2, 2.5.5 asks for 44 px.
    expect(Math.hypot(from.x - other.x, from.y - other.y)).toBeLessThan(44)
    const stays = await tree.getAttribute('aria-valuetext')
    const goes = await cloud.getAttribute('aria-valuetext')
    await swipe(page, from.x, from.y, 10, 6)
    await expect(cloud).not.toHaveAttribute('aria-valuetext', goes ?? '')
    await expect(cloud).toBeFocused()
    await expect(tree).toHaveAttribute('aria-valuetext', stays ?? '')
  })

  test('a finger that goes up the picture scrolls the page and changes nothing', async ({ page }) => {
    await bench(page)
    const { x, y } = await middle(page.locator('.stage-view'))
    await swipe(page, x - 60, y + 60, 0, -220)
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(60)
    expect(await typed(opening(page))).toBe(96)
  })

  test('what is pressed is at least 44 px high or wide where fingers work', async ({ page }) => {
    await bench(page)
    await page.getByRole('radio', { name: 'Flat sheet' }).check()
    await page.locator('.aim summary').click()
    await page.locator('.aim').getByRole('textbox', { name: 'Rise' }).fill('36')
    await page.getByRole('button', { name: 'Work it out' }).click()
    await expect(page.getByRole('button', { name: /^Use this/ })).toBeVisible()
    await page.locator('.measure-more summary').click()
    const small = await page.evaluate(() =>
      matchMedia('(pointer: coarse)').matches
        ? [
            ...document.querySelectorAll(
              '.bench :is(.grip, .play, .field-number button, .figure-switch label), :is(.aim, .measure-yours) :is(summary, input, button)',
            ),
          ]
            .map((element) => ({ element, box: element.getBoundingClientRect() }))
            .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
            .map(({ element, box }) => `${element.className} ${box.width}x${box.height}`)
        : [],
    )
    expect(small).toEqual([])
  })
})

test.describe('where the tip should be', () => {
  const panel = (page: Page): Locator => page.locator('.aim')
  const wish = (page: Page, name: string): Locator => panel(page).getByRole('textbox', { name, exact: true })
  const told = (page: Page): Locator => panel(page).getByRole('status')
  const uses = (page: Page): Locator => panel(page).getByRole('button', { name: /^Use this/ })
  const ask = (page: Page): Locator => panel(page).getByRole('button', { name: 'Work it out' })

  test('by mouse: two numbers, a way for each button, and one step to undo', async ({ page }) => {
    await bench(page)
    await opening(page).fill('90')
    await opening(page).blur()
    await page.getByText('Where do you want the tip?').first().click()
    await expect(wish(page, 'Rise')).toHaveAttribute(
      'placeholder',
      (await reading(page, 'rise').textContent()) ?? '',
    )
    await wish(page, 'Rise').fill('35')
    await wish(page, 'Reach').fill('95')
    await ask(page).click()
    await expect(told(page)).toHaveText(/^There are \d ways\./)
    await expect(uses(page).first()).toHaveAccessibleName(
      /: Slit 46\.5 mm instead of 42\.0 mm, and place of the slit/,
    )
    await uses(page).first().click()
    await expect(told(page)).toHaveText(
      /^Done\. The tip stands (34\.9|35\.\d) mm high and (94\.9|95\.\d) mm along/,
    )
    await expect(uses(page)).toHaveCount(0)
    await expect(field(page, 'Slit')).toHaveValue('46.5')
    expect(Math.abs((await number(reading(page, 'rise'))) - 35)).toBeLessThanOrEqual(0.1)
    expect(Math.abs((await number(reading(page, 'reach'))) - 95)).toBeLessThanOrEqual(0.1)
    await expect(page.locator('.fault-note')).toHaveAttribute('data-state', 'good')
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect(field(page, 'Slit')).toHaveValue('42.0')
    await expect(opening(page)).toHaveValue('90.0')
  })

  test('by keyboard alone', async ({ page }) => {
    await bench(page)
    await panel(page).locator('summary').first().focus()
    await page.keyboard.press('Enter')
    await expect(ask(page)).toBeVisible()
    await page.keyboard.press('Tab')
    await expect(wish(page, 'Rise')).toBeFocused()
    await page.keyboard.type('36')
    await page.keyboard.press('Enter')
    await expect(told(page)).toHaveText('There is one way.')
    for (let k = 0; k < 3; k++) await page.keyboard.press('Tab')
    await expect(uses(page)).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(told(page)).toHaveText('Done. The tip stands 36.0 mm high now.')
    // The button is gone: the focus went to what was said.
    await expect(told(page)).toBeFocused()
    await page.keyboard.press('Control+z')
    await expect(reading(page, 'rise')).toHaveText('31.1')
  })

  test('what is out of range is told with the field and the range, and stays to be mended', async ({
    page,
  }) => {
    await bench(page)
    await page.getByText('Where do you want the tip?').first().click()
    await ask(page).click()
    await expect(told(page)).toHaveText('Type a rise, a reach, or both.')
    await wish(page, 'Reach').fill('far')
    await ask(page).click()
    await expect(told(page)).toHaveText('Reach goes from 0.0 mm to 148.0 mm.')
    await expect(wish(page, 'Reach')).toBeFocused()
    await expect(wish(page, 'Reach')).toHaveValue('far')
    await expect(wish(page, 'Reach')).toHaveAttribute('aria-invalid', 'true')
    await wish(page, 'Reach').fill('95')
    await expect(wish(page, 'Reach')).toHaveAttribute('aria-invalid', 'false')
  })

  test('out of reach it offers the nearest that works as paper; pictures go on meanwhile', async ({
    page,
  }) => {
    await bench(page, '/chapters/tents-and-floating-layers/')
    await page.getByText('Where do you want the ridge?').first().click()
    await wish(page, 'Rise').fill('100')
    await wish(page, 'Reach').fill('140')
    const pictures = page.evaluate(
      () =>
        new Promise<number>((done) => {
          let count = 0
          const look = () => {
            const says = document.querySelector('.aim-says')?.textContent ?? ''
            if (says.startsWith('Working')) count++
            if (says.startsWith('That')) done(count)
            else requestAnimationFrame(look)
          }
          look()
        }),
    )
    await ask(page).click()
    await expect(told(page)).toHaveText(
      /^That is out of reach\. The nearest that still works as paper: the ridge stands/,
    )
    expect(await pictures).toBeGreaterThan(4)
    await uses(page).click()
    await expect(told(page)).toHaveText(/^Done\. The ridge stands/)
    await expect(page.locator('.fault-note')).toHaveAttribute('data-state', 'good')
  })

  test('an answer goes with the card it was given for', async ({ page }) => {
    await bench(page)
    await page.getByText('Where do you want the tip?').first().click()
    await wish(page, 'Rise').fill('36')
    await ask(page).click()
    await expect(uses(page)).toHaveCount(1)
    await page.getByRole('button', { name: 'Slit: more', exact: true }).click()
    await expect(uses(page)).toHaveCount(0)
    await expect(told(page)).toBeEmpty()
    await expect(wish(page, 'Rise')).toHaveValue('36')
  })

  test('in inches it takes and tells inches', async ({ page }) => {
    await bench(page)
    await page.getByRole('button', { name: 'inch', exact: true }).click()
    await page.getByText('Where do you want the tip?').first().click()
    await wish(page, 'Rise').fill('1.42')
    await ask(page).click()
    await expect(uses(page)).toHaveAccessibleName(
      /place of the slit 2\.\d\d in along the fold instead of 2\.99 in/i,
    )
  })

  test('a bare card has no tip to move', async ({ page }) => {
    await bench(page, GUTTER)
    await expect(panel(page)).toHaveCount(0)
  })
})

test.describe('the numbers', () => {
  test('slit and wedge: set one, the other follows', async ({ page }) => {
    await bench(page)
    await field(page, 'Upper wedge angle').fill('45')
    // 45 degrees: the slit is as deep as the apex is away from it, 48 mm.
    await expect(field(page, 'Slit')).toHaveValue('48.0')
    await field(page, 'Slit').fill('30')
    await field(page, 'Slit').blur()
    const wedge = (Math.atan2(30, 48) * 180) / Math.PI
    await expect(field(page, 'Upper wedge angle')).toHaveValue(wedge.toFixed(1))
  })

  test('a choice whose words are long has room for them', async ({ page }) => {
    for (const width of [1280, 1024, 390]) {
      await page.setViewportSize({ width, height: 720 })
      await openBench(page, '/chapters/paper-itself/')
      const row = page.locator('.field-choice').first()
      const box = async (locator: Locator) =>
        (await locator.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 }
      const [whole, first, second] = [
        await box(row),
        await box(row.locator('.press').first()),
        await box(row.locator('.press').last()),
      ]
      expect(first.x).toBeGreaterThanOrEqual(whole.x)
      expect(second.x).toBeGreaterThanOrEqual(first.x + first.width)
      expect(second.x + second.width).toBeLessThanOrEqual(whole.x + whole.width + 0.5)
    }
  })

  test('plus and minus are the way without dragging', async ({ page }) => {
    await bench(page)
    await page.getByRole('button', { name: 'Slit: more', exact: true }).click()
    await expect(field(page, 'Slit')).toHaveValue('43.0')
    await page.getByRole('button', { name: 'Slit: less', exact: true }).click({ clickCount: 2 })
    await expect(field(page, 'Slit')).toHaveValue('41.0')
  })

  test('a number out of range is told with the range, and changes nothing', async ({ page }) => {
    await bench(page)
    await field(page, 'Slit').fill('400')
    await expect(page.getByText('Slit goes from 10.0 mm to 90.0 mm.')).toBeVisible()
    await expect(field(page, 'Slit')).toHaveValue('400')
    // It stays to be read and mended, wherever the focus goes.
    for (const leave of [() => page.keyboard.press('Enter'), () => field(page, 'Slit').blur()]) {
      await leave()
      await expect(page.getByText('Slit goes from 10.0 mm to 90.0 mm.')).toBeVisible()
      await expect(field(page, 'Slit')).toHaveValue('400')
      await expect(field(page, 'Slit')).toHaveAttribute('aria-invalid', 'true')
    }
    expect(new URL(page.url()).hash).toBe('')
    await field(page, 'Slit').fill('40')
    await expect(page.getByText('Slit goes from 10.0 mm to 90.0 mm.')).toBeHidden()
    await field(page, 'Slit').blur()
    await expect(field(page, 'Slit')).toHaveValue('40.0')
  })

  test('what was typed wrong goes with Escape, and when the number is set in another way', async ({
    page,
  }) => {
    await bench(page)
    const said = page.getByText('Slit goes from 10.0 mm to 90.0 mm.')
    await field(page, 'Slit').fill('many')
    await field(page, 'Slit').blur()
    await expect(said).toBeVisible()
    await field(page, 'Slit').press('Escape')
    await expect(said).toBeHidden()
    await expect(field(page, 'Slit')).toHaveValue('42.0')
    await field(page, 'Slit').fill('500')
    await page.getByRole('button', { name: 'Slit: more', exact: true }).click()
    await expect(said).toBeHidden()
    await expect(field(page, 'Slit')).toHaveValue('43.0')
  })

  test('nothing is refused while a number is still being typed', async ({ page }) => {
    await bench(page)
    await field(page, 'Slit').fill('')
    await field(page, 'Slit').press('4')
    await expect(page.locator('.fields .refusal')).toHaveCount(0)
    await field(page, 'Slit').press('5')
    await expect(reading(page, 'rise')).not.toHaveText('31.1')
    await field(page, 'Slit').fill('4')
    await field(page, 'Slit').press('Enter')
    await expect(page.getByText('Slit goes from 10.0 mm to 90.0 mm.')).toBeVisible()
  })

  test('a comma, and a unit of the reader’s own, are understood', async ({ page }) => {
    await bench(page)
    for (const [text, shows] of [
      ['4.5 cm', '45.0'],
      ['41,5', '41.5'],
      ['2 in', '50.8'],
    ] as const) {
      await field(page, 'Slit').fill(text)
      await field(page, 'Slit').press('Enter')
      await expect(field(page, 'Slit')).toHaveValue(shows)
    }
  })

  test('inches are remembered', async ({ page }) => {
    await bench(page)
    await page.getByRole('button', { name: 'inch' }).click()
    await expect(field(page, 'Slit')).toHaveValue((42 / 25.4).toFixed(2))
    await page.reload()
    // A page that is only looked at sleeps: a hand wakes it.
    await page.mouse.move(7, 7)
    await page.mouse.move(8, 8)
    await expect(field(page, 'Slit')).toHaveValue((42 / 25.4).toFixed(2))
  })

  test('what a reading means is told on hover and on focus, and escape puts it away', async ({ page }) => {
    await bench(page)
    const says = page.getByText('Stand a ruler on the page, square to it, and read the tip.')
    await expect(says).toBeHidden()
    await page.locator('.readings').getByRole('button', { name: 'Rise' }).hover()
    await expect(says).toBeVisible()
    await page.mouse.move(0, 0)
    await expect(says).toBeHidden()
    await page.locator('.readings').getByRole('button', { name: 'Rise' }).focus()
    await expect(says).toBeVisible()
    await page.keyboard.press('Escape')
    await expect(says).toBeHidden()
  })
})

test.describe('motion', () => {
  test('nothing moves by itself; play opens and shuts the card until pause', async ({ page }) => {
    await bench(page)
    await page.waitForTimeout(400)
    expect(await typed(opening(page))).toBe(96)
    await page.getByRole('button', { name: 'Open and shut the card' }).click()
    await expect.poll(() => typed(opening(page))).toBeGreaterThan(110)
    await page.getByRole('button', { name: 'Pause' }).click()
    const rested = await typed(opening(page))
    await page.waitForTimeout(300)
    expect(await typed(opening(page))).toBe(rested)
  })

  test('with reduced motion play goes by steps', async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await bench(page)
    await expect(page.getByText('One press, one step of 15°')).toBeVisible()
    await page.getByRole('button', { name: 'Open and shut the card, step by step' }).click()
    await expect(opening(page)).toHaveValue('111.0')
    await page.waitForTimeout(300)
    await expect(opening(page)).toHaveValue('111.0')
  })
})

test.describe('where the card stops', () => {
  const MOTH = '/chapters/a-v-fold-of-its-own-card/'
  // Facets of 45 on bases of 60 degrees are pulled tight at arccos(-1/3) = 109.47 degrees.
  const STOPPED = `${MOTH}#moth.left.base=60&moth.right.base=60`
  const SAYS = 'The moth stops the card at 109.4°, 70.6° short of flat.'

  const slider = (page: Page): Locator =>
    page.locator('.opening-bar').getByRole('slider', { name: 'Opening' })

  const said = (page: Page): Locator => page.locator('.opening-stop')

  test('keys, slider, typing and the chart end there, and it is said what stops it', async ({ page }) => {
    await bench(page, STOPPED)
    await expect(opening(page)).toHaveValue('109.4')
    await expect(slider(page)).toHaveAccessibleDescription(/from 0° \(shut\) to 109\.4°/)
    await slider(page).focus()
    await page.keyboard.press('Home')
    await expect(opening(page)).toHaveValue('0.0')
    await expect(said(page)).toBeEmpty()
    await page.keyboard.press('End')
    await expect(opening(page)).toHaveValue('109.4')
    await expect(said(page)).toHaveText(SAYS)
    await expect(said(page)).toHaveRole('status')
    // Pressed on far to the right of the stop, the thumb is back at it.
    const box = await slider(page).boundingBox()
    await page.mouse.click((box?.x ?? 0) + (box?.width ?? 0) - 4, (box?.y ?? 0) + (box?.height ?? 0) / 2)
    await expect(slider(page)).toHaveValue('109.4')
    await expect(said(page)).toHaveText(SAYS)
    await opening(page).fill('150')
    await expect(page.locator('.opening-bar .refusal')).toContainText(SAYS)
    await expect(slider(page)).toHaveValue('109.4')
    await opening(page).fill('90')
    await expect(slider(page)).toHaveValue('90')
    await expect(said(page)).toBeEmpty()
    const dot = page.getByRole('slider', { name: 'Opening, on the chart' })
    await dot.scrollIntoViewIfNeeded()
    await chartIsLive(page)
    await drag(page, dot, 200, 0)
    await expect(opening(page)).toHaveValue('109.4')
    await expect(dot).toHaveAttribute('aria-valuemax', '109.4')
    await expect(said(page)).toHaveText(SAYS)
  })

  test('an opening that a link asks for is brought in, and told', async ({ page }) => {
    await bench(page, `${STOPPED}&opening=150`)
    await expect(opening(page)).toHaveValue('109.4')
    await expect(page.locator('.bench-notes')).toContainText(
      `The link asks for an opening of 150°, which this card does not reach. ${SAYS} It is shown at 109.4°.`,
    )
  })

  test('the opening follows a size that makes the card stop sooner', async ({ page }) => {
    await bench(page, MOTH)
    await opening(page).fill('180')
    await opening(page).blur()
    await field(page, 'Base angle').fill('60')
    await field(page, 'Base angle').blur()
    await expect(opening(page)).toHaveValue('109.4')
    await expect(said(page)).toHaveText(SAYS)
    await page.keyboard.press('Control+z')
    await expect(opening(page)).toHaveValue('180.0')
    await expect(said(page)).toBeEmpty()
  })

  test('play goes to the stop and back', async ({ page }) => {
    await bench(page, STOPPED)
    await page.getByRole('button', { name: 'Open and shut the card' }).click()
    await page.waitForTimeout(1500)
    await page.getByRole('button', { name: 'Pause' }).click()
    const at = await typed(opening(page))
    expect(at).toBeLessThan(109.4)
    expect(at).toBeGreaterThanOrEqual(0)
  })
})

test.describe('checks', () => {
  test('a fault is told and shown, its repair mends it, and undo brings it back', async ({ page }) => {
    await bench(page)
    await slitEnd(page).focus()
    await page.keyboard.press('End')
    const repair = page.locator('.repair').first()
    await expect(repair).toBeVisible()
    await expect(page.locator('.drawing .m-fault').first()).toBeAttached()
    const says = (await repair.textContent()) ?? ''
    expect(says).toMatch(/^Make the .+ -?−?\d+\.\d( mm|°)$/)
    const sentence = await page.locator('.fault-note li > span').first().textContent()
    await repair.click()
    await expect(page.getByText(sentence ?? '')).toHaveCount(0)
    await expect(page.locator('.fault-note')).toBeFocused()
    await page.keyboard.press('Control+z')
    await expect(page.locator('.repair').first()).toHaveText(says)
  })

  test('of paper that would lie inside its page no rise below nought is told', async ({ page }) => {
    await bench(page, '/chapters/a-v-fold-of-its-own-card/')
    await field(page, 'Left base angle alone').fill('50')
    await field(page, 'Right facet angle alone').fill('50')
    await page.getByRole('button', { name: 'Still down' }).click()
    await expect(reading(page, 'rise')).toHaveText(/^\d+\.\d$/)
  })

  test('a repair names the size as it stands among the sizes', async ({ page }) => {
    await bench(page, '/chapters/pieces-that-sweep/')
    await field(page, 'Moon: width').fill('90')
    await expect(page.locator('.repair').first()).toHaveText(/^Set “Moon: width” to \d+\.\d mm$/)
  })

  test('of a card that cannot shut no margin is told as if it could', async ({ page }) => {
    await bench(page, '/chapters/why-it-shuts-flat/')
    const margin = page.locator('.readings [data-reading="margin"] dd')
    await expect(margin).toHaveText(/^inside by \d/)
    await page.getByRole('button', { name: 'right foot 8 mm longer', exact: true }).click()
    await expect(page.locator('.fault-note')).toContainText('cannot shut flat')
    await expect(margin).toHaveText(/^would be inside by \d/)
  })

  test('a fault moves nothing on the page', async ({ page }) => {
    await bench(page)
    const place = () =>
      page.locator('.figure-section').evaluate((element) => element.getBoundingClientRect().top)
    const before = await place()
    await drag(page, slitEnd(page), 55 * (await perMm(page)), -20)
    await expect(page.locator('.fault-note')).toHaveAttribute('data-state', 'fault')
    expect(await place()).toBe(before)
  })

  test('it is spoken once the hands rest', async ({ page }) => {
    await bench(page)
    await slitEnd(page).focus()
    await page.keyboard.press('End')
    await expect(page.locator('.fault-note [aria-live]')).not.toHaveText('')
    await page.keyboard.press('Control+z')
    await expect(page.locator('.fault-note [aria-live]')).toHaveText(/It works as paper/)
  })
})

test('which way a part goes is told anew when the card is changed, and as before when that is undone', async ({
  page,
}) => {
  await bench(page, '/chapters/v-on-v/')
  const says = page.locator('.way-note p').first()
  const before = (await says.textContent()) ?? ''
  expect(before).toMatch(/the left wing goes up by [\d.]+ mm/)
  const wing = field(page, 'Left wing: base angle')
  await wing.fill('20')
  await wing.press('Enter')
  await expect(says).not.toHaveText(before)
  await expect(says).toContainText('the left wing goes')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(says).toHaveText(before)
})

test.describe('state', () => {
  test('a link brings the state back, and leaving and returning too', async ({ page, context }) => {
    await bench(page)
    await drag(page, slitEnd(page), 24, -12)
    await opening(page).fill('120')
    await expect(page).toHaveURL(/opening=120/)
    const drawn = (on: Page): Promise<(string | null)[]> =>
      card(on)
        .locator('path')
        .evaluateAll((paths) =>
          paths.map((path) => `${path.getAttribute('class')} ${path.getAttribute('d')}`),
        )
    const [svg, link] = [await drawn(page), page.url()]
    const other = await context.newPage()
    await bench(other, link)
    await expect(opening(other)).toHaveValue('120.0')
    await expect.poll(() => drawn(other)).toEqual(svg)
    await page.goto('/chapters/')
    await page.goBack()
    await expect(opening(page)).toHaveValue('120.0')
    await expect.poll(() => drawn(page)).toEqual(svg)
  })

  test('a bad link is told by field and range, and loses nothing else', async ({ page }) => {
    await bench(page, `${BEAK}#beak.cut=9000&opening=120`)
    await expect(page.getByText('must be a number from 0 to 105 mm, not “9000”')).toBeVisible()
    await expect(opening(page)).toHaveValue('120.0')
    await expect(field(page, 'Slit')).toHaveValue('42.0')
  })

  test('a place of the page in the address is left alone', async ({ page }) => {
    await bench(page, `${BEAK}#predict`)
    await page.waitForTimeout(450)
    expect(new URL(page.url()).hash).toBe('#predict')
    await expect(page.locator('.bench-notes p')).toHaveCount(0)
  })

  test('undo and redo by button and by key; a field that is typed in keeps its own', async ({ page }) => {
    await bench(page)
    const undo = page.getByRole('button', { name: 'Undo' })
    await drag(page, slitEnd(page), 24, 0)
    const dragged = await field(page, 'Slit').inputValue()
    await undo.click()
    await expect(field(page, 'Slit')).toHaveValue('42.0')
    await expect(undo).toBeFocused()
    await page.keyboard.press('Control+Shift+z')
    await expect(field(page, 'Slit')).toHaveValue(dragged)
    await page.keyboard.press('Control+z')
    await expect(field(page, 'Slit')).toHaveValue('42.0')
    await page.getByRole('button', { name: 'Redo' }).click()
    await field(page, 'Lean of the slit').focus()
    await page.keyboard.press('Control+z')
    await expect(field(page, 'Slit')).toHaveValue(dragged)
  })

  test('the link is copied', async ({ page, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await bench(page)
    await opening(page).fill('120')
    await page.getByRole('button', { name: 'Copy the link' }).click()
    await expect(page.getByText('The link is copied.')).toBeVisible()
    expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/#opening=120$/)
  })

  test('a bench that goes in mid-drag leaves nothing running', async ({ page }) => {
    const errors: string[] = []
    page.on('pageerror', (error) => errors.push(error.message))
    await bench(page)
    const { x, y } = await middle(slitEnd(page))
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 20, y, { steps: 3 })
    await page.evaluate(() => {
      const island = document.querySelector('.bench')?.closest('astro-island')
      island?.dispatchEvent(new CustomEvent('astro:unmount'))
      island?.remove()
    })
    await page.mouse.move(x + 40, y + 10, { steps: 3 })
    await page.mouse.up()
    await page.waitForTimeout(500)
    expect(errors).toEqual([])
    expect(new URL(page.url()).hash).toBe('')
    const frames = await page.evaluate(async () => {
      const ask = globalThis.requestAnimationFrame
      let asked = 0
      globalThis.requestAnimationFrame = (run) => {
        asked++
        return ask(run)
      }
      await new Promise((done) => setTimeout(done, 200))
      globalThis.requestAnimationFrame = ask
      return asked
    })
    expect(frames).toBe(0)
  })
})

test.describe('beside the bench', () => {
  test('a challenge says how far it is to go, and ticks itself when it is done', async ({ page }) => {
    await bench(page)
    const challenge = page.locator('.challenge').first()
    await challenge.scrollIntoViewIfNeeded()
    await expect(challenge).toContainText('It needs')
    await expect(challenge).toHaveAttribute('data-done', 'false')
    // A longer upper half and a deeper slit: 52 sin(2 atan(60 cos 45 / 52)) sin 45 = 36.0.
    await field(page, 'Upper apex').fill('128')
    await field(page, 'Slit').fill('60')
    await field(page, 'Slit').blur()
    await expect(challenge).toHaveAttribute('data-done', 'true')
    await expect(challenge).toContainText('Done. Rise is 36.0 mm at 90°.')
    await expect(challenge.locator('[aria-live]')).toContainText('Challenge done.')
  })

  test('a challenge that a link has solved already is ticked when it comes into sight', async ({ page }) => {
    await page.goto('/chapters/one-slit-two-v-folds/#beak.cut=45&jaw.cut=45&beak.apex=118&beak.run=-42')
    await page.waitForTimeout(500)
    const yawn = page.locator('.challenge').nth(1)
    await yawn.scrollIntoViewIfNeeded()
    await expect(yawn).toContainText('Done. Gape is')
    await expect(yawn).toHaveAttribute('data-done', 'true')
  })

  test('a ruler’s reading is compared, and a slip is named', async ({ page }) => {
    await bench(page)
    const ruler = page.getByRole('textbox', { name: 'My ruler says' })
    await ruler.scrollIntoViewIfNeeded()
    await ruler.fill('28,5')
    await expect(page.locator('.measure-says')).toContainText(
      /You are \d\.\d mm low\. The likeliest slip: the .* mm short/,
    )
    await ruler.fill('ten')
    await expect(page.locator('.measure-says')).toContainText('Type a number from 0 to')
    await expect(ruler).toHaveValue('ten')
  })

  test('a second and a third reading tell causes apart, by keyboard', async ({ page }) => {
    await bench(page)
    const cell = page.locator('.measure-yours')
    await cell.scrollIntoViewIfNeeded()
    await page.getByRole('textbox', { name: 'My ruler says' }).fill('29.5')
    await expect(page.locator('.measure-says')).toContainText('You are 0.9 mm low.')
    await page.keyboard.press('Tab')
    await expect(cell.locator('summary')).toBeFocused()
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    await page.keyboard.type('101')
    await expect(cell.getByRole('listitem')).toHaveCount(3)
    await expect(cell.getByRole('listitem').first()).toHaveText(/^Could be: the slit is 1\.8 mm short\.$/)
    await page.keyboard.press('Tab')
    await expect(cell.getByRole('textbox', { name: 'Gape' })).toBeFocused()
    await page.keyboard.type('53')
    await expect(cell.getByRole('listitem')).toHaveText(['Most likely: the slit is 1.8 mm short.'])
    await page.keyboard.type('mice')
    await expect(page.locator('.measure-says')).toContainText('Gape: type a number from 0 to 1000.0 mm.')
    await expect(cell.getByRole('listitem')).toHaveCount(0)
  })

  test('a layer that is too low is told of one fault, not of three', async ({ page }) => {
    await bench(page, '/chapters/layers/')
    const ruler = page.getByRole('textbox', { name: 'My ruler says' })
    await ruler.scrollIntoViewIfNeeded()
    await ruler.fill('28')
    await expect(page.locator('.measure-says')).toContainText(
      'The likeliest slip: the depth is 4.0 mm short.',
    )
    await expect(page.locator('.measure-says')).not.toContainText(/left|right/)
  })

  test('the template of the state on the screen is saved, as PDF and as SVG in mm', async ({ page }) => {
    await bench(page)
    await field(page, 'Slit').fill('50')
    await page.getByRole('button', { name: 'Print the template' }).click()
    await page.getByRole('radio', { name: 'A4' }).check()
    const save = page.getByRole('button', { name: 'Save the template' })
    const [pdf] = await Promise.all([page.waitForEvent('download'), save.click()])
    expect(pdf.suggestedFilename()).toBe('one-slit-two-v-folds-a4.pdf')
    // The button is not to be had while the file is made, and keeps the focus all the same.
    await expect(save).toBeFocused()
    expect(
      readFileSync(await pdf.path())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-')
    await page.getByRole('radio', { name: 'SVG' }).check()
    const [svg] = await Promise.all([page.waitForEvent('download'), save.click()])
    const text = readFileSync(await svg.path(), 'utf8')
    expect(text).toMatch(/<svg[^>]*width="\d+(\.\d+)?mm"/)
    expect(text).toContain('Slit 50,')
    await page.getByRole('button', { name: 'Close', exact: true }).click()
    await expect(page.getByRole('button', { name: 'Print the template' })).toBeFocused()
    await page.reload()
    await page.getByRole('button', { name: 'Print the template' }).click()
    await expect(page.getByRole('radio', { name: 'A4' })).toBeChecked()
  })
})

test.describe('what comes a little later than the bench', () => {
  const asleep = (page: Page): Locator => page.locator('[data-cell="try-it"] .bench astro-island[ssr]')

  /** The bench alone is awake: the hand has moved, and come to nothing yet. */
  async function barely(page: Page): Promise<void> {
    await open(page, BEAK)
    await page.locator('.bench[data-awake="true"]').first().waitFor()
  }

  test('comes by itself to a hand that rests; the chart waits until it is unfolded', async ({ page }) => {
    await barely(page)
    await expect(asleep(page)).toHaveCount(1)
    await expect(asleep(page).locator('.stage-chart')).toHaveCount(1)
  })

  test('follows the first drag while it lasts', async ({ page }) => {
    await barely(page)
    const slit = page.getByRole('textbox', { name: 'Slit', exact: true }).first()
    const before = await slit.inputValue()
    const { x, y } = await middle(slitEnd(page))
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 8, y, { steps: 3 })
    await expect(slit).not.toHaveValue(before)
    await page.mouse.up()
  })

  test('does what was pressed while it slept, once', async ({ page }) => {
    await page.goto(BEAK)
    const more = page.getByRole('button', { name: 'Slit: more' }).first()
    const slit = page.getByRole('textbox', { name: 'Slit', exact: true }).first()
    const before = Number(await slit.inputValue())
    // Nothing is awake yet: the hand moves, and presses at once.
    await more.dispatchEvent('click')
    const { x, y } = await middle(more)
    await page.mouse.move(x - 2, y)
    await page.mouse.move(x, y)
    await expect(slit).toHaveValue((before + 1).toFixed(1))
    await page.waitForTimeout(300)
    await expect(slit).toHaveValue((before + 1).toFixed(1))
  })

  test('keeps what was typed while it slept', async ({ page }) => {
    await page.goto(BEAK)
    const slit = page.getByRole('textbox', { name: 'Slit', exact: true }).first()
    // Typed at once, before anything can have come.
    await slit.evaluate((input: HTMLInputElement) => {
      input.focus()
      input.value = '50'
      input.dispatchEvent(new Event('input', { bubbles: true }))
    })
    await expect(slitEnd(page)).toHaveAttribute('aria-valuetext', 'slit 50.0 mm, lean 0.0 mm')
    await slit.press('Enter')
    await expect(slit).toHaveValue('50.0')
  })

  test('keeps what is unfolded, and the place of the keys', async ({ page }) => {
    await page.goto(BEAK)
    const all = page.locator('.fields-more summary').first()
    await all.click()
    await all.focus()
    await expect(asleep(page)).toHaveCount(1)
    await expect(page.locator('.fields-more').first()).toHaveAttribute('open')
    await expect(all).toBeFocused()
  })
})
