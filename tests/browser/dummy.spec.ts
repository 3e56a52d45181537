import { readFileSync } from 'node:fs'
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { openFile } from './site.ts'

const awake = (page: Page): Promise<void> => page.locator('.dummy[data-awake="true"]').waitFor()

async function openDummy(page: Page, hash = ''): Promise<void> {
  await page.goto(`/dummy/${hash}`)
  await awake(page)
}

const slip = (page: Page): Locator => page.locator('.dummy-slip')

const offers = (page: Page): Locator => slip(page).locator('.offers .offer')

const rows = (page: Page): Locator => page.getByRole('treeitem')

const rowNames = (page: Page): Promise<string[]> => rows(page).locator('strong').allTextContents()

const verdict = (page: Page): Locator => page.locator('.dummy-margin')

const size = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true })

async function middle(locator: Locator): Promise<{ x: number; y: number }> {
  const box = await locator.boundingBox()
  if (!box) throw new Error('not on the page')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** The gutter by its ring, and the first layer that fits on it. */
async function addLayer(page: Page): Promise<void> {
  await page.locator('.fold-ring').first().click()
  await offers(page).filter({ hasText: 'Layer' }).first().click()
  await expect(rows(page).filter({ hasText: 'Layer 1' })).toBeVisible()
}

test.describe('a dummy by mouse', () => {
  test('from an empty card to a printed sheet: fold, offer, size, template', async ({ page }) => {
    await openDummy(page)
    await expect(slip(page)).toContainText('What do you want?')
    await addLayer(page)
    await expect(slip(page)).toHaveCount(0)
    await expect(verdict(page)).toContainText('It works as paper')
    await size(page, 'Depth').fill('20')
    await size(page, 'Depth').press('Enter')
    await expect(size(page, 'Left depth')).toHaveValue('20.0')
    await page.getByRole('button', { name: 'Print the sheets' }).click()
    const count = page.getByRole('dialog').locator('.sheet-count')
    await expect(count).toHaveText(/^1 sheet, \d+\s% full$/)
    const once = await count.textContent()
    await page.getByText('More about paper and printer').click()
    await page.getByRole('textbox', { name: 'Copies of each piece' }).fill('4')
    await expect(count).toHaveText(/^[2-4] sheets, \d+\s% full$/)
    await page.getByRole('textbox', { name: 'Copies of each piece' }).fill('1')
    await expect(count).toHaveText(once ?? '')
    const copies = page.getByRole('textbox', { name: 'Copies of each piece' })
    await copies.fill('abc')
    await expect(copies).toHaveAccessibleDescription(/from 1 to 60/)
    const save = page.getByRole('button', { name: 'Save the template' })
    await copies.fill('0')
    await save.click()
    // However long the dialog: an answer out of sight is none.
    const says = page.locator('.sheet-says')
    await expect(says).toContainText('from 1 to 60')
    await expect(says).toBeInViewport({ ratio: 1 })
    await copies.fill('1')
    const download = page.waitForEvent('download')
    await save.click()
    // Two cards of one maker do not come as files of one name.
    expect((await download).suggestedFilename()).toMatch(/^my-first-dummy-(a4|letter)\.pdf$/)
    const file = await (await download).path()
    expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-')
  })

  test('a tip is dragged to its height: the sizes follow', async ({ page }) => {
    await openDummy(page)
    await addLayer(page)
    const before = Number(await size(page, 'Depth').inputValue())
    const tip = page.getByRole('slider', { name: 'Tip of the layer 1' })
    const { x, y } = await middle(tip)
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x, y - 15, { steps: 3 })
    await page.mouse.move(x, y - 30, { steps: 3 })
    await page.mouse.up()
    await expect.poll(async () => Number(await size(page, 'Depth').inputValue())).toBeGreaterThan(before + 2)
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect(size(page, 'Depth')).toHaveValue(before.toFixed(1))
  })

  test('a tip dragged off the card leaves a slit that can be cut, and comes back with the hand', async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1440, height: 900 })
    await openDummy(page)
    await page.locator('.fold-ring').first().click()
    await offers(page).first().click()
    const tip = page.getByRole('slider', { name: 'Tip of the V-fold 1' })
    await expect(tip).toBeVisible()
    const names = ['Apex', 'Apex to slit', 'Slit', 'Lean']
    const sizes = async (): Promise<number[]> =>
      Promise.all(names.map(async (name) => Number(await size(page, name).inputValue())))
    const before = await sizes()
    const { x, y } = await middle(tip)
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x - 170, y + 180, { steps: 4 })
    await expect(size(page, 'Slit')).not.toHaveValue((before[2] ?? 0).toFixed(1))
    const [apex = 0, run = 0, slit = 0] = await sizes()
    // The card is 148 mm high and 105 mm wide, and paper tears below 5 mm.
    expect(apex).toBeGreaterThanOrEqual(0)
    expect(apex + run).toBeLessThanOrEqual(148)
    expect(slit).toBeGreaterThanOrEqual(5)
    expect(slit).toBeLessThanOrEqual(105)
    await page.mouse.move(x, y, { steps: 2 })
    await expect(size(page, 'Slit')).toHaveValue((before[2] ?? 0).toFixed(1))
    expect(await sizes()).toEqual(before)
    await page.mouse.up()
  })

  test('what sticks out is told and mended in one action, and what is kept stays', async ({ page }) => {
    await openDummy(page)
    await addLayer(page)
    await size(page, 'Depth').fill('100')
    await size(page, 'Depth').press('Enter')
    await expect(verdict(page)).toContainText('to mend')
    await page.getByRole('button', { name: 'Print the sheets' }).click()
    const dialog = page.getByRole('dialog')
    await expect(dialog.locator('.sheet-faults')).toContainText(
      '1 thing to mend first. The layer 1 sticks out',
    )
    await dialog.getByRole('button', { name: 'Close' }).click()
    await page.getByRole('button', { name: 'See and mend' }).click()
    await slip(page).getByRole('button', { name: /^Mend/ }).click({ timeout: 30_000 })
    await expect(verdict(page)).toContainText('It works as paper', { timeout: 20_000 })
    await page.getByRole('button', { name: 'Print the sheets' }).click()
    await expect(dialog.locator('.sheet-count')).toHaveText(/^1 sheet/)
    await expect(dialog.locator('.sheet-faults')).toHaveText('')
    await dialog.getByRole('button', { name: 'Close' }).click()
    expect(Number(await size(page, 'Depth').inputValue())).toBeLessThan(100)
  })
})

