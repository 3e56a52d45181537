// The tools at the wall: by keys and by mouse, over the page and never of it.
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { benchAwake, open, remember } from './site.ts'

const SIZES = [
  [1280, 720],
  [1920, 1080],
] as const

const kit = (page: Page) => page.getByRole('toolbar', { name: 'At the wall' })

/** The keys that the page says it has, as they stand on the keyboard. */
async function listed(page: Page, of: 'This page' | 'Tools'): Promise<readonly string[]> {
  const region = page.getByRole('region', { name: 'Keys' })
  if (!(await region.isVisible())) await page.keyboard.press('?')
  const keys = await region.locator(`div:has(> h2:text-is("${of}")) kbd`).allTextContents()
  await page.keyboard.press('?')
  await expect(region).toHaveCount(0)
  return keys
}

/** How a test presses what a list names. */
const pressed = (name: string): string => ({ 'Page Down': 'PageDown', 'Page Up': 'PageUp' })[name] ?? name

/** A press by a mouse that is there already: a hand does not scroll what stays in sight before it presses it. */
async function press(page: Page, button: Locator): Promise<void> {
  const box = await button.boundingBox()
  if (box) await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
}

/** Whether all of it is on the screen, whichever way it sticks out. */
async function inside(page: Page): Promise<void> {
  for (const button of await kit(page).getByRole('button').all())
    await expect(button).toBeInViewport({ ratio: 1 })
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
}

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
  await expect(hands.locator('[data-right="true"]')).toHaveText(/^✓ As high as the right cuts are deep/)

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

/** Pages that have no lesson of their own, and whether something moves there. */
const WALKED = [
  ['/choose/', true],
  ['/fault/', false],
  ['/plans/', false],
  ['/plans/heron/', false],
  ['/formulas/', false],
  ['/words/', false],
  ['/chapters/', false],
  ['/class/', false],
] as const

for (const [address, moves] of WALKED)
  test(`${address} goes on by a clicker, with the tools besides, and has no tool that it has no use for`, async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1280, height: 720 })
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await open(page, address)
    // At a desk there is nothing of it, and the keys are the browser's.
    await expect(page.getByRole('group', { name: 'On the wall' })).toBeHidden()
    await page.getByRole('button', { name: 'Projector', exact: true }).click()
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height })
      await page.evaluate(() => scrollTo(0, 0))
      const way = page.getByRole('group', { name: 'On the wall' })
      for (const button of await way.getByRole('button').all())
        await expect(button).toBeInViewport({ ratio: 1 })
      const words = await page
        .locator('main :is(h2, h3, p, dd):not(.choice *)')
        .evaluateAll((found) =>
          found
            .filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.textContent?.trim())
            .map((one) => Number.parseFloat(getComputedStyle(one).fontSize)),
        )
      expect(words.length).toBeGreaterThan(1)
      expect(Math.min(...words)).toBeGreaterThanOrEqual(height / 20 - 0.1)
      // What the way about covers is not what a stop begins with.
      await page.keyboard.press('PageDown')
      const gone = await page.evaluate(() => scrollY)
      expect(gone).toBeGreaterThan(0)
      expect(gone).toBeLessThan(height)
      await press(page, way.getByRole('button', { name: 'Next' }))
      expect(await page.evaluate(() => scrollY)).toBeGreaterThan(gone)
      await page.keyboard.press('PageUp')
      await press(page, way.getByRole('button', { name: 'Back' }))
      expect(await page.evaluate(() => scrollY)).toBe(0)
    }
    await page.getByRole('button', { name: 'Tools', exact: true }).press('Enter')
    await kit(page).waitFor()
    await expect(kit(page).getByRole('button', { name: 'Freeze' })).toHaveCount(moves ? 1 : 0)
    for (const name of ['Count hands', 'Notes'])
      await expect(kit(page).getByRole('button', { name })).toHaveCount(0)
    expect(await listed(page, 'This page')).toEqual([
      'Page Down',
      'Page Up',
      ...(moves ? ['Space'] : []),
      'Escape',
    ])
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height })
      await inside(page)
    }
    // The clicker is the page's while the tools are out.
    await page.keyboard.press('PageDown')
    expect(await page.evaluate(() => scrollY)).toBeGreaterThan(0)
    await page.keyboard.press('Escape')
    await expect(kit(page)).toHaveCount(0)
    await expect(page.getByRole('button', { name: 'Tools', exact: true })).toBeFocused()
    await page.keyboard.press('Escape')
    await expect(page.locator('html')).not.toHaveAttribute('data-projector', /./)
  })

