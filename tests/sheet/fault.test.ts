// A card that fails is printed all the same, and the sheet says so before anything is cut.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { faultSays, layOut } from '../../src/sheet/index.ts'
import { beak, card, dummy } from './designs.ts'

/** So long a slit leaves hardly any paper at the edge of its page. */
const spoilt: Design = card(60, 100, [beak(30, -28, 55)])

const said = (pages: readonly SheetPage[]): string =>
  pages
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    .join(' ')

const printed = (design: Design, more: object = {}): string => {
  const fault = faultSays(design)
  return said(layOut(design, { paper: 'a4', care: [], fault, ...more }))
}

describe('a card that fails', () => {
  test('is told to, with the first thing that is to be mended', () => {
    expect(faultSays(spoilt)).toMatch(/^(1 thing|\d things) to mend first\. \S/)
  })

  test.each(['front', 'ticks', 'back'] as const)('says so on its sheet, printed as %s', (lines) => {
    const words = printed(spoilt, { lines })
    expect(words).toContain('Do not cut yet.')
    expect(words).toContain(faultSays(spoilt).split(' ').slice(0, 5).join(' '))
  })

  test('and in full once, even where its words stand on another page, or it is parted over several', () => {
    const large: Design = { ...spoilt, card: { ...spoilt.card, width: 140, height: 205 } }
    for (const paper of ['a3', 'a4', 'a5'] as const) {
      const fault = 'A beak sticks out.'
      const words = said(layOut(large, { paper, care: [], fault, tiled: true }))
      expect(words.split('A beak sticks out.')).toHaveLength(2)
      expect(words.split('Do not cut yet.').length).toBeGreaterThanOrEqual(2)
    }
  })
})

test('a sound card says nothing of it', () => {
  expect(faultSays(dummy('beak'))).toBe('')
  expect(printed(dummy('beak'))).not.toContain('Do not cut')
})