test('chart, section and red measure are those of the part that is taken up', async ({ page }) => {
  await page.goto('/dummy/?from=owl-wings&back=/plans/owl/')
  await awake(page)
  const head = page.locator('.sizes-head')
  const rises: string[] = []
  for (const name of ['Owl', 'Wing 2', 'Owl']) {
    await rows(page)
      .filter({ has: page.getByText(name, { exact: true }) })
      .click()
    await expect(head.getByRole('heading', { name, exact: true })).toBeVisible()
    const rise = /rise ([\d.]+ mm)/.exec((await head.textContent()) ?? '')?.[1] ?? 'none'
    rises.push(rise)
    for (const figure of ['chart', 'section', 'view'])
      await expect(page.locator(`[data-figure="${figure}"] svg`).first()).toContainText(rise)
  }
  expect(rises[0]).not.toBe(rises[1])
})

test('the rows of sizes stay where they are while what they forgive comes and goes', async ({ page }) => {
  await page.goto('/dummy/?from=owl-wings&back=/plans/owl/')
  await awake(page)
  await rows(page)
    .filter({ has: page.getByText('Wing 2', { exact: true }) })
    .click()
  await expect(page.locator('.forgiving').first()).not.toBeEmpty({ timeout: 20_000 })
  const more = page.getByRole('button', { name: 'Ridge: more' })
  await more.scrollIntoViewIfNeeded()
  const before = await more.boundingBox()
  // Twice: of what is printed so much may be off.
  await more.click({ clickCount: 2 })
  await expect(page.locator('.forgiving').first()).toBeEmpty()
  await expect(verdict(page)).toContainText('to mend')
  expect((await more.boundingBox())?.y).toBe(before?.y)
})

