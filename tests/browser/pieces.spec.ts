import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import sharp from 'sharp'

const slip = (page: Page): Locator => page.locator('.dummy-slip')

const rows = (page: Page): Locator => page.getByRole('treeitem')

const verdict = (page: Page): Locator => page.locator('.dummy-margin')

/** An empty card with a V-fold on its gutter. */
async function openWithFold(page: Page): Promise<void> {
  await page.goto('/dummy/')
  await page.locator('.dummy[data-awake="true"]').waitFor()
  await rows(page).filter({ hasText: 'Gutter' }).click()
  await slip(page).locator('.offer').filter({ hasText: 'V-fold cut from the card' }).first().click()
  await expect(rows(page).filter({ hasText: 'right face' })).toBeVisible()
}

async function openShelf(page: Page): Promise<void> {
  await rows(page).filter({ hasText: 'right face' }).click()
  await slip(page).getByRole('button', { name: 'draw your own' }).click()
}

test('a moon is stuck on a facet by mouse, and taken off in one step', async ({ page }) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Moon' }).click()
  await expect(rows(page).filter({ hasText: 'Piece stuck on a face' })).toContainText('Moon')
  await expect(verdict(page)).toContainText('It works as paper')
  await expect(page.locator('[data-figure="view"] .m-art path')).not.toHaveCount(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(rows(page).filter({ hasText: 'Moon' })).toHaveCount(0)
  await expect(rows(page).filter({ hasText: 'V-fold 1' })).toBeVisible()
})

test('a moon is stuck on a facet by keyboard alone', async ({ page }) => {
  await openWithFold(page)
  const face = rows(page).filter({ hasText: 'right face' })
  await face.focus()
  await page.keyboard.press('Enter')
  const way = slip(page).getByRole('button', { name: 'draw your own' })
  await way.focus()
  await page.keyboard.press('Enter')
  const moon = slip(page).getByRole('button', { name: 'Moon' })
  await moon.focus()
  await page.keyboard.press('Enter')
  await expect(rows(page).filter({ hasText: 'Piece stuck on a face' })).toContainText('Moon')
  await expect(page.locator('[role="status"]').filter({ hasText: 'Moon stuck on' })).toHaveCount(1)
})

test('an outline is drawn too large by mouse, corrected by keys, and cut to its face', async ({ page }) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Draw', exact: true }).click()
  const plan = page.locator('.plan')
  await plan.scrollIntoViewIfNeeded()
  const box = await plan.boundingBox()
  if (!box) throw new Error('no plan')
  for (const [x, y] of [
    [0.35, 0.25],
    [0.75, 0.3],
    [0.8, 0.75],
    [0.4, 0.7],
  ] as const)
    await plan.click({ position: { x: x * box.width, y: y * box.height } })
  const points = plan.locator('circle')
  await expect(points).toHaveCount(4)
  const before = await points.nth(3).getAttribute('aria-label')
  await points.nth(3).focus()
  await page.keyboard.press('ArrowUp')
  expect(await points.nth(3).getAttribute('aria-label')).not.toBe(before)
  await page.keyboard.press('Delete')
  await expect(points).toHaveCount(3)
  await slip(page).getByRole('button', { name: 'Stick it on' }).click()
  await expect(rows(page).filter({ hasText: 'Cut out' })).toBeVisible()
  await expect(verdict(page)).not.toContainText('It works as paper')
  await slip(page).getByRole('button', { name: 'Cut it to its face' }).click()
  await expect(verdict(page)).toContainText('It works as paper')
})

