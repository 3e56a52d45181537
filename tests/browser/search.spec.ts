// The page that searches the book: what is found is in the unit tests of what looks through it.
import { expect, test } from '@playwright/test'

for (const width of [1280, 390])
  test(`at ${width} px the ring of the field that has focus covers nothing that is said below`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 800 })
    await page.goto('/search/?for=gutter')
    const field = page.getByRole('searchbox')
    await expect(page.getByText(/^\d+ places found/)).toBeVisible()
    await field.focus()
    const ring = await field.evaluate((input) => {
      const { outlineWidth, outlineOffset } = getComputedStyle(input)
      return (
        input.getBoundingClientRect().bottom +
        Number.parseFloat(outlineWidth) +
        Number.parseFloat(outlineOffset)
      )
    })
    const said = await page.locator('main [role="status"]').boundingBox()
    expect(said?.y).toBeGreaterThanOrEqual(ring)
  })