test('a name that cannot be is told at its field and stays to be mended; what is lost of one is told', async ({
  page,
}) => {
  await openDummy(page)
  await addLayer(page)
  const name = page.getByRole('textbox', { name: 'Name of this part' })
  await name.fill('月')
  await name.press('Enter')
  await expect(name).toHaveValue('月')
  await expect(name).toHaveAccessibleDescription(
    'A name needs letters from a to z or digits, 1 to 40 of them.',
  )
  await expect(page.getByText('A name needs letters').first()).toBeVisible()
  await expect(name).toHaveAttribute('aria-invalid', 'true')
  await name.press('Escape')
  await expect(name).toHaveValue('layer 1')
  await name.fill("Owl's wing")
  await name.press('Enter')
  await expect(name).toHaveValue('owls wing')
  await expect(name).toHaveAccessibleDescription(/this one is “owls wing”/)
  await name.fill('wing')
  await name.press('Enter')
  await expect(rows(page).filter({ hasText: 'Wing' })).toBeVisible()
  await expect(name).toHaveAccessibleDescription('')
})

test('what is wrong with a number of a wish can be read in full, and covers no other blank', async ({
  page,
}) => {
  await openDummy(page)
  await page.getByRole('button', { name: /Make a wish/ }).click()
  const blanks = slip(page).locator('.wish-sentence .number-input')
  for (const k of [0, 1, 2]) {
    const blank = blanks.nth(k)
    const kept = await blank.inputValue()
    await blank.fill('abc')
    await blank.press('Enter')
    const says = slip(page).getByRole('alert')
    await expect(says).toContainText(/: type a number from −?[\d.]+( mm|°) to/)
    const inside = await says.evaluate((one) => {
      const [mine, slips] = [one, one.closest('.dummy-slip')].map((box) => box?.getBoundingClientRect())
      const others = [...document.querySelectorAll('.wish-sentence :is(.number-input, select)')].map((box) =>
        box.getBoundingClientRect(),
      )
      if (!mine || !slips) return null
      const covers = others.filter(
        (box) =>
          box.left < mine.right && box.right > mine.left && box.top < mine.bottom && box.bottom > mine.top,
      )
      return { isCut: mine.left < slips.left || mine.right > slips.right, covers: covers.length }
    })
    expect(inside).toEqual({ isCut: false, covers: 0 })
    await blank.fill(kept)
    await expect(says).toHaveCount(0)
  }
})

test('a wish is made on a card that has parts already, and sizes are told in the unit that is chosen', async ({
  page,
}) => {
  await openDummy(page)
  await addLayer(page)
  await expect(page.locator('.sizes-head')).toContainText(/rise \d+\.\d mm/)
  await page.locator('.sizes').getByText('inch', { exact: true }).click()
  await expect(page.locator('.sizes-head')).toContainText(/rise \d\.\d\d in/)
  await rows(page).filter({ hasText: 'Gutter' }).click()
  await slip(page).getByRole('button', { name: 'make a wish' }).click()
  await expect(slip(page).getByRole('heading', { name: 'Your wish' })).toBeFocused()
})

test('on a phone what was pressed for comes into sight, clear of the card that is pinned', async ({
  browser,
}) => {
  const page = await browser.newPage({ hasTouch: true, viewport: { width: 390, height: 844 } })
  await openDummy(page)
  const isClear = async (heading: Locator) => {
    await expect(heading).toBeInViewport()
    const card = await page.locator('.dummy-figure[data-large="true"]').boundingBox()
    const words = await heading.boundingBox()
    expect(words?.y).toBeGreaterThanOrEqual((card?.y ?? 0) + (card?.height ?? Number.NaN))
  }
  await page.locator('.dummy-margin summary').tap()
  await rows(page).filter({ hasText: 'Gutter' }).tap()
  await isClear(slip(page).getByRole('heading', { name: 'Build on the gutter' }))
  await offers(page).last().tap({ timeout: 20_000 })
  await isClear(page.locator('.sizes-head h2'))
  await page.close()
})

