// What axe (Deque's rules for WCAG 2.2) has against the pages, as they first stand and as a hand leaves them.
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { desk, firstChapterPages, openBench, pages, phone, remember, unfold, visit } from './site.ts'

// Axe reads every element of a long page, several times over.
test.slow()

// A colour that is half way to the other theme is neither's.
test.use({ contextOptions: { reducedMotion: 'reduce' } })

// The steps of a card are there once the address asks for one.
for (const address of [...pages, '/steps/?from=owl']) {
  // Chapters are made of the same cells: every other one is looked at in every way.
  const isChapter = firstChapterPages.indexOf(address) % 2 === 0

  test(`${address} has nothing that axe objects to, on a desk by day and on a phone by night${isChapter ? ', unfolded, in forced colours, for reading and for the projector' : ''}`, async ({
    page,
  }) => {
    await page.setViewportSize(desk)
    await visit(page, address)
    // What is folded away is on the page too.
    await unfold(page)
    // Each look once: what a theme does to a colour it does at every width (tests/site/contrast.test.ts).
    for (const [viewport, colorScheme] of [
      [desk, 'light'],
      [phone, 'dark'],
    ] as const) {
      await page.setViewportSize(viewport)
      await page.emulateMedia({ colorScheme })
      expect(await objections(page), `${viewport.width} px, ${colorScheme}`).toBe('')
    }
    if (!isChapter) return
    await page.setViewportSize(desk)
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' })
    expect(await objections(page, LOOKS), 'forced colours').toBe('')
    await page.emulateMedia({ forcedColors: 'none' })
    for (const name of ['Reading', 'Projector']) {
      await page.getByRole('button', { name, exact: true }).click()
      expect(await objections(page, LOOKS), name).toBe('')
    }
  })
}

/**
 * What axe objects to, the size of handles aside where two lie side by side in a small picture: each number that
 * a handle sets has a field beside the bench (WCAG 2.2, 2.5.8, the exception 'equivalent'), and a finger that
 * comes down between two takes the nearer one.
 */
async function objections(page: Page, rules?: readonly string[]): Promise<string> {
  await drawn(page)
  await emptied(page)
  // It stays in the page: another half a megabyte for each look would take as long as the look.
  const isThere = await page.evaluate(() => 'axe' in globalThis)
  const axe = new AxeBuilder(isThere ? { page, axeSource: 'void 0' } : { page })
    .options({
      ...(rules ? { runOnly: { type: 'rule', values: [...rules] } } : {}),
      rules: { 'target-size': { enabled: true } },
      resultTypes: ['violations'],
    })
    // In the page itself: there are no frames whose answers would have to be brought together in a page of their own.
    .setLegacyMode(true)
  const { violations } = await axe.analyze()
  await filled(page)
  return violations
    .map(({ id, help, nodes }) => ({
      about: `${id}: ${help}`,
      places: nodes.filter(({ html }) => id !== 'target-size' || !html.startsWith('<div class="grip"')),
    }))
    .filter(({ places }) => places.length > 0)
    .map(({ about, places }) => `${about}\n${places.map(({ html }) => `  ${html}`).join('\n')}`)
    .join('\n')
}

/** A look that has just been asked for has been told to the page, and drawn. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  )

/** What a look changes: colours, places and sizes. */
const LOOKS = ['color-contrast', 'link-in-text-block', 'target-size', 'scrollable-region-focusable']

/**
 * A picture is one thing to those who listen: its role and name stay in, its thousands of lines are taken out while
 * axe looks, which would ask of each of them whether it can be seen.
 */
const emptied = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const taken = [...document.querySelectorAll('.drawing')].map((drawing) => {
      const nodes = [...drawing.childNodes]
      drawing.replaceChildren(...nodes.filter(({ nodeName }) => /^(title|desc)$/i.test(nodeName)))
      return () => drawing.replaceChildren(...nodes)
    })
    Object.assign(globalThis, { taken })
  })

const filled = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fill of (globalThis as unknown as { taken: (() => void)[] }).taken) fill()
  })

test.describe('by night for the projector, nothing that axe objects to', () => {
  test.beforeEach(async ({ page }) => {
    await page.setViewportSize({ width: 1280, height: 720 })
    for (const look of ['night', 'projector'] as const) await remember(page, look)
  })

  test('with an error shown, a word explained and the sheet asked for', async ({ page }) => {
    await openBench(page, firstChapterPages[2] ?? '/')
    const size = page.locator('.fields input[type=text], .fields input[inputmode]').first()
    await size.fill('far')
    await size.press('Enter')
    await expect(page.locator('.bench [aria-invalid=true]').first()).toBeVisible()
    await page.locator('button.term').first().click()
    expect(await objections(page), 'error and word').toBe('')
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Print the template' }).first().click()
    await expect(page.getByRole('dialog')).toBeVisible()
    expect(await objections(page), 'dialog').toBe('')
  })

  test('on the dummy page with an offer, a fault and the sheets asked for', async ({ page }) => {
    await page.goto('/dummy/')
    await page.locator('.dummy[data-awake="true"]').waitFor()
    await page.locator('.fold-ring').first().click()
    const layer = page.locator('.dummy-slip .offers .offer').filter({ hasText: 'Layer' }).first()
    await layer.waitFor()
    expect(await objections(page), 'offers').toBe('')
    await layer.click()
    const depth = page.getByRole('textbox', { name: 'Depth', exact: true })
    await depth.fill('100')
    await depth.press('Enter')
    await page.getByRole('button', { name: 'See and mend' }).click()
    await expect(page.locator('.dummy-slip').getByRole('button', { name: /^Mend/ })).toBeEnabled()
    expect(await objections(page), 'fault').toBe('')
    await page.getByRole('button', { name: 'Print the sheets' }).click()
    await expect(page.getByRole('dialog')).toBeVisible()
    expect(await objections(page), 'sheets').toBe('')
  })
})
