// A lesson with paper: from a chapter to its class page, readings, the wall, a pack.
import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'

test('a chapter’s card becomes a lesson: readings against the model, one thing at a time on the wall, a pack to print', async ({
  page,
}) => {
  const asked: string[] = []
  page.on('request', (request) => asked.push(request.url()))
  await page.goto('/chapters/one-slit-two-v-folds/')
  await page.getByRole('link', { name: 'Get a class pack for this chapter' }).click()
  await page.locator('.class-page[data-ready="true"]').waitFor()
  await expect(page.getByLabel('Card', { exact: true })).toHaveValue('chapter:one-slit-two-v-folds')

  // What cannot be is told, and what was there stays.
  const pupils = page.getByLabel('Pupils')
  await pupils.fill('99')
  await expect(page.getByText('Pupils must be a whole number from 1 to 60, not “99”.')).toBeVisible()
  await expect(page.getByText('30 sheets, all different')).toBeVisible()
  await pupils.fill('6')
  await page.getByLabel('Groups').fill('3')
  await expect(page.getByText('6 sheets, all different')).toBeVisible()
  const fields = page.locator('.reading-field input')
  await expect(fields).toHaveCount(6)

  // A part of the lesson gets a minute of the next one's, by a key.
  const end = page.getByRole('slider', { name: 'End of Show' })
  await end.press('ArrowRight')
  await expect(end).toHaveAttribute('aria-valuetext', 'Show ends after 6 minutes')

  // Readings are typed, out of range they are told, and pasted with their faults named.
  await fields.first().fill('400')
  await expect(page.getByText(/400 mm is out of range/)).toBeVisible()
  await fields.first().fill('19,5')
  await page.getByText('Paste readings').click()
  const paste = page.locator('.readings-paste textarea')
  await paste.fill('sheet;size;reading\nB1;30;24,5\nZ7;30;20\nC1;40;9\n')
  await page.getByRole('button', { name: 'Take them over' }).click()
  await expect(page.getByText('Line 3, column 1: there is no sheet “Z7”')).toBeVisible()
  await expect(paste).toHaveValue(/Z7/)
  await expect(page.locator('.readings-out .m-curve')).toHaveCount(0)
  await page.getByRole('button', { name: 'Show the model' }).click()
  await expect(page.locator('.readings-out .m-curve')).toHaveCount(1)
  await expect(page.locator('.readings-out .m-dimension')).toHaveCount(3)
  await expect(page.locator('.readings-slips').getByText(/^C1 −/)).toBeVisible({ timeout: 15_000 })

  // What was saved as a table comes back from it, and all of it is there after the page was left.
  const [table] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the readings' }).click(),
  ])
  const text = readFileSync(await table.path(), 'utf8')
  expect(text).toMatch(/^\ufeffsheet,size,reading_mm\r\nA1,\d+,19\.5\r\n/)
  await page.getByRole('button', { name: 'Clear all' }).click()
  await expect(fields.first()).toHaveValue('')
  await page.locator('input[type="file"]').setInputFiles({
    name: 'readings.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(text),
  })
  await expect(fields.first()).toHaveValue('19.5')
  await page.reload()
  await page.locator('.class-page[data-ready="true"]').waitFor()
  await expect(fields.first()).toHaveValue('19.5')

  // On the wall a clicker's key uncovers first, then goes on.
  await page.getByRole('button', { name: 'Put it on the wall' }).click()
  const wall = page.getByRole('dialog', { name: 'The lesson on the wall' })
  await page.keyboard.press('PageDown')
  await expect(wall.getByRole('heading')).toHaveText('A longer slit: what will the tip do?')
  await expect(wall.locator('.wall-answer')).toHaveText('?')
  await page.keyboard.press('PageDown')
  await expect(wall.locator('.wall-answer')).toHaveText('It stands higher.')
  await page.keyboard.press('PageDown')
  await expect(wall.getByRole('heading')).toHaveText(/^1\. /)
  await page.keyboard.press('Escape')
  await expect(wall).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'Put it on the wall' })).toBeFocused()

  // What makes the PDF comes when it is asked for, and not before.
  expect(asked.filter((address) => address.includes('pack-worker'))).toEqual([])
  const [pack] = await Promise.all([
    page.waitForEvent('download', { timeout: 30_000 }),
    page.getByRole('button', { name: 'Get the pack' }).click(),
  ])
  expect(pack.suggestedFilename()).toBe('herons-beak-class-letter.pdf')
  expect(
    readFileSync(await pack.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-')
  await expect(page.getByText(/is saved: \d+ pages/)).toBeVisible()
  const own = new URL(page.url()).origin
  expect(asked.filter((address) => !address.startsWith(own) && !/^(blob|data):/.test(address))).toEqual([])
})

test('a dummy of one’s own is a lesson too, and is kept for the next time', async ({ page }) => {
  await page.goto('/dummy/?from=moth')
  await page.locator('.dummy[data-awake="true"]').waitFor()
  await page.getByRole('button', { name: 'Save, open, send' }).click()
  await page.getByRole('button', { name: 'A lesson with it' }).click()
  await expect(page).toHaveURL(/\/class\/#d=/)
  await page.locator('.class-page[data-ready="true"]').waitFor()
  await expect(page.getByLabel('Card', { exact: true })).toHaveValue('link:')
  await page.goto('/class/')
  await page.locator('.class-page[data-ready="true"]').waitFor()
  await page.getByLabel('Card', { exact: true }).selectOption({ label: 'Moth' })
  await expect(page.getByText(/of the moth/).first()).toBeAttached()
})

// What has the focus is in sight, though the chart beside the readings stays where it is: WCAG 2.2, 2.4.11.
test('at the back of a room the keys reach what stands below the chart', async ({ page }) => {
  await page.setViewportSize({ width: 1920, height: 1080 })
  await page.addInitScript(() => localStorage.setItem('hingebook.projector', 'on'))
  await page.goto('/class/')
  const paste = page.locator('.readings-paste summary')
  await paste.focus()
  await expect(paste).toBeInViewport({ ratio: 0.9 })
  await paste.press('Enter')
  await page.keyboard.press('Tab')
  await expect(page.locator('.readings-paste textarea')).toBeFocused()
  await expect(page.locator('.readings-paste textarea')).toBeInViewport({ ratio: 0.9 })
})
