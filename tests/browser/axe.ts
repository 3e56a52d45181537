// What axe (Deque's rules for WCAG 2.2) has against a page.
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'

/**
 * What axe objects to, the size of handles aside where two lie side by side in a small picture: each number that
 * a handle sets has a field beside the bench (WCAG 2.2, 2.5.8, the exception 'equivalent'), and a finger that
 * comes down between two takes the nearer one.
 */
export async function objections(page: Page, rules?: readonly string[]): Promise<string> {
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
export const LOOKS = ['color-contrast', 'link-in-text-block', 'target-size', 'scrollable-region-focusable']

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
