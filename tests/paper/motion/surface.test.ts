// Which way the front of each piece of paper looks: pages by plane trigonometry, all others by the rule that a piece's
// own x, y and its front are right-handed, carried into space by three of its corners.
import { describe, expect, test } from 'vitest'
import type { Design, Flat, Vec3 } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import { frontOf, surfaces } from '../../../src/paper/motion/surface.ts'
import { laid } from '../../../src/paper/plane/lay.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth, gluedPond } from '../shared/designs.ts'
import { apart, crossOf, dotOf, minus, RAD, sizeOf, unit } from '../shared/space.ts'

const square = (a: number, l: number, size: number) => [
  [a, l],
  [a + size, l],
  [a + size, l + size],
  [a, l + size],
]

const star = (id: string, on: string, more: object = {}) => ({
  id,
  kind: 'rider',
  on,
  shape: square(6, 6, 8),
  glue: square(8, 8, 4),
  ...more,
})

const near = (found: Vec3 | undefined, wanted: Vec3) =>
  expect(apart(found ?? [Number.NaN, 0, 0], wanted)).toBeLessThan(1e-9)

test('pages look at each other, and flat straight up', () => {
  const poser = compile(design([]))
  for (const opening of [40, 90, 150, 180]) {
    poser(opening)
    const [s, c] = [Math.sin((opening / 2) * RAD), Math.cos((opening / 2) * RAD)]
    near(frontOf(poser.model, poser.frames, 0), [c, 0, s])
    near(frontOf(poser.model, poser.frames, 1), [-c, 0, s])
  }
})

const garden = design([
  fold('beak', 'gutter', 110, -40, 50),
  layer('eye', 'beak/right', 20, 34, 6),
  gluedMoth({ apex: 20, foot: 25, ridge: 30 }),
  gluedMoth({
    id: 'owl',
    on: 'beak/ridge',
    apex: 4,
    foot: 9,
    ridge: 9,
    side: 'outside',
  }),
  star('front', 'moth/left'),
  star('back', 'moth/right', { face: 'back' }),
  star('leaf', 'page/left', {
    shape: square(60, 60, 20),
    glue: square(65, 65, 8),
  }),
])

/** The front of a panel by three corners that make no line: those of its piece, and where they are in space. */
function frontByCorners(made: Design, opening: number, panel: number): Vec3 {
  const poser = compile(made)
  poser(opening)
  const { outline, onPiece } = poser.model.panels[panel] ?? {
    outline: [],
    onPiece: undefined,
  }
  if (!onPiece) throw new Error('no such panel')
  for (let i = 1; i + 1 < outline.length; i++) {
    const flat = [outline[0], outline[i], outline[i + 1]] as [Flat, Flat, Flat]
    const [[ox, oy], [px, py], [qx, qy]] = flat.map((p) => laid(onPiece, p)) as [Flat, Flat, Flat]
    const turn = (px - ox) * (qy - oy) - (py - oy) * (qx - ox)
    if (Math.abs(turn) < 1) continue
    const [o, p, q] = flat.map((at) => poser.lift(panel, at)) as [Vec3, Vec3, Vec3]
    const normal = unit(crossOf(minus(p, o), minus(q, o)))
    return turn > 0 ? normal : [-normal[0], -normal[1], -normal[2]]
  }
  throw new Error('all corners in one line')
}

describe.each([
  ['folds, layers and pieces on all sides', garden],
  ['a pond on its walls', design([gluedPond])],
])('%s', (_, made) => {
  test('every front is on that side of the paper which its piece calls so', () => {
    const poser = compile(made)
    for (const opening of [35, 90, 160]) {
      poser(opening)
      poser.model.panels.forEach((_, panel) => {
        near(frontOf(poser.model, poser.frames, panel), frontByCorners(made, opening, panel))
      })
    }
  })

  test('surfaces are the patches of all panels, where they are', () => {
    const poser = compile(made)
    poser(70)
    const found = surfaces(poser)
    expect(new Set(found.map(({ leaf }) => leaf)).size).toBe(poser.model.panels.length)
    for (const { panel, owner, leaf, points, flat, drawn, front } of found) {
      expect(poser.model.panels[leaf]).toMatchObject({ name: panel, owner })
      expect(drawn).toHaveLength(points.length)
      flat?.forEach((p, k) => {
        near(points[k], poser.lift(leaf, p))
      })
      expect(sizeOf(front)).toBeCloseTo(1, 9)
      for (const [k, p] of points.entries())
        expect(dotOf(minus(points[(k + 1) % points.length] as Vec3, p), front)).toBeCloseTo(0, 8)
    }
  })
})

test('a surface tells how many pieces of card it lies on', () => {
  const poser = compile(garden)
  poser(90)
  const layers = Object.fromEntries(surfaces(poser).map(({ panel, layer: at }) => [panel, at]))
  expect(layers).toMatchObject({
    'page/left': 0,
    'beak/left': 0,
    'moth/left': 1,
    'front/face': 2,
    'back/face': 0,
    'leaf/face': 1,
  })
})
