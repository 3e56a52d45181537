import { mdxToJs } from 'satteri'
import { expect, test } from 'vitest'
import { unbroken } from '../../src/site/cells/unbroken.ts'

const page = async (source: string): Promise<string> => {
  const { code } = await mdxToJs(source, { mdastPlugins: [unbroken] })
  return code.replaceAll('\\xA0', '\u00a0').replaceAll('\\u2060', '\u2060')
}

test('no end of a line parts a number from its unit (SI Brochure, 5.4.3: a space stands between them; from memory)', async () => {
  const made = await page('Keep 1 mm from the ridge, **2 mm** from the rim, on card of 160 g/m².')
  expect(made).toContain('Keep 1\u00a0mm from')
  expect(made).toContain('2\u00a0mm')
  expect(made).toContain('160\u00a0g/m²')
})

test('nor the code of a standard at its hyphens (UAX #14: no break beside a word joiner, nor between hyphen and digit)', async () => {
  const made = await page('NGSS 3-5-ETS1-2 and MS-ETS1-2: compare well-made designs.')
  expect(made).toContain('3-5-\u2060ETS1-2 and MS-\u2060ETS1-2: compare well-made')
})

test('words that begin like a unit, and other spaces, stay as they are', async () => {
  const made = await page('Take 3 mmoths and 4 pieces of 10 mm.')
  expect(made).toContain('Take 3 mmoths and 4 pieces of 10\u00a0mm.')
})