test('where cards move, Space plays them, and Freeze brings them to rest', async ({ page }) => {
  await remember(page, 'projector')
  await open(page, '/choose/')
  const slider = page.getByRole('slider', { name: 'Opening of all cards' })
  await expect(page.getByRole('button', { name: 'Open and shut them' })).toBeEnabled()
  const before = await slider.inputValue()
  await page.keyboard.press('Space')
  await expect.poll(() => slider.inputValue()).not.toBe(before)
  await page.getByRole('button', { name: 'Tools', exact: true }).click()
  await kit(page).waitFor()
  await page.keyboard.press('f')
  await expect(page.getByRole('button', { name: 'Open and shut them' })).toBeVisible()
  const rested = await slider.inputValue()
  await page.evaluate(() => (document.activeElement as HTMLElement).blur())
  await page.keyboard.press('Space')
  await page.keyboard.press('PageDown')
  await page.waitForTimeout(300)
  expect(await slider.inputValue()).toBe(rested)
  expect(await page.evaluate(() => scrollY)).toBe(0)
})

test('each card of a choice is one screen', async ({ page }) => {
  await remember(page, 'projector')
  await open(page, '/choose/')
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height })
    const bar = (await page.locator('.choices-bar').boundingBox())?.height ?? 0
    const above = (await page.locator('.top').boundingBox())?.height ?? 0
    const tall = await page
      .locator('.choice')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))
    // Half a line may lie beneath the bar where nothing is written.
    expect(Math.max(...tall)).toBeLessThanOrEqual(height - bar - above + height / 80)
    const words = await page
      .locator('.choice :is(h2, p, dd)')
      .evaluateAll((all) => Math.min(...all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize))))
    expect(words).toBeGreaterThanOrEqual(height / 24)
  }
})

test('all signs of a fault are one screen', async ({ page }) => {
  await remember(page, 'projector')
  await page.goto('/fault/')
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height })
    for (const sign of await page.locator('.fault-signs > li').all())
      await expect(sign).toBeInViewport({ ratio: 1 })
  }
})

const stepCount = (page: Page) => page.locator('.book-count')

test('each step fills the screen and no more, figure beside words, at the size for a room', async ({
  page,
}) => {
  await remember(page, 'projector')
  await page.goto('/steps/?from=heron')
  const [, last = '0'] = /of (\d+)/.exec((await stepCount(page).textContent()) ?? '') ?? []
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height })
    // Where motion is unwelcome there is more to say beside the figure.
    await page.emulateMedia({ reducedMotion: width === 1280 ? 'reduce' : 'no-preference' })
    await page.keyboard.press('Home')
    for (let k = 1; k <= Number(last); k++) {
      await expect(stepCount(page)).toHaveText(`Step ${k} of ${last}`)
      const bar = await page.locator('.book-bar').boundingBox()
      for (const part of ['.book-words > :last-child', '.book-figure > :last-child']) {
        const box = await page.locator(part).boundingBox()
        expect((box?.y ?? 0) + (box?.height ?? 0), `${part} of step ${k}`).toBeLessThanOrEqual(
          (bar?.y ?? 0) + 1,
        )
      }
      expect((bar?.y ?? 0) + (bar?.height ?? 0)).toBeLessThanOrEqual(height + 1)
      const size = await page
        .locator('.book-words > p:not(.book-count)')
        .evaluateAll((all) =>
          Math.min(...all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize))),
        )
      // A step with much to read is set smaller, so that it is seen at once.
      expect(size).toBeGreaterThanOrEqual(height / 26)
      await page.keyboard.press('PageDown')
    }
  }
})