// What has the focus is not hidden by what the page pins: WCAG 2.2, 2.4.11.
test('on a phone keys bring nothing into sight under the bar that is pinned', async ({ browser }) => {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, hasTouch: true })
  await openDummy(page)
  const seen = { on: 0, under: [] as string[], tops: [] as number[] }
  for (let k = 0; k < 45; k++) {
    await page.keyboard.press('Tab')
    const what = await page.evaluate(async () => {
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      const at = document.activeElement
      const bar = document.querySelector('.dummy-bar')
      if (!at?.closest('.dummy') || !bar || bar.contains(at)) return null
      const covered = at.getBoundingClientRect().bottom - bar.getBoundingClientRect().top
      const top = at.getBoundingClientRect().top + scrollY
      return { covered, top, words: at.textContent || at.getAttribute('aria-label') || '' }
    })
    if (!what) continue
    seen.on++
    seen.tops.push(what.top)
    if (what.covered > 1) seen.under.push(`${what.words} by ${what.covered}`)
  }
  expect(seen.under).toEqual([])
  // In the order in which it stands there, but for what is side by side: WCAG 2.2, 2.4.3.
  expect(seen.tops.filter((top, k) => top < (seen.tops[k - 1] ?? 0) - 160)).toEqual([])
  expect(seen.on).toBeGreaterThan(10)
  await page.close()
})

test('on a phone a size takes two rows that a finger hits, and no more', async ({ browser }) => {
  const page = await browser.newPage({
    hasTouch: true,
    isMobile: true,
    viewport: { width: 390, height: 844 },
  })
  await openDummy(page)
  await page.locator('.fold-ring').first().tap()
  await offers(page).filter({ hasText: 'Layer' }).first().tap({ timeout: 20_000 })
  // What it forgives stands there as well.
  await expect(page.locator('.forgiving').first()).not.toBeEmpty({ timeout: 20_000 })
  const high = (all: Locator): Promise<number[]> =>
    all.evaluateAll((found) => found.map((one) => one.getBoundingClientRect().height))
  const sizes = await high(page.locator('.size:has(.range)'))
  expect(sizes.length).toBeGreaterThan(3)
  expect(Math.max(...sizes)).toBeLessThanOrEqual(100)
  expect(
    Math.min(...(await high(page.locator('.size :is(.press, .range, .number-input)')))),
  ).toBeGreaterThanOrEqual(44)
  await page.close()
})

test('the way of a tip is drawn within its picture', async ({ page }) => {
  await openDummy(page)
  await addLayer(page)
  const trail = page.locator('.dummy-figure[data-large="true"] .over-trail')
  await expect(trail).toHaveCount(1)
  const cut = await trail.evaluate((line) => {
    const within = (line as SVGElement).ownerSVGElement
    const picture = within?.closest('.dummy-figure-picture')?.getBoundingClientRect()
    const box = within?.getBoundingClientRect()
    return {
      overflow: within && getComputedStyle(within).overflow,
      isInside: box && picture && box.top >= picture.top - 1 && box.bottom <= picture.bottom + 1,
    }
  })
  expect(cut).toEqual({ overflow: 'hidden', isInside: true })
})

test('a card that is deleted comes back with one press', async ({ page }) => {
  await openDummy(page)
  await addLayer(page)
  await expect(page.getByText('Saved on this device')).toBeVisible()
  await page.getByRole('button', { name: 'Save, open, send' }).click()
  await slip(page).getByRole('button', { name: 'Delete' }).first().click()
  await expect(slip(page).locator('.slip-gone')).toContainText(
    '“My first dummy” is deleted. An empty card is on the table now.',
  )
  await expect(rows(page)).toHaveCount(3)
  await slip(page).locator('.slip-gone').getByRole('button', { name: 'Bring it back' }).click()
  await expect(rows(page).filter({ hasText: 'Layer 1' })).toBeVisible()
})

test('on a phone it is in sight that a card was deleted, though the press was farther down', async ({
  browser,
}) => {
  const page = await browser.newPage({
    hasTouch: true,
    isMobile: true,
    viewport: { width: 390, height: 844 },
  })
  await openDummy(page)
  await page.locator('.fold-ring').first().tap()
  await offers(page).first().tap({ timeout: 20_000 })
  await expect(page.getByText('Saved on this device')).toBeVisible()
  await page.getByRole('button', { name: 'Save, open, send' }).tap()
  await slip(page).getByRole('button', { name: 'Delete' }).first().tap()
  const told = slip(page).locator('.slip-gone')
  await expect(told).toContainText('is deleted')
  await expect(told).toBeInViewport({ ratio: 1 })
  const card = await page.locator('.dummy-figure[data-large="true"]').boundingBox()
  await expect
    .poll(async () => (await told.boundingBox())?.y)
    .toBeGreaterThanOrEqual((card?.y ?? Number.NaN) + (card?.height ?? 0))
  await page.close()
})

