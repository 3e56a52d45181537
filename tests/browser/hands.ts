/** The ways in which a hand does a thing on a page: by mouse, by keyboard alone, by touch alone. */
import type { Locator, Page, PlaywrightTestOptions } from '@playwright/test'
import { expect } from '@playwright/test'

export interface Hand {
  readonly name: string
  readonly use: Partial<PlaywrightTestOptions>
  press(locator: Locator): Promise<void>
  /** Types over what stands in a field. */
  type(locator: Locator, text: string): Promise<void>
  /** Picks what a list has, by its words. */
  choose(locator: Locator, words: string): Promise<void>
  /** Takes up what the planning page's own list calls so; the last one of that name. */
  take(page: Page, row: string): Promise<void>
  /** Unfolds the words of the margin where they are folded away. */
  unfold(page: Page): Promise<void>
}

const rowOf = (page: Page, row: string): Locator =>
  page
    .getByRole('treeitem')
    .filter({ has: page.locator('strong').getByText(row, { exact: true }) })
    .last()

const mouse: Hand = {
  name: 'mouse',
  use: {},
  press: (locator) => locator.click(),
  async type(locator, text) {
    await locator.click({ clickCount: 3 })
    await locator.page().keyboard.type(text)
    await locator.page().keyboard.press('Enter')
  },
  async choose(locator, words) {
    await locator.selectOption(words)
  },
  take: (page, row) => rowOf(page, row).click(),
  unfold: async () => {},
}

/** So many things on a page can be gone through with Tab. */
const MOST_TABS = 250

const hasFocus = (locator: Locator): Promise<boolean> =>
  locator.evaluate((element) => element === document.activeElement)

/** How many stops of Tab lie between what has the focus and what is wanted, counted on the page; below nought it lies before. */
const stopsTo = (wanted: Locator): Promise<number> =>
  wanted.evaluate((element) => {
    // What lies behind a dialog cannot be reached, and of radio buttons that belong together one can.
    const within: ParentNode = document.querySelector(':modal') ?? document
    const isOther = (stop: Element): boolean =>
      stop instanceof HTMLInputElement &&
      stop.type === 'radio' &&
      !stop.checked &&
      within.querySelector(`input[type="radio"][name="${stop.name}"]:checked`) !== null
    const stops = [
      ...within.querySelectorAll<HTMLElement | SVGElement>(
        'a[href], button, input, select, textarea, summary, [tabindex]',
      ),
    ].filter(
      (stop) =>
        stop.tabIndex >= 0 &&
        !stop.matches(':disabled') &&
        !isOther(stop) &&
        stop.checkVisibility({ visibilityProperty: true }),
    )
    if (!stops.includes(element)) return Number.NaN
    return stops.indexOf(element) - stops.findIndex((stop) => stop.matches(':focus'))
  })

/** Goes with Tab, on or back, until something has the focus, as somebody does who has no pointer. */
async function tabTo(locator: Locator): Promise<void> {
  await expect(locator).toBeVisible()
  const { keyboard } = locator.page()
  for (let left = MOST_TABS; left > 0; ) {
    const stops = await stopsTo(locator)
    if (stops === 0) return
    if (Number.isNaN(stops)) break
    for (let k = 0; k < Math.abs(stops); k++) await keyboard.press(stops > 0 ? 'Tab' : 'Shift+Tab')
    left -= Math.abs(stops)
  }
  throw new Error(`Tab does not come to ${locator}`)
}

const keyboard: Hand = {
  name: 'keyboard alone',
  use: {},
  async press(locator) {
    await tabTo(locator)
    await locator.page().keyboard.press('Enter')
  },
  async type(locator, text) {
    await tabTo(locator)
    const { keyboard: keys } = locator.page()
    await keys.press('ControlOrMeta+a')
    await keys.type(text)
    await keys.press('Enter')
  },
  async choose(locator, words) {
    await tabTo(locator)
    await locator.page().keyboard.type(words)
    await expect(locator.locator('option:checked')).toHaveText(words)
  },
  async take(page, row) {
    await tabTo(page.locator('[role="treeitem"][tabindex="0"]'))
    await page.keyboard.press('Home')
    const wanted = rowOf(page, row)
    for (let k = 0; k < MOST_TABS && !(await hasFocus(wanted)); k++) await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
  },
  unfold: async () => {},
}

const touch: Hand = {
  name: 'touch alone',
  use: { hasTouch: true, viewport: { width: 390, height: 844 } },
  press: (locator) => locator.tap(),
  // On a phone the keys of the screen type; what stands there is chosen with a long press.
  async type(locator, text) {
    await locator.tap()
    await locator.fill(text)
    await locator.press('Enter')
  },
  // The list of a phone's own.
  async choose(locator, words) {
    await locator.tap()
    await locator.selectOption(words)
  },
  async take(page, row) {
    await touch.unfold(page)
    await rowOf(page, row).tap()
  },
  async unfold(page) {
    const words = page.locator('.dummy-margin details').first()
    if ((await words.getAttribute('open')) === null) await words.locator('summary').tap()
  },
}

export const HANDS: readonly Hand[] = [mouse, keyboard, touch]
