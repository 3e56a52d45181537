import fontkit from '@cantoo/fontkit'
import type { WordMark } from '../../drawing/pen/marks.ts'
import type { SheetFont } from '../../sheet/files/font.ts'

/** A word as the `d` of its letters' outlines. */
export type Outliner = (word: WordMark) => string

function opened(file: Uint8Array) {
  const font = fontkit.create(file)
  if (!('characterSet' in font)) throw new RangeError('a font file must hold one font, not a collection')
  return font
}

/** Whoever paints the picture need not have our type. Letters are set side by side without kerning, as on all sheets. */
export function outliner(font: SheetFont): Outliner {
  const faces = { regular: font.regular.map(opened), bold: font.bold.map(opened) }
  return ({ text, at: [x, y], size, anchor, bold }) => {
    let width = 0
    const letters = [...text].map((letter) => {
      const code = letter.codePointAt(0) ?? 0
      const face = faces[bold ? 'bold' : 'regular'].find((one) => one.hasGlyphForCodePoint(code))
      const glyph = face?.glyphForCodePoint(code)
      if (!face || !glyph) throw new RangeError(`the type has no letter “${letter}”, in: ${text}`)
      const scale = size / face.unitsPerEm
      const along = width
      width += scale * glyph.advanceWidth
      return { path: glyph.path, scale, along }
    })
    const left = x - { start: 0, middle: width / 2, end: width }[anchor]
    return letters
      .map(({ path, scale, along }) => path.transform(scale, 0, 0, -scale, left + along, y).toSVG())
      .join('')
  }
}
