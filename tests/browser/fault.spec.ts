// From what a maker sees to its cause, by picture, by words, by ruler: with a mouse and with keys alone.
import { expect, test } from '@playwright/test'

test('a picture leads to its causes, and each to its place in a chapter: two presses', async ({ page }) => {
  await page.goto('/fault/')
  await page.getByRole('link', { name: 'Something sticks out' }).click()
  await expect(page).toHaveURL(/#sticks-out$/)
  await expect(page.getByRole('heading', { level: 3, name: 'Something sticks out' })).toBeFocused()
  const row = page.locator('.trouble-row', { hasText: 'The box sticks out of the shut card.' })
  await row.getByRole('link').click()
  await expect(page).toHaveURL(/chapters\/layers\/#the-box-sticks-out-of-the-shut-card$/)
  await expect(page.locator('#the-box-sticks-out-of-the-shut-card')).toBeInViewport()
  await page.goBack()
  await expect(page.getByRole('link', { name: 'Something sticks out' })).toHaveAttribute(
    'aria-current',
    'true',
  )
  await page.getByRole('button', { name: 'Layers', exact: true }).click()
  await expect(page.locator('.trouble-row')).toHaveCount(1)
})

test('on a phone the answer to words stands under them, and Enter goes on there', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto('/fault/')
  const field = page.getByRole('searchbox')
  await field.fill('the beak does nothing')
  await expect(page.locator('.trouble-row h3').first()).toBeInViewport()
  await field.press('Enter')
  await expect(page.getByRole('heading', { name: 'It may be' })).toBeFocused()
  await field.fill('')
  await expect(page.getByRole('link', { name: 'It stays flat' })).toBeVisible()
  await field.fill('xyzzy')
  await expect(page.getByText('Try fewer, or press a picture')).toBeInViewport()
})

/** What a maker sees of a card in the hand, the picture that is like it, and what helps. */
const SYMPTOMS = [
  ['It stays flat', 'The moth does nothing when the card opens.', /reverse it/],
  ['It jams half-way', 'The wings run into the tail.', /tail|wing/i],
  ['It tears or cracks', 'The paper tears at the end of the slit.', /tape|slit/i],
  ['Something sticks out', 'A tip sticks out of the shut card.', /too long/],
  ['It will not shut', 'The edges do not meet when the card is shut.', /gutter|edge/i],
  ['It leans or droops', 'The beak leans to one side.', /slit|side/i],
  ['It springs back', 'The card springs open.', /fold|score|press/i],
  ['It peels off', 'The tent pulls off the page.', /glue|tab/i],
  ['Its tabs or folds show', 'White edges show round the reeds.', /colour|edge/i],
  ['Something else', 'The tip is lower than the model says.', /slit|apex|fold/i],
] as const

test('ten symptoms lead to their cures by picture', async ({ page, request }) => {
  await page.goto('/fault/')
  for (const [picture, sign, cure] of SYMPTOMS) {
    await page.getByRole('link', { name: picture }).click()
    const row = page.locator('.trouble-row', { hasText: sign }).first()
    await expect(row.locator('p')).toHaveText(cure)
    const [path = '', place = ''] = (
      await row.getByRole('link').evaluate((link: HTMLAnchorElement) => link.href)
    ).split('#')
    expect(await (await request.get(path)).text(), sign).toContain(`id="${place}"`)
  }
})

test('by keys alone: words find it, and a ruler’s reading is held against the model', async ({ page }) => {
  await page.goto('/fault/')
  await page.getByRole('searchbox', { name: 'Or say it yourself' }).focus()
  await page.keyboard.type('nothing happens when I open it')
  await expect(page.locator('.trouble-row').first()).toContainText(/does nothing when the card opens/)
  await page.keyboard.press('Control+A')
  await page.keyboard.type('qqqqzzzz')
  await expect(page.locator('.cell').nth(1)).toContainText('Nothing fits those words')
  await page.getByRole('combobox', { name: /My card is/ }).selectOption('beak')
  const rise = page.getByRole('textbox', { name: /its tip stands above the page/ })
  await rise.focus()
  // The beak of chapter 2 stands 30.4 mm high at a right angle: 1 mm less is a slip that a hand makes.
  await page.keyboard.type('29,4')
  const said = page.locator('.fault-said')
  await expect(said).toContainText('You are 1.0 mm low.')
  await expect(said).toContainText(/The likeliest slip: .*(slit|apex)/)
  await page.keyboard.press('Control+A')
  await page.keyboard.type('four')
  await expect(page.locator('.fault-fields')).toContainText('A number from 0 to 1000.')
  const opening = page.getByRole('textbox', { name: /open to/ })
  await opening.fill('200')
  await expect(page.getByRole('alert').first()).toContainText('1 to 180 degrees')
})

test('what was typed under a reading before its script came is held against the model then', async ({
  page,
}) => {
  let come = () => {}
  const wait = new Promise<void>((done) => {
    come = done
  })
  await page.route('**/_astro/Readings.*.js', async (route) => {
    await wait
    await route.continue()
  })
  await page.goto('/fault/')
  const rise = page.getByRole('textbox', { name: /its tip stands above the page/ })
  await rise.fill('29.4')
  await page.getByRole('textbox', { name: /open to/ }).fill('80')
  come()
  await expect(page.locator('.fault-said')).toContainText(/You are \d+\.\d mm (low|high)/)
  await expect(page.locator('.fault-said')).toContainText('80°')
  await expect(rise).toHaveValue('29.4')
})

test('a ruler’s reading is held against a dummy of one’s own too', async ({ page }) => {
  await page.goto('/dummy/?from=moth')
  await expect(page.getByText('Saved on this device')).toBeVisible()
  await page.goto('/fault/')
  const card = page.getByRole('combobox', { name: /My card is/ })
  await expect(card.locator('optgroup[label="My dummies"] option')).toHaveText(['Moth'])
  await card.selectOption({ label: 'Moth' })
  // Of a bare card a ruler reads nothing: it is not offered.
  await expect(card.locator('option', { hasText: 'It starts at the gutter' })).toHaveCount(0)
  await page.getByRole('textbox', { name: /its tip stands above the page/ }).fill('5')
  await expect(page.locator('.fault-said')).toContainText(/You are \d+\.\d mm low/)
})