test('a booklet’s keys do what its list says, with the tools out', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  await remember(page, 'projector')
  await page.goto('/steps/?from=heron-in-the-reeds#step=4')
  await page.getByRole('button', { name: 'Tools', exact: true }).click()
  await kit(page).waitFor()
  await inside(page)
  const plays = page.getByRole('button', { name: 'Pause' })
  const does: Readonly<Record<string, () => Promise<void>>> = {
    'Page Down': () => expect(stepCount(page)).toHaveText('Step 5 of 8'),
    'Page Up': () => expect(stepCount(page)).toHaveText('Step 4 of 8'),
    Home: () => expect(stepCount(page)).toHaveText('Step 1 of 8'),
    End: () => expect(stepCount(page)).toHaveText('Step 8 of 8'),
    Space: () => expect(plays).toBeVisible(),
  }
  const keys = await listed(page, 'This page')
  expect(keys).toEqual(Object.keys(does))
  for (const key of keys.filter((one) => one !== 'Space')) {
    await page.keyboard.press(pressed(key))
    await does[key]?.()
  }
  for (let k = 0; k < 4; k++) await page.keyboard.press('PageUp')
  await page.keyboard.press('Space')
  await does.Space?.()
  // What is frozen neither plays on nor goes on.
  await page.keyboard.press('f')
  await expect(plays).toHaveCount(0)
  await page.keyboard.press('PageDown')
  await expect(stepCount(page)).toHaveText('Step 4 of 8')
  await page.keyboard.press('f')
  await page.keyboard.press('PageDown')
  await expect(stepCount(page)).toHaveText('Step 5 of 8')
})

test('the teacher’s window follows the steps', async ({ page }) => {
  await remember(page, 'projector')
  await page.goto('/steps/?from=heron')
  await page.getByRole('button', { name: 'Tools', exact: true }).click()
  await kit(page).waitFor()
  const [notes] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')])
  await expect(notes.getByRole('heading')).toHaveText('1. Cut out the card and score its folds')
  await expect(notes.getByText('Take care.')).toBeVisible()
  const next = (await notes.locator('.wall-after').textContent())?.replace('Next: ', '') ?? ''
  await page.keyboard.press('PageDown')
  await expect(notes.getByRole('heading')).toHaveText(`2. ${next}`)
  await expect(notes).toHaveTitle('Notes for the teacher')
})

test('where the booklet fills the screen by itself, the tools are there too', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  await page.goto('/steps/?from=heron')
  await page.locator('.book-bar').waitFor()
  await expect(page.getByRole('button', { name: 'Tools', exact: true })).toBeHidden()
  await page.getByRole('button', { name: 'Fill the screen' }).click()
  await expect.poll(() => page.evaluate(() => document.fullscreenElement?.className)).toBe('book')
  await page.getByRole('button', { name: 'Tools', exact: true }).click()
  await kit(page).waitFor()
  await inside(page)
  await page.keyboard.press('t')
  // What stands outside of the part that fills the screen is not painted.
  await expect
    .poll(() =>
      page
        .locator('.wall-timer')
        .evaluate((timer) => document.fullscreenElement?.contains(timer) && timer.checkVisibility()),
    )
    .toBe(true)
})