test('an outline that is changed is cut at once, is there in the other tabs, and is undone', async ({
  page,
}) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Moon' }).click()
  // The face stays taken up: a second shape goes on it, not on the first.
  await expect(slip(page).getByRole('heading')).toContainText('right face of the V-fold 1')
  await rows(page).filter({ hasText: 'Moon' }).click()
  await page.getByRole('button', { name: 'Outline and colour' }).click()
  const points = page.locator('.plan circle')
  await expect(points.first()).toBeVisible()
  const told = () => points.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')))
  const onCard = page.locator('[data-figure="view"] [data-of^="moon/"]').first()
  const [before, paper] = [await told(), await onCard.innerHTML()]
  const from = await points.first().boundingBox()
  if (!from) throw new Error('no point')
  const [x, y] = [from.x + from.width / 2, from.y + from.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 12, y + 6, { steps: 3 })
  await page.mouse.up()
  await expect.poll(() => onCard.innerHTML()).not.toBe(paper)
  const after = await told()
  expect(after).not.toEqual(before)
  // The points stay where the hand left them, and are so when one comes back.
  expect(after).toHaveLength(before.length)
  await slip(page).getByRole('button', { name: 'Colour', exact: true }).click()
  await slip(page).getByRole('button', { name: 'Outline', exact: true }).click()
  expect(await points.count()).toBeGreaterThan(2)
  expect(await told()).toEqual(after)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(told).toEqual(before)
  await expect.poll(() => onCard.innerHTML()).toBe(paper)
  // Keys in a row are one step, as a drag is, and are cut by themselves when no more come.
  await points.first().focus()
  for (let k = 0; k < 4; k++) await page.keyboard.press('ArrowRight')
  await expect.poll(() => onCard.innerHTML()).not.toBe(paper)
  await page.keyboard.press('ArrowUp')
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(told).toEqual(before)
  await expect.poll(() => onCard.innerHTML()).toBe(paper)
})

test('an outline that makes no piece is kept and told in sight, and left as it was when that is pressed', async ({
  page,
}) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Moon' }).click()
  await rows(page).filter({ hasText: 'Moon' }).click()
  await page.getByRole('button', { name: 'Outline and colour' }).click()
  const points = page.locator('.plan circle')
  const count = await points.count()
  await slip(page).getByRole('button', { name: 'Start over' }).click()
  await slip(page).getByRole('button', { name: 'Add a point' }).click()
  await slip(page).getByRole('button', { name: 'Colour', exact: true }).click()
  await slip(page).getByRole('button', { name: 'Outline', exact: true }).click()
  await expect(points).toHaveCount(1)
  const leave = slip(page).getByRole('button', { name: 'Leave it as it was' })
  await expect(slip(page)).toContainText('The piece is still as it was. An outline needs three points')
  await expect(leave).toBeInViewport({ ratio: 1 })
  const [box, button] = [await slip(page).boundingBox(), await leave.boundingBox()]
  expect((button?.y ?? Number.NaN) + (button?.height ?? 0)).toBeLessThan((box?.y ?? 0) + (box?.height ?? 0))
  await leave.click()
  await expect(points).toHaveCount(count)
})

test('what cannot be pressed yet is not blue', async ({ page }) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Draw', exact: true }).click()
  const stick = slip(page).getByRole('button', { name: 'Stick it on' })
  await expect(stick).toBeDisabled()
  // However long the slip: it is in sight.
  await expect(stick).toBeInViewport({ ratio: 1 })
  const looks = () =>
    stick.evaluate((one) => {
      const { backgroundColor, borderStyle } = getComputedStyle(one)
      return { backgroundColor, borderStyle }
    })
  const before = await looks()
  const plan = page.locator('.plan')
  const box = await plan.boundingBox()
  if (!box) throw new Error('no plan')
  for (const [x, y] of [
    [0.35, 0.25],
    [0.75, 0.3],
    [0.4, 0.7],
  ] as const)
    await plan.click({ position: { x: x * box.width, y: y * box.height } })
  await expect(stick).toBeEnabled()
  await expect.poll(async () => (await looks()).backgroundColor).not.toBe(before.backgroundColor)
  expect((await looks()).borderStyle).not.toBe(before.borderStyle)
})

