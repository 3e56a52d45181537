// The table of letter widths against the font's own files, read by fontkit.
import fontkit from '@cantoo/fontkit'
import { describe, expect, test } from 'vitest'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { CAPITAL, letters, TAIL, wordWidth } from '../../src/sheet/marks/letters.ts'

const files = await fontOnDisk()

function opened(bytes: Uint8Array) {
  const font = fontkit.create(bytes)
  if (!('hasGlyphForCodePoint' in font)) throw new Error('one font was expected')
  return font
}

describe.each(['regular', 'bold'] as const)('%s', (weight) => {
  const fonts = files[weight].map(opened)

  test('every letter of the table is as wide as in the font', () => {
    expect(letters.length).toBeGreaterThan(280)
    for (const letter of letters) {
      const code = letter.codePointAt(0) ?? 0
      const font = fonts.find((one) => one.hasGlyphForCodePoint(code))
      expect(font, letter).toBeDefined()
      expect(wordWidth(letter, 1000, weight === 'bold'), letter).toBe(
        font?.glyphForCodePoint(code)?.advanceWidth,
      )
    }
  })

  test('capitals are as high as they are taken to be, and tails no longer', () => {
    for (const font of fonts) {
      expect(font.unitsPerEm).toBe(1000)
      expect(font.capHeight / 1000).toBeCloseTo(CAPITAL, 3)
    }
    const tail = Math.min(
      ...[...'gjpqyQç,;'].map((letter) => fonts[0]?.glyphForCodePoint(letter.charCodeAt(0))?.bbox.minY ?? 0),
    )
    expect(-tail / 1000).toBeLessThanOrEqual(TAIL + 0.02)
  })
})

test('a letter outside the table is taken to be wide', () => {
  expect(wordWidth('蛾', 3)).toBe(3)
})