test('a lesson on the wall counts hands where it asks, and shows what is right', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  await page.goto('/class/?chapter=one-slit-two-v-folds')
  await page.getByRole('button', { name: 'Put it on the wall' }).click()
  const wall = page.getByRole('dialog', { name: 'The lesson on the wall' })
  await wall.getByRole('button', { name: 'Tools' }).click()
  await kit(page).waitFor()
  await inside(page)
  const keys = await listed(page, 'This page')
  expect(keys).toEqual(['Page Down', 'Page Up', 'Home', 'End', 'S', 'Escape'])
  await page.keyboard.press('h')
  const hands = page.getByRole('region', { name: 'Count hands' })
  await expect(hands).toHaveText('Nothing is asked just now.')
  await page.keyboard.press('PageDown')
  // What is asked is read while the time runs.
  await page.keyboard.press('t')
  const [asked, timer] = await Promise.all([
    wall.getByRole('heading').first().boundingBox(),
    page.getByRole('region', { name: 'Timer' }).boundingBox(),
  ])
  expect((timer?.y ?? 0) + (timer?.height ?? 0)).toBeLessThanOrEqual((asked?.y ?? 0) + 4)
  await page.keyboard.press('t')
  const one = hands.getByRole('textbox').first()
  await one.fill('12')
  await hands.getByRole('button', { name: 'Show what is right' }).click()
  await expect(wall.locator('.wall-answer')).toHaveText('It stands higher.')
  await expect(hands.locator('[data-right="true"]')).toHaveCount(1)
  // The clicker goes on as it does without the tools, and another question begins from none.
  await hands.locator('ul').click()
  await page.keyboard.press('End')
  await expect(hands.getByRole('textbox').first()).toHaveValue('0')
  await page.keyboard.press('s')
  await expect(hands.locator('[data-right="true"]')).toHaveCount(1)
  await page.keyboard.press('s')
  const [notes] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')])
  await expect(notes.getByText(/^Answer: /)).toBeVisible()
  await page.keyboard.press('Home')
  await expect(notes.getByText(/^Answer: /)).toHaveCount(0)
  // Escape puts away what is over the lesson first.
  await page.keyboard.press('Escape')
  await expect(kit(page)).toHaveCount(0)
  await expect(wall).toBeVisible()
})

test('a chapter’s keys are listed as they are', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  await remember(page, 'projector')
  await open(page, '/chapters/layers/')
  await benchAwake(page)
  await page.getByRole('button', { name: 'Tools', exact: true }).click()
  await kit(page).waitFor()
  const says = page.locator('.class-says')
  const task = (await says.textContent()) ?? ''
  const root = page.locator('html')
  const does: Readonly<Record<string, () => Promise<void>>> = {
    'Page Down': () => expect(says).not.toHaveText(task),
    'Page Up': () => expect(says).toHaveText(task),
    S: () => expect(root).toHaveAttribute('data-guess', 'open'),
    Space: () => expect(page.getByRole('button', { name: 'Pause' })).toBeVisible(),
    Escape: () => expect(root).not.toHaveAttribute('data-projector', /./),
  }
  const keys = await listed(page, 'This page')
  expect(keys).toEqual(Object.keys(does))
  expect(await listed(page, 'Tools')).toEqual(['D', 'P', 'F', 'T', 'H', '?', 'W', 'N', 'Escape'])
  // The way the card is opened stays in reach above the tools.
  const opening = await page.locator('.bench-bar').first().boundingBox()
  const bar = await kit(page).boundingBox()
  expect((opening?.y ?? 0) + (opening?.height ?? 0)).toBeLessThanOrEqual((bar?.y ?? 0) + 1)
  await page.evaluate(() => (document.activeElement as HTMLElement).blur())
  for (const key of keys) {
    if (key === 'Escape') await page.keyboard.press('Escape')
    await page.keyboard.press(pressed(key))
    await does[key]?.()
  }
})

test('a garden asks nothing, so no hands are counted there', async ({ page }) => {
  await remember(page, 'projector')
  await open(page, '/garden/')
  await page.getByRole('button', { name: 'Tools', exact: true }).click()
  await kit(page).waitFor()
  await expect(kit(page).getByRole('button', { name: 'Freeze' })).toBeVisible()
  for (const name of ['Count hands', 'Notes'])
    await expect(kit(page).getByRole('button', { name })).toHaveCount(0)
})
