// The plans, played to their ends as their pages tell them: by mouse, by keyboard alone and by touch alone. What comes of
// each is held to the design that the plan ends with, as the file that the page hands out has it. The owl asks for one
// press that the two others do not, and for the longest mending: it is played on a phone, where there is least room.
import { readFileSync } from 'node:fs'
import type { Locator, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { parseDesign } from '../../src/paper/index.ts'
import type { Hand } from './hands.ts'
import { HANDS } from './hands.ts'

const slip = (page: Page): Locator => page.locator('.dummy-slip')

const margin = (page: Page): Locator => page.locator('.dummy-margin')

const size = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true })

const mechanismsOf = (text: string): readonly unknown[] => parseDesign(JSON.parse(text)).mechanisms

const endOf = (name: string): readonly unknown[] =>
  mechanismsOf(readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'))

test('a plan asks for the same in the list of plans and on its own page', async ({ page }) => {
  await page.goto('/plans/')
  const asks = await page.locator('.path .quiet').allTextContents()
  const links = await page
    .locator('.path a[href*="/plans/"]')
    .evaluateAll((all) => all.map((one) => (one as HTMLAnchorElement).href))
  const ways = [...new Set(links)]
  expect(asks.length).toBeGreaterThan(2)
  expect(ways).toHaveLength(asks.length)
  for (const [k, way] of ways.entries()) {
    await page.goto(way)
    expect((await page.locator('.plan-opener .quiet').textContent())?.trim()).toBe(asks[k]?.trim())
  }
})

async function start(page: Page, hand: Hand, plan: string): Promise<void> {
  await page.goto(`/plans/${plan}/`)
  await hand.press(page.getByRole('link', { name: 'Open the start' }))
  await page.locator('.dummy[data-awake="true"]').waitFor()
}

/** What a way is made of, alone: no chain. */
async function wish(
  page: Page,
  hand: Hand,
  { high, far, made, kind }: { high: string; far: string; made: string; kind: string },
): Promise<void> {
  await hand.press(page.getByRole('button', { name: /Make a wish/ }))
  await hand.type(size(page, 'How high over the page'), high)
  await hand.type(size(page, 'How far from your end'), far)
  await hand.press(slip(page).getByRole('button', { name: 'Add a condition' }))
  await hand.choose(slip(page).getByLabel('What it is made of'), made)
  await expect(slip(page)).toContainText(/\d ways?\. All shut flat/, { timeout: 60_000 })
  const way = slip(page)
    .locator('.way-found')
    .filter({ has: page.locator('strong').getByText(kind, { exact: true }) })
  await expect(way).toHaveCount(1)
  await hand.press(way.getByRole('button', { name: 'Use this' }))
}

async function build(page: Page, hand: Hand, on: string, kind: string): Promise<void> {
  await hand.take(page, on)
  const offer = slip(page).locator('.offers .offer').filter({ hasText: kind }).first()
  await expect(offer).toBeVisible({ timeout: 30_000 })
  await hand.press(offer)
}

const name = (page: Page, hand: Hand, word: string): Promise<void> =>
  hand.type(size(page, 'Name of this part'), word)

async function sizes(page: Page, hand: Hand, of: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(of)) await hand.type(size(page, label), value)
}

const works = (page: Page): Promise<void> =>
  expect(margin(page).getByRole('heading', { name: 'It works as paper', includeHidden: true })).toHaveCount(
    1,
    {
      timeout: 30_000,
    },
  )

async function mendAll(page: Page, hand: Hand): Promise<void> {
  await hand.unfold(page)
  await hand.press(page.getByRole('button', { name: 'See and mend' }))
  const mend = slip(page).getByRole('button', { name: /^Mend all/ })
  await expect(mend).toBeVisible({ timeout: 60_000 })
  await hand.press(mend)
  await works(page)
}

/** The file of the card, and its template. */
async function finish(page: Page, hand: Hand, end: string): Promise<void> {
  await works(page)
  await hand.press(page.getByRole('button', { name: 'Save, open, send' }))
  const file = page.waitForEvent('download')
  await hand.press(slip(page).getByRole('button', { name: 'Keep a file' }))
  expect(mechanismsOf(readFileSync(await (await file).path(), 'utf8'))).toEqual(endOf(end))
  await hand.press(page.getByRole('button', { name: 'Print the sheets' }))
  const sheet = page.waitForEvent('download')
  await hand.press(page.getByRole('button', { name: 'Save the template' }))
  const pdf = readFileSync(await (await sheet).path())
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
}

for (const hand of HANDS)
  test.describe(`by ${hand.name}`, () => {
    test.use(hand.use)
    test.setTimeout(240_000)

    test('a heron in the reeds', async ({ page }) => {
      await start(page, hand, 'heron')
      await wish(page, hand, {
        high: '40',
        far: '84',
        made: 'from the card itself',
        kind: 'V-fold cut from the card',
      })
      await name(page, hand, 'beak')
      await build(page, hand, 'Gutter', 'V-fold cut from the card')
      await name(page, hand, 'jaw')
      await sizes(page, hand, { Apex: '28', 'Apex to slit': '30', Slit: '48', Lean: '1' })
      await build(page, hand, 'Gutter', 'Layer cut from the card')
      await name(page, hand, 'bank')
      await build(page, hand, 'left fold', 'Layer cut from the card')
      await name(page, hand, 'reed')
      await sizes(page, hand, { 'Left depth': '44', 'Right depth': '14' })
      await hand.press(page.getByRole('button', { name: 'Duplicate' }))
      await hand.press(page.getByRole('button', { name: 'Mirror' }))
      await finish(page, hand, 'heron-in-the-reeds')
    })

    if (hand.name === 'touch alone')
      test('an owl that spreads its wings', async ({ page }) => {
        await start(page, hand, 'owl')
        await wish(page, hand, {
          high: '50',
          far: '90',
          made: 'from card of its own',
          kind: 'V-fold of its own card',
        })
        await name(page, hand, 'owl')
        await build(page, hand, 'left fold', 'V-fold of its own card')
        await name(page, hand, 'wing')
        await sizes(page, hand, { Ridge: '120' })
        await hand.press(page.getByRole('button', { name: 'Duplicate' }))
        await hand.press(page.getByRole('button', { name: 'Mirror' }))
        await expect(margin(page).getByText('2 things to mend')).toHaveCount(1, { timeout: 30_000 })
        await hand.take(page, 'Owl')
        const ridge = page.locator('.size').filter({ has: size(page, 'Ridge') })
        await hand.press(ridge.getByRole('button', { name: 'keep' }))
        await mendAll(page, hand)
        for (const wing of ['Wing', 'Wing 2']) {
          await hand.take(page, wing)
          await sizes(page, hand, { Ridge: '97' })
        }
        await finish(page, hand, 'owl-wings')
      })

    test('a card for the class', async ({ page }) => {
      await start(page, hand, 'class-card')
      await hand.unfold(page)
      await hand.press(page.getByRole('button', { name: 'Change the card' }))
      await hand.choose(slip(page).getByLabel('Pages'), 'A6, gutter upright')
      await expect(margin(page).getByText('2 things to mend')).toHaveCount(1, { timeout: 30_000 })
      await mendAll(page, hand)
      await hand.take(page, 'Moon')
      await sizes(page, hand, { Apex: '82' })
      await finish(page, hand, 'class-card')
    })
  })
