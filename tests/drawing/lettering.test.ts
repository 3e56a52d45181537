import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { create } from '@cantoo/fontkit'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chart } from '../../src/drawing/chart/chart.ts'
import { pattern } from '../../src/drawing/pattern/pattern.ts'
import type { Rect, Side, Wish } from '../../src/drawing/pen/lettering.ts'
import { placeWords, textWidth, wordRect } from '../../src/drawing/pen/lettering.ts'
import type { Drawing, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import { section } from '../../src/drawing/section/section.ts'
import { DEFAULT_CAMERA, view } from '../../src/drawing/view/view.ts'
import { design, runs } from '../paper/shared/designs.ts'

/** What a handle in the middle of a figure wants said. */
const HANDLE = {
  text: 'slit 42.0 mm',
  role: 'handle',
  size: 15,
  at: [150, 100],
  gap: 8,
  optional: true,
} as const

const find = createRequire(import.meta.url).resolve

const font = (weight: 400 | 700) =>
  create(
    readFileSync(
      find(
        `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff`,
      ),
    ),
  )

describe('textWidth', () => {
  // The outside reference is the font itself, read by fontkit, with figures of one width as pages set them.
  it.each([400, 700] as const)('is a little more than the font sets at weight %i', (weight) => {
    const face = font(weight)
    if (!('layout' in face)) throw new Error('not a single font')
    for (const text of [
      '30.7 mm',
      '109.5°',
      'slit 46.0 mm',
      'highest 31.6 mm at 109°',
      'mountain',
      'apex',
      '1.21 in',
      'valley',
    ]) {
      const real = (15 * face.layout(text, ['tnum']).advanceWidth) / face.unitsPerEm
      const guess = textWidth(text, 15, weight === 700)
      expect(guess, text).toBeGreaterThan(0.98 * real)
      expect(guess, text).toBeLessThan(1.2 * real)
    }
  })
})

/** Pairs of words that cover one another, and words that leave the box. */
function faults(drawing: Drawing): readonly string[] {
  const words = drawing.marks.filter((mark): mark is WordMark => mark.mark === 'word')
  const rects = words.map(wordRect)
  const [left, top, width, height] = drawing.box
  const found: string[] = []
  rects.forEach(([x, y, w, h], k) => {
    if (x < left || y < top || x + w > left + width || y + h > top + height)
      found.push(`${words[k]?.text} leaves`)
    rects.slice(k + 1).forEach(([u, v, s, t], m) => {
      if (Math.min(x + w, u + s) - Math.max(x, u) > 1.5 && Math.min(y + h, v + t) - Math.max(y, v) > 2.5)
        found.push(`${words[k]?.text} covers ${words[k + 1 + m]?.text}`)
    })
  })
  return found
}

describe('placeWords', () => {
  it('places none, and one at the side that was asked for', () => {
    const box = [0, 0, 300, 200] as const
    expect(placeWords([], box)).toEqual([])
    const [word] = placeWords(
      [{ text: 'tip', role: 'note', size: 15, at: [150, 100], gap: 8, sides: ['left'] }],
      box,
    )
    expect(word?.anchor).toBe('end')
    expect(word?.at[0]).toBe(142)
  })

  it('leaves out an optional word that finds no free place nearby, and only such a one', () => {
    const box = [0, 0, 300, 200] as const
    expect(placeWords([HANDLE], box)).toHaveLength(1)
    expect(placeWords([HANDLE], box, { rects: [[60, 40, 180, 120]] })).toHaveLength(0)
    expect(placeWords([{ ...HANDLE, optional: false }], box, { rects: [[60, 40, 180, 120]] })).toHaveLength(1)
  })

  // How words keep clear of lines and of one another is common practice, no source.
  it('says in brief what would lie across a line, and all of it where there is room', () => {
    const box = [0, 0, 300, 200] as const
    const wish: Wish = { ...HANDLE, brief: '42.0 mm', sides: ['right'] }
    const said = (...lines: (readonly [Point, Point])[]) => placeWords([wish], box, { lines })[0]?.text
    expect(said()).toBe('slit 42.0 mm')
    // The short one ends before this line, the long one does not, and no other side is free.
    const right = 158 + textWidth('42.0 mm', 15) + 4
    const fence = [[...Array(24)].map((_, k) => [[6 * k, 0] as Point, [6 * k, 200] as Point] as const)].flat()
    expect(said(...fence, [[right, 0] as Point, [right, 200] as Point])).toBe('42.0 mm')
    // One line just where both would stand makes nothing shorter: it is as much in the way of the short one.
    expect(said(...fence, [[165, 0] as Point, [165, 200] as Point])).not.toBe('42.0 mm')
  })

  it('says in brief only right beside its spot: farther off, a number without its name could be anything’s', () => {
    const wish: Wish = { ...HANDLE, text: 'left foot 30.0 mm', brief: '30.0 mm' }
    // All that is near is taken, and there is room for the short one half an em farther right.
    const near = [
      [80, 60, 70, 80],
      [120, 60, 60, 30],
      [120, 110, 60, 30],
      [150, 60, 13, 80],
      [240, 0, 60, 200],
    ] as const
    const place = (rects: readonly Rect[]) => placeWords([wish], [0, 0, 300, 200], { rects })
    expect(place(near.slice(4)).map(({ text }) => text)).toEqual(['left foot 30.0 mm'])
    expect(place(near)).toHaveLength(0)
  })

  it('stands across no line, cut or fold: a little off its first place, or not at all', () => {
    const box = [0, 0, 300, 200] as const
    const wish: Wish = { ...HANDLE, sides: ['right'] }
    const upright = (...xs: readonly number[]) => xs.map((x) => [[x, 0] as Point, [x, 200] as Point] as const)
    // Through the words on the right and above: those on the left are free.
    const [word] = placeWords([wish], box, { lines: upright(150, 195) })
    expect(word?.anchor).toBe('end')
    expect(placeWords([wish], box, { lines: upright(105, 150, 195) })).toHaveLength(0)
    expect(placeWords([{ ...wish, optional: false }], box, { lines: upright(105, 150, 195) })).toHaveLength(1)
    // Widths are guessed too large rather than too small: a line at the very end is not in the word.
    const end = 158 + textWidth(wish.text, 15)
    const beside = placeWords([wish], box, { lines: upright(end - 1) })
    expect(beside[0]?.anchor).toBe('start')
  })

  it('keeps half an em between one word and the next, above each other too', () => {
    const [first, second] = placeWords(
      [
        { text: '42.3°', role: 'handle', size: 20, at: [150, 100], gap: 4, sides: ['right'] },
        { text: 'apex', role: 'handle', size: 20, at: [150, 74], gap: 4, sides: ['right'] },
      ],
      [0, 0, 300, 200],
    ).map(wordRect)
    if (!first || !second) throw new Error('a word is missing')
    const free = Math.max(first[1] - second[1] - second[3], second[1] - first[1] - first[3])
    const beside = Math.max(first[0] - second[0] - second[2], second[0] - first[0] - first[2])
    expect(Math.max(free, beside)).toBeGreaterThanOrEqual(10)
  })

  it('goes off a shape where there is room beside it', () => {
    const wish = {
      text: '31.1 mm',
      role: 'dimension',
      size: 15,
      at: [150, 100],
      gap: 8,
      sides: ['right'],
    } as const
    const shapes = [
      [
        [140, 40],
        [290, 40],
        [290, 160],
        [140, 160],
      ],
    ] as const
    const [word] = placeWords([wish], [0, 0, 300, 200], { shapes })
    expect(word?.anchor).toBe('end')
    // A moon seen nearly edge-on hides no more than a figure of it, and is seen itself no more.
    const slim = [165, 171, 171, 165].map((x, k): Point => [x, k < 2 ? 40 : 160])
    expect(placeWords([wish], [0, 0, 300, 200], { shapes: [slim] })[0]?.anchor).toBe('end')
  })

  it('parts two words on one line by more than a space, and keeps the same off words that stand already', () => {
    const box = [0, 0, 600, 200] as const
    const wish = (text: string, x: number, side: Side): Wish => ({
      ...{ text, role: 'note', size: 20, at: [x, 100], gap: 8, sides: [side] },
    })
    // Common practice, no source: a space is a quarter of an em, and twice as much ends what is read as one.
    const isApart = (a: Rect, b: Rect): boolean =>
      Math.max(a[0], b[0]) - Math.min(a[0] + a[2], b[0] + b[2]) >= 9.9 ||
      Math.max(a[1], b[1]) - Math.min(a[1] + a[3], b[1] + b[3]) >= 4.9
    const tree = wish('tree', 300, 'right')
    for (const far of [0.1, 0.3, 0.45]) {
      // It wishes to end that many ems before the other word.
      const tip = wish('ridge’s tip', 308 - 20 * far + 8, 'left')
      const [first, second] = placeWords([tree, tip], box).map(wordRect)
      const [alone] = placeWords([tip], box, { words: first ? [first] : [] }).map(wordRect)
      for (const other of [second, alone])
        expect(first && other && isApart(first, other), `${far} em`).toBe(true)
    }
  })

  it('keeps two words at one spot apart', () => {
    const wish = { text: 'beside', role: 'note', size: 15, at: [150, 100], gap: 8 } as const
    const marks = placeWords([wish, wish, wish], [0, 0, 300, 200])
    expect(faults({ box: [0, 0, 300, 200], unit: 'px', marks, says: '' })).toEqual([])
  })

  it('keeps the words of every figure apart and inside, at 340 and 600 px and on a projector, whatever the beak', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        number(0, 180),
        number(15, 60),
        number(15, 60),
        number(6, 90),
        number(55, 85),
        (opening, up, down, cut, slit) => {
          const one = design([
            {
              id: 'beak',
              kind: 'cut-v-fold',
              on: 'gutter',
              apex: Math.min(148, slit + up),
              run: slit - Math.min(148, slit + up),
              cut,
            },
            {
              id: 'jaw',
              kind: 'cut-v-fold',
              on: 'gutter',
              apex: Math.max(0, slit - down),
              run: slit - Math.max(0, slit - down),
              cut,
            },
          ])
          for (const { text, ...size } of [
            { width: 340, height: 280, text: 15 },
            { width: 600, height: 440, text: 15 },
            { width: 640, height: 480, text: 34 },
          ]) {
            expect(
              faults(view(one, opening, DEFAULT_CAMERA, size, { rise: ['beak', 'jaw'], handle: true, text })),
            ).toEqual([])
            expect(faults(section(one, opening, 'beak', size, { text }))).toEqual([])
            expect(faults(chart(one, opening, size, { text }))).toEqual([])
            expect(faults(pattern(one, size, { handles: true, text }))).toEqual([])
          }
        },
      ),
      { ...runs(40), endOnFailure: true },
    )
  }, 120_000)
})
