import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../../src/paper/index.ts'
import { check, glueArea, modelOf, parseDesign, pieceOn, stick, uprightOn } from '../../../src/paper/index.ts'
import { outlineOf, SHELF } from '../../../src/widgets/pieces/shelf.ts'
import { coloured } from '../../../src/widgets/pieces/sketch.ts'
import { design, gluedMoth, runs } from '../../paper/shared/designs.ts'
import { gardens } from '../../paper/shared/gardens.ts'

/** Even-odd rule by the ray to the right. */
const isIn = (ring: readonly Flat[], [x, y]: Flat): boolean =>
  ring.reduce((within, [ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length] as Flat
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !within : within
  }, false)

/** Points all along an outline and across it. */
const along = (ring: readonly Flat[]): readonly Flat[] =>
  ring.flatMap((p, k) => {
    const q = ring[(k + 1) % ring.length] as Flat
    return [0, 0.25, 0.5, 0.75].map((t): Flat => [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])])
  })

const faces = ({ name }: { readonly name: string }): boolean => !name.startsWith('cover')

test('every shape is one ring of at most 200 corners, about 100 across', () => {
  expect(SHELF.length).toBeGreaterThanOrEqual(12)
  expect(new Set(SHELF.map(({ word }) => word)).size).toBe(SHELF.length)
  for (const shape of SHELF) {
    const ring = outlineOf(shape)
    expect(ring.length).toBeLessThanOrEqual(200)
    const size = Math.max(...ring.flatMap(([x, y]) => [Math.abs(x), Math.abs(y)]))
    expect(size).toBeGreaterThan(40)
    expect(size).toBeLessThan(64)
    // What is drawn on it lies on it, or within a line's width of its edge.
    for (const { shape: drawn } of shape.drawn)
      for (const p of drawn) {
        const off = Math.min(...along(ring).map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])))
        expect(isIn(ring, p) || off < 5).toBe(true)
      }
  }
})

test('the glue of every shape lies under the piece, on the paper of its panel and off every hole, on random cards', () => {
  let glued = 0
  fc.assert(
    fc.property(
      gardens(5),
      fc.constantFrom(...SHELF),
      fc.double({ min: 0.05, max: 1.5, noNaN: true }),
      fc.nat(),
      fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
      (made: Design, shape, size, pick, [u, v]) => {
        const model = modelOf(made)
        const index = pick % model.panels.length
        const panel = model.panels[index]
        if (!panel || !faces(panel)) return
        const box = ([0, 1] as const).map((k) => panel.outline.map((p) => p[k]))
        const at = box.map(
          (xs, k) => Math.min(...xs) + (k === 0 ? u : v) * (Math.max(...xs) - Math.min(...xs)),
        )
        const ring = outlineOf(shape).map(
          ([x, y]): Flat => [(at[0] as number) + size * x, (at[1] as number) + size * y],
        )
        const glue = glueArea(model, index, ring)
        if (!glue) return
        glued++
        for (const p of along(glue)) {
          expect(isIn(ring, p)).toBe(true)
          expect(isIn(panel.outline, p)).toBe(true)
          for (const { outline } of panel.notches) expect(isIn(outline, p)).toBe(false)
        }
      },
    ),
    runs(150),
  )
  expect(glued).toBeGreaterThan(20)
})

describe('sticking', () => {
  const card = design([gluedMoth({ ridge: 50 })])

  test.each(SHELF.map((shape) => [shape.label, shape] as const))(
    '%s fits on a facet and on a page, and fails nothing',
    (_, shape) => {
      for (const on of ['moth/left', 'moth/right', 'page/right']) {
        const found = stick(card, on, { word: shape.word, outline: outlineOf(shape) })
        if ('sentence' in found) throw new Error(`${on}: ${found.sentence}`)
        const made = parseDesign(coloured(found, shape))
        expect(made.mechanisms.at(-1)).toMatchObject({ id: shape.word, kind: 'rider', on })
        expect(check(made, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
        expect(made.papers?.[shape.word]).toBe(shape.paper)
        expect(made.art).toHaveLength(shape.drawn.length)
      }
    },
  )

  test('is upright and not left for right on either face', () => {
    for (const on of ['moth/left', 'moth/right']) {
      const { right, up } = uprightOn(card, on)
      expect(Math.hypot(...right)).toBeCloseTo(1, 9)
      expect(right[0] * up[0] + right[1] * up[1]).toBeCloseTo(0, 9)
    }
    // The flat coordinates of the two faces are mirror images of each other.
    const [left, other] = [uprightOn(card, 'moth/left'), uprightOn(card, 'moth/right')]
    expect(Math.sign(left.right[0])).toBe(-Math.sign(other.right[0]))
    expect(left.up[1]).toBeCloseTo(other.up[1], 9)
  })

  test('takes another name where one is taken, and says why where there is no room', () => {
    const shape = SHELF[0]
    if (!shape) throw new Error('the shelf is empty')
    const cut = { word: shape.word, outline: outlineOf(shape) }
    const first = stick(card, 'moth/left', cut)
    if ('sentence' in first) throw new Error(first.sentence)
    const second = stick(first.design, 'moth/right', cut)
    expect('id' in second && second.id).toBe('moon-2')
    const tiny = design([
      { id: 'slip', kind: 'cut-layer', on: 'gutter', start: 40, end: 46, left: 5, right: 5 },
    ])
    const none = stick(tiny, 'slip/left', cut)
    expect('sentence' in none && none.sentence).toMatch(/\.$/)
    expect(
      pieceOn(card, 'moth/left', {
        id: 'far',
        shape: [
          [300, 300],
          [320, 300],
          [310, 320],
        ],
      }),
    ).toBeNull()
    expect(() => stick(card, 'nobody/left', cut)).toThrow(RangeError)
  })
})