test('a path that holds more than a path is read as numbers alone, and bad ones are told in words', async ({
  page,
}) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Draw', exact: true }).click()
  await slip(page).getByText('Bring an SVG path in').click()
  const field = slip(page).getByRole('textbox', { name: /Paste/ })
  await field.fill('<svg onload="window.hit=1"><script>window.hit=1</script><path d="oops"/></svg>')
  await slip(page).getByRole('button', { name: 'Read it' }).click()
  await expect(slip(page).getByRole('alert')).toContainText('That is no path')
  await field.fill(
    '<svg onload="window.hit=1"><image href="x" onerror="window.hit=1"/><path d="M0 0h9v9h-9z"/></svg>',
  )
  await slip(page).getByRole('button', { name: 'Read it' }).click()
  await expect(page.locator('.plan circle')).toHaveCount(4)
  expect(await page.evaluate(() => 'hit' in window)).toBe(false)
})

test('a piece that hangs out of the card is trimmed in one action', async ({ page }) => {
  await openWithFold(page)
  await rows(page).filter({ hasText: 'Left page' }).click()
  await slip(page).getByRole('button', { name: 'draw your own' }).click()
  await slip(page).getByRole('button', { name: 'Draw', exact: true }).click()
  await slip(page).getByRole('button', { name: 'Add a point' }).click()
  // Three corners typed: the third beyond the side edge of a page 105 mm wide.
  for (const [k, across, along] of [
    [1, 60, 100],
    [2, 60, 140],
    [3, 130, 120],
  ] as const) {
    if (k > 1) await slip(page).getByRole('button', { name: 'Add a point' }).click()
    for (const [axis, value] of [
      ['across', across],
      ['along', along],
    ] as const) {
      const field = slip(page).getByRole('textbox', { name: `Point ${k}, ${axis}` })
      await field.fill(String(value))
      await field.press('Enter')
    }
  }
  await slip(page).getByRole('checkbox', { name: 'Smooth' }).uncheck()
  await slip(page).getByRole('button', { name: 'Stick it on' }).click()
  await expect(verdict(page)).toContainText('sticks out')
  await slip(page).getByRole('button', { name: 'Trim it: 25.0 mm off' }).click()
  await expect(verdict(page)).not.toContainText('sticks out')
})

test('a picture is laid on a face, painted anew, to be drawn after or printed; what is none is told', async ({
  page,
}) => {
  await openWithFold(page)
  await openShelf(page)
  await slip(page).getByRole('button', { name: 'Draw', exact: true }).click()
  await slip(page).getByText('Lay a picture on it').click()
  const field = slip(page).getByLabel('Picture to lay on the face')
  await field.setInputFiles({ name: 'moon.png', mimeType: 'image/png', buffer: Buffer.from('no picture') })
  await expect(slip(page).getByRole('alert')).toContainText('That is no picture')
  const dots = await sharp({ create: { width: 90, height: 60, channels: 3, background: '#f5b83d' } })
    .jpeg()
    .toBuffer()
  await field.setInputFiles({ name: 'moon.jpg', mimeType: 'image/jpeg', buffer: dots })
  const picture = page.locator('.plan-picture')
  await expect(picture).toHaveCount(1)
  expect(await picture.getAttribute('href')).toMatch(/^data:image\/jpeg;base64,/)
  const width = slip(page).getByRole('textbox', { name: 'Picture: width' })
  await width.fill('30')
  await width.press('Enter')
  // As wide as it is told, and as high as it was beside that.
  await expect(picture).toHaveAttribute('transform', /^matrix\(30 0 0 20 /)
  // It is seen on the card once it is to be printed.
  const onCard = page.locator('.stage-view .drawing image')
  await expect(onCard).toHaveCount(0)
  await slip(page).getByLabel('Print it with the card').check()
  await expect(onCard).not.toHaveCount(0)
  // A vector picture runs nothing and leaves only its dots.
  const script =
    '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10" onload="window.hit=1"><script>window.hit=1</script><circle cx="5" cy="5" r="4"/></svg>'
  await field.setInputFiles({ name: 'moon.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(script) })
  await expect(picture).toHaveAttribute('href', /^data:image\/png;base64,/)
  await expect(picture).toHaveAttribute('transform', /^matrix\(30 0 0 15 /)
  expect(await page.evaluate(() => 'hit' in window)).toBe(false)
  await slip(page).getByRole('button', { name: 'Take it away' }).click()
  await expect(picture).toHaveCount(0)
  await expect(onCard).toHaveCount(0)
})