test('a wish is given: ways come, and one is taken', async ({ page }) => {
  await openDummy(page)
  await page.getByRole('button', { name: /Make a wish/ }).click()
  await page.getByRole('textbox', { name: 'How high over the page' }).fill('24')
  await expect(slip(page)).toContainText(/\d ways?\. All shut flat/, { timeout: 40_000 })
  // One of its own card tells how large a piece it takes; each its sizes, as they then stand in the fields.
  await expect(
    slip(page)
      .locator('.way-found')
      .filter({ hasText: /of its own card/ })
      .first(),
  ).toContainText(/a piece of \d+\.\d by \d+\.\d mm/)
  const first = slip(page).locator('.way-found').first()
  await first.getByText('Sizes').click()
  const sizes = await first.locator('.way-sizes li').allInnerTexts()
  expect(sizes.length).toBeGreaterThan(2)
  await first.getByRole('button', { name: 'Use this' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.locator('.sizes-head h2')).toBeFocused()
  await expect(verdict(page)).toContainText('It works as paper')
  await expect(page.locator('.sizes-head')).toContainText(/rise 2[345]\.\d mm/)
  const [name, size] = /^(.*) (-?\d+\.\d) mm$/.exec(sizes[0] ?? '')?.slice(1) ?? []
  await expect(page.getByRole('textbox', { name: new RegExp(`${name}$`, 'i') }).first()).toHaveValue(
    size ?? '',
  )
})

test('the way of a wished tip is drawn in one stroke: its marks are told, moved by keys, typed and taken away', async ({
  page,
}) => {
  await openDummy(page)
  await page.getByRole('button', { name: /Make a wish/ }).click()
  await page.getByRole('button', { name: 'Draw its way' }).click()
  const pad = page.locator('.path-pad')
  const { x, y } = await middle(pad)
  await page.mouse.move(x - 20, y + 40)
  await page.mouse.down()
  await page.mouse.move(x - 10, y + 10, { steps: 6 })
  await page.mouse.move(x + 5, y - 40, { steps: 8 })
  await page.mouse.up()
  await expect(pad).toHaveCount(0)
  const marks = page.getByRole('slider', { name: /^Mark \d on its way/ })
  await expect(marks).toHaveCount(3)
  // As the card opens from shut to the wish's 90 degrees.
  await expect(size(page, 'Mark 2: opening')).toHaveValue('45.0')
  const high = size(page, 'Mark 2: how high over the page')
  const before = Number(await high.inputValue())
  await marks.nth(1).focus()
  await page.keyboard.press('ArrowUp')
  await expect.poll(async () => Number(await high.inputValue())).toBeCloseTo(before + 1, 1)
  await page.getByRole('button', { name: 'Take mark 1 away' }).click()
  await expect(marks).toHaveCount(2)
  await size(page, 'How near to its marks').fill('40')
  await expect(slip(page)).toContainText(/ways?\. All shut flat|leaves|comes near/, { timeout: 40_000 })
})

test('a wish with a way says how near each goes', async ({ page }) => {
  await openDummy(page)
  await page.getByRole('button', { name: /Make a wish/ }).click()
  await page.getByRole('button', { name: 'Add a mark' }).click()
  await size(page, 'How near to its marks').fill('20')
  await expect(slip(page)).toContainText(/\d ways?\. All shut flat/, { timeout: 40_000 })
  const told = await slip(page).locator('.way-found p:first-of-type').allTextContents()
  const off = told.map((words) => Number(/at most ([\d.]+) mm off its way/.exec(words)?.[1]))
  expect(off.length).toBeGreaterThan(0)
  for (const by of off) expect(by).toBeLessThanOrEqual(20)
})

test('a part is hidden and locked with its keys: out of the pictures, out of reach, undone, and so after a reload', async ({
  page,
}) => {
  await openDummy(page)
  await addLayer(page)
  const row = rows(page).filter({ hasText: 'Layer 1' })
  const drawn = page.locator('[data-figure="view"] [data-of^="layer-1/"]')
  await expect(drawn).not.toHaveCount(0)
  await row.focus()
  await page.keyboard.press('h')
  await expect(drawn).toHaveCount(0)
  await expect(row).toContainText('hidden')
  await expect(verdict(page)).toContainText('What is hidden is checked, and is printed.')
  await page.keyboard.press('l')
  await expect(row).toContainText('locked')
  await expect(size(page, 'Depth')).toBeDisabled()
  // What is locked is not removed either, and that is told.
  await page.keyboard.press('Delete')
  await expect(row).toHaveCount(1)
  await expect(page.locator('.aloud[role="status"]').first()).toContainText('is locked')
  await expect(page.locator('.kept')).toContainText('Saved')
  await page.reload()
  await awake(page)
  await expect(row).toContainText('hidden, locked')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(row).not.toContainText('locked')
  await verdict(page).getByRole('button', { name: 'Show all' }).click()
  await expect(drawn).not.toHaveCount(0)
})

test.describe('a dummy by keyboard alone', () => {
  test('list, offer, size and undo', async ({ page }) => {
    await openDummy(page)
    const first = page.getByRole('treeitem').first()
    await first.focus()
    await page.keyboard.press('ArrowDown')
    await expect(rows(page).nth(1)).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(slip(page)).toContainText('Build on the gutter')
    await expect(slip(page).getByRole('heading', { name: 'Build on the gutter' })).toBeFocused()
    await expect(offers(page).first()).toBeVisible({ timeout: 20_000 })
    // Past the way out, and the way to a wish.
    for (let k = 0; k < 3; k++) await page.keyboard.press('Tab')
    await expect(offers(page).first()).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(rows(page)).toHaveCount(9)
    await page.keyboard.press('Control+z')
    await expect(rows(page)).toHaveCount(3)
    await page.keyboard.press('Control+y')
    await expect(rows(page).filter({ hasText: 'V-fold 1' })).toBeVisible()
  })

  test('the keys have a place to go on whenever what had them is gone, and a step back is said', async ({
    page,
  }) => {
    await openDummy(page)
    await rows(page).nth(1).focus()
    await page.keyboard.press('Enter')
    await offers(page).filter({ hasText: 'V-fold' }).first().focus()
    await page.keyboard.press('Enter')
    const head = page.locator('.sizes-head h2')
    await expect(head).toBeFocused()
    await expect(head).toHaveText('V-fold 1')
    await page.keyboard.press('Control+z')
    await expect(page.locator('.dummy-page > .aloud[role="status"]')).toHaveText('Undone: V-fold 1 added.')
    await page.keyboard.press('Control+y')
    await expect(page.locator('.dummy-page > .aloud[role="status"]')).toHaveText(
      'Done again: V-fold 1 added.',
    )
    // A shape is stuck on, and the slip put away.
    await rows(page).filter({ hasText: 'right face' }).focus()
    await page.keyboard.press('Enter')
    await slip(page).getByRole('button', { name: 'draw your own' }).focus()
    await page.keyboard.press('Enter')
    await slip(page).getByRole('button', { name: 'Moon' }).focus()
    await page.keyboard.press('Enter')
    await expect(rows(page).filter({ hasText: 'Moon' })).toBeVisible()
    await expect(slip(page).getByRole('button', { name: 'Moon' })).toBeFocused()
    await page.keyboard.press('Escape')
    await expect(rows(page).filter({ hasText: 'right face' })).toBeFocused()
    // A part is removed by its button.
    await rows(page).filter({ hasText: 'Moon' }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Remove', exact: true }).focus()
    await page.keyboard.press('Enter')
    await expect(rows(page).filter({ hasText: 'Moon' })).toHaveCount(0)
    await expect(page.locator('.outline [role="treeitem"]:focus')).toHaveCount(1)
  })

  // The focus goes back to what opened it: ARIA practices, dialog.
  test('a slip that is put away gives the focus back to its button', async ({ page }) => {
    await openDummy(page)
    const file = page.getByRole('button', { name: 'Save, open, send' })
    await file.press('Enter')
    await expect(slip(page).getByRole('heading').first()).toBeFocused()
    await page.keyboard.press('Escape')
    await expect(file).toBeFocused()
  })

  test('Escape puts the slip away, and a question mark lists the keys', async ({ page }) => {
    await openDummy(page)
    await rows(page).nth(1).focus()
    await page.keyboard.press('Enter')
    await expect(slip(page)).toBeVisible()
    await page.keyboard.press('Escape')
    await expect(slip(page)).toHaveCount(0)
    await page.keyboard.press('?')
    await expect(slip(page)).toContainText('removes the part that is taken up')
  })

  test('Delete removes a part with what sits on it', async ({ page }) => {
    await openDummy(page)
    await addLayer(page)
    await rows(page).filter({ hasText: 'Layer 1' }).focus()
    await page.keyboard.press('Delete')
    await expect(rows(page)).toHaveCount(3)
  })
})

test.describe('work is safe', () => {
  test('a reload finds the card as it was, with its steps', async ({ page }) => {
    await openDummy(page)
    await addLayer(page)
    await expect(page.locator('.kept')).toContainText('Saved')
    await page.reload()
    await awake(page)
    expect(await rowNames(page)).toContain('Layer 1')
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect(rows(page)).toHaveCount(3)
  })

  test('a tab that is killed in the middle of a drag comes back to nearly where the hand was', async ({
    page,
    context,
  }) => {
    await openDummy(page)
    await addLayer(page)
    const tip = page.getByRole('slider', { name: 'Tip of the layer 1' })
    const { x, y } = await middle(tip)
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x, y - 25, { steps: 4 })
    await expect(page.locator('.kept')).toContainText('Saved')
    const dragged = Number(await size(page, 'Depth').inputValue())
    await page.close({ runBeforeUnload: false })
    const again = await context.newPage()
    await openDummy(again)
    await rows(again).filter({ hasText: 'Layer 1' }).click()
    expect(Number(await size(again, 'Depth').inputValue())).toBeCloseTo(dragged, 1)
  })

  test('a file that is no dummy is refused in a sentence, and the card stays', async ({ page }) => {
    await openDummy(page)
    await addLayer(page)
    await page.getByRole('button', { name: 'Save, open, send' }).click()
    await openFile(page, 'owl.hingebook.json', Buffer.from('{ "hingebook": 1,\n "card": { "width": -4 } }'))
    await expect(slip(page).getByRole('alert')).toContainText(/[Ll]ine \d/)
    expect(await rowNames(page)).toContain('Layer 1')
  })

  test('a file that was kept opens again as a dummy of its own', async ({ page }) => {
    await openDummy(page)
    await addLayer(page)
    await page.getByRole('button', { name: 'Save, open, send' }).click()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Keep a file' }).click()
    const file = await download
    await expect(slip(page).locator('.file-kept')).toContainText(`Kept as ${file.suggestedFilename()}`)
    const path = await file.path()
    await openFile(page, 'mine.hingebook.json', readFileSync(path))
    await expect.poll(() => slip(page).locator('.shelved').count()).toBeGreaterThanOrEqual(0)
    expect(await rowNames(page)).toContain('Layer 1')
  })

  test('a chapter’s bench is taken along, and the way back leads to it as it was', async ({ page }) => {
    await page.goto('/chapters/one-slit-two-v-folds/')
    await page.mouse.move(3, 3)
    await page.mouse.move(4, 4)
    await page.locator('.bench[data-awake="true"]').first().waitFor()
    await page.getByRole('button', { name: 'Take it to my dummy' }).first().click()
    await awake(page)
    expect(await rowNames(page)).toContain('Beak')
    expect(new URL(page.url()).hash).toBe('')
    await page.getByRole('link', { name: 'Back to where it was taken from' }).click()
    await expect(page).toHaveURL(/one-slit-two-v-folds/)
  })
})

test.describe('a dummy by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } })

  test('the card stays in view while its sizes are set', async ({ page }) => {
    await openDummy(page)
    await page.getByRole('button', { name: /Press a fold/ }).tap()
    await offers(page).filter({ hasText: 'Layer' }).first().tap()
    await size(page, 'Depth').scrollIntoViewIfNeeded()
    await size(page, 'Depth').tap()
    const card = page.locator('.dummy-figure[data-large="true"]')
    await expect(card).toBeInViewport({ ratio: 0.9 })
    await size(page, 'Depth').fill('20')
    await expect(card).toBeInViewport({ ratio: 0.9 })
  })
})
