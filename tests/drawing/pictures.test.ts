// Pictures as tests: each drawing is compared with the SVG that somebody looked at and kept.
// After a change that is meant: look at the `-changed` twin, then give it the old one's name.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { wordRect } from '../../src/drawing/pen/lettering.ts'
import type { Drawing, PathMark, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import { gallery } from './gallery.ts'

const output = new URL('output/', import.meta.url)

const style = '<?xml-stylesheet type="text/css" href="../../../src/drawing/pen/marks.css"?>\n'

const pictures = await gallery()

const words = (drawing: Drawing): readonly WordMark[] =>
  drawing.marks.filter((mark): mark is WordMark => mark.mark === 'word')

const numbersOf = (drawing: Drawing): readonly number[] =>
  drawing.marks.flatMap((mark) =>
    mark.mark === 'path' ? mark.runs.flat().flatMap((p: Point) => [...p]) : [...mark.at],
  )

describe.each(pictures)('$name', ({ name, draw }) => {
  const drawing = draw()

  it('looks as it did when it was last looked at', () => {
    const kept = new URL(`${name}.svg`, output)
    const changed = new URL(`${name}-changed.svg`, output)
    const now = style + toSvg(drawing, { digits: 3 })
    const same = existsSync(kept) && readFileSync(kept, 'utf8') === now
    if (same) rmSync(changed, { force: true })
    else writeFileSync(changed, now)
    expect(same, `output/${name}-changed.svg is new: look at it, then keep it or mend the drawing`).toBe(true)
  })

  it('says in words what it shows', () => {
    expect(drawing.says).toMatch(/\.$/)
  })

  it('holds numbers only', () => {
    for (const n of numbersOf(drawing)) expect(Number.isFinite(n)).toBe(true)
  })

  it('keeps its words inside the box, and off one another', () => {
    const [left, top, width, height] = drawing.box
    const rects = words(drawing).map((word) => ({ text: word.text, rect: wordRect(word) }))
    for (const {
      text,
      rect: [x, y, w, h],
    } of rects) {
      expect(x, text).toBeGreaterThanOrEqual(left)
      expect(y, text).toBeGreaterThanOrEqual(top)
      expect(x + w, text).toBeLessThanOrEqual(left + width)
      expect(y + h, text).toBeLessThanOrEqual(top + height)
    }
    rects.forEach(({ text, rect: a }, k) => {
      for (const { text: other, rect: b } of rects.slice(k + 1)) {
        const across = Math.min(a[0] + a[2], b[0] + b[2]) - Math.max(a[0], b[0])
        const down = Math.min(a[1] + a[3], b[1] + b[3]) - Math.max(a[1], b[1])
        // A hair of white space may be shared.
        expect(across > 1.5 && down > 2.5, `${text} covers ${other}`).toBe(false)
      }
    })
  })

  it('gives each surface its light and its card', () => {
    const surfaces = drawing.marks.filter(
      (mark): mark is PathMark => mark.mark === 'path' && (mark.role === 'facet' || mark.role === 'slice'),
    )
    for (const { paint } of surfaces) {
      expect(paint?.light).toBeGreaterThanOrEqual(0)
      expect(paint?.light).toBeLessThanOrEqual(1)
      expect(paint?.card).toBeGreaterThanOrEqual(0)
      expect(paint?.card).toBeLessThanOrEqual(5)
    }
  })
})

describe('the gallery', () => {
  it('keeps no picture that nothing draws', () => {
    const names = pictures.map(({ name }) => `${name}.svg`)
    const kept = readdirSync(output).filter((file) => file.endsWith('.svg') && !file.endsWith('-changed.svg'))
    expect(kept.filter((file) => !names.includes(file))).toEqual([])
  })
})
