// Letters of tabs that go through slits, on a good copy: whoever looks at the open card may not see them. What hides
// them is found by a ray from the letter to the eye, met with triangles (Möller and Trumbore, 1997).
import { expect, test } from 'vitest'
import type { Design, Joint } from '../../src/paper/index.ts'
import {
  compile,
  jointsOf,
  modelOf,
  openingRange,
  pieces,
  surfaces,
  withTabs,
} from '../../src/paper/index.ts'
import { unlaid } from '../../src/paper/plane/lay.ts'
import { metAt } from '../../src/paper/plane/ray.ts'
import { edgesOf, isWithin } from '../../src/paper/plane/segment.ts'
import { add, scale, type Vec3 } from '../../src/paper/plane/vector.ts'
import { EVERYWHERE } from '../../src/sheet/marks/clip.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import { pieceMarks } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummies, dummy } from './designs.ts'

type Spot = readonly [number, number]

const PLACE = { origin: [0, 0], mirrored: false } as const

/** Where the letter of a joint stands on its host, in the piece's own coordinates; null: not on it at all. */
function letterOf(design: Design, { of, host }: Joint): Spot | null {
  const piece = pieces(design).find(({ id }) => id === host.piece)
  if (!piece) return null
  const places = placesOn(design, piece.id, 'inside').filter((one) => !one.isOwn || one.of !== of)
  const { words } = pieceMarks(piece, places, PLACE, 'ticks', EVERYWHERE)
  const word = words.find((one) => one.of === of && one.bold)
  if (!word) return null
  const [left, top, right, bottom] = extent(word)
  return [(left + right) / 2, -(top + bottom) / 2]
}

/** To an eye right above, and to that of a reader who sits before the card and looks down on it at 60 degrees. Common practice, no source. */
const ABOVE: Vec3 = [0, 0, 1]
const READER: Vec3 = [0, -Math.cos(Math.PI / 3), Math.sin(Math.PI / 3)]

/** Whether paper stands between a spot of a joint's host and an eye, the card open nearly flat. */
function isScreened(design: Design, { owner }: Joint, spot: Spot, eye: Vec3): boolean {
  const model = modelOf(design)
  const poser = compile(design)
  poser(Math.min(170, openingRange(design)[1]))
  const paper = surfaces(poser)
  return model.glue.some((glue) => {
    const panel = model.panels[glue.panel]
    const under = paper.find(({ leaf }) => leaf === glue.panel)
    if (glue.owner !== owner || !glue.slit || !panel || !under) return false
    const flat = unlaid(panel.onPiece, spot)
    if (!isWithin(edgesOf(panel.outline), flat)) return false
    const from = add(poser.lift(glue.panel, flat), scale(under.front, 0.01))
    return paper.some(({ points: [a, ...rest] }) =>
      rest.some((b, k) => {
        const c = rest[k + 1]
        const far = a && c ? metAt(from, eye, [a, b, c]) : Number.POSITIVE_INFINITY
        return far > 0 && Number.isFinite(far)
      }),
    )
  })
}

test('of every card of the garden stand on the piece that has the slit, where another piece stands before them', () => {
  let told = 0
  for (const [name, plain] of dummies) {
    const design = withTabs(plain, 'slit')
    for (const joint of jointsOf(design)) {
      // What is glued on the printed face has its letter under its own tab.
      if (!joint.isThrough || joint.host.face === 'front') continue
      const spot = letterOf(design, joint)
      told += 1
      // Under a platform a reader sees from its end.
      const eyes = design.mechanisms[joint.owner]?.kind === 'floating-layer' ? [ABOVE] : [ABOVE, READER]
      for (const eye of eyes)
        expect([name, joint.of, spot && isScreened(design, joint, spot, eye)]).toEqual([name, joint.of, true])
    }
  }
  expect(told).toBeGreaterThan(20)
})

test('are on the owl beside the slits for its wings, no farther off than a tab is wide', () => {
  const owl = withTabs(dummy('owl-wings'), 'slit')
  const inOwl = jointsOf(owl).filter(({ isThrough, host }) => isThrough && host.piece === 'owl/piece')
  expect(inOwl.map(({ of }) => of)).toEqual(['wing/right', 'wing-2/left'])
  for (const joint of inOwl) {
    const [x, y] = letterOf(owl, joint) ?? [Number.NaN, 0]
    const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = joint.host.points
    const off = Math.abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / Math.hypot(bx - ax, by - ay)
    expect(off).toBeLessThan(8)
  }
})
