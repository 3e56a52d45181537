// What chapters 4 to 8 say of their dummies is true of them.
import { describe, expect, test } from 'vitest'
import type { Change, Design, Vec3 } from '../../src/paper/index.ts'
import {
  change,
  check,
  fieldsFor,
  measure,
  opensTo,
  partMargin,
  poseAt,
  riseOf,
  settingOf,
  thickest,
} from '../../src/paper/index.ts'
import { between, crossOf, dotOf, minus, plus, times, unit } from '../paper/shared/space.ts'
import { dummy } from './chapters.ts'

const OPENINGS = [20, 60, 90, 120, 160]

const RADIANS = Math.PI / 180

const found = (design: Design, id: string) => {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new Error(`${design.title} has no ${id}`)
  return m
}

const size = (design: Design, id: string, name: string): number => settingOf(found(design, id), name)

const tip = (design: Design, opening: number, id: string) => {
  const measured = measure(design, opening).tips[id]
  if (!measured) throw new Error(`${id} has no tip`)
  return measured
}

const angle = (design: Design, opening: number, crease: string): number =>
  poseAt(design, opening).creases[crease]?.angle ?? Number.NaN

/** From the start of a crease to its end. */
const way = (design: Design, opening: number, crease: string): Vec3 => {
  const line = poseAt(design, opening).creases[crease]
  if (!line) throw new Error(`there is no ${crease}`)
  return minus(line.end, line.start)
}

const failed = (design: Design) => check(design).filter(({ ok }) => !ok)

const grows = (numbers: readonly number[]): void => {
  for (let k = 1; k < numbers.length; k++) expect(numbers[k]).toBeGreaterThan(numbers[k - 1] as number)
}

describe('Cut on the new folds', () => {
  const eyes = dummy('eyes')

  test.each(OPENINGS)('at %d° a side fold lags behind the gutter, by the formula on the page', (opening) => {
    const wedge = size(eyes, 'beak', 'wedge')
    const fold = 2 * Math.atan(Math.cos(wedge * RADIANS) * Math.tan((opening * RADIANS) / 2))
    expect(angle(eyes, opening, 'beak/left')).toBeCloseTo(fold / RADIANS, 9)
    expect(angle(eyes, opening, 'beak/left')).toBeLessThan(opening)
    // Once more for the lid’s host.
    const eye = 2 * Math.atan(Math.cos(size(eyes, 'left-eye', 'wedge') * RADIANS) * Math.tan(fold / 2))
    expect(angle(eyes, opening, 'left-eye/left')).toBeCloseTo(eye / RADIANS, 9)
  })

  test.each(OPENINGS)(
    'at %d° the ridge of a cut V-fold is open as wide as the fold it sits on',
    (opening) => {
      for (const { id, on } of eyes.mechanisms)
        expect(angle(eyes, opening, `${id}/ridge`), id).toBeCloseTo(angle(eyes, opening, on), 9)
    },
  )

  test('flat open, the side fold has caught up', () => {
    expect(angle(eyes, 180, 'beak/left')).toBeCloseTo(180, 6)
  })

  test('an eye stands out of the card, and its lid goes in behind the ridge it was cut from', () => {
    const opening = 90
    const ridge = poseAt(eyes, opening).creases['left-eye/ridge']
    if (!ridge) throw new Error('the left eye has no ridge')
    const along = size(eyes, 'left-lid', 'apex') + size(eyes, 'left-lid', 'run')
    const uncut = plus(ridge.start, times(unit(minus(ridge.end, ridge.start)), along))
    expect(riseOf(uncut, opening)).toBeGreaterThan(5)
    expect(tip(eyes, opening, 'left-lid').rise).toBeLessThan(riseOf(uncut, opening) - 1)
  })

  test('has a bridge of 5 mm left everywhere, and as many layers as the page counts', () => {
    expect(failed(eyes)).toEqual([])
    // Twelve of the card, and the two halves of its cover.
    expect(thickest(eyes).layers).toBe(14)
  })
})

describe('A V-fold of its own card', () => {
  const moth = dummy('moth')
  const taped = (fields: Change): Design => change(moth, 'moth', fields)

  test('nearly shut, the ridge points straight out from the gutter; wide open, it swings down and away', () => {
    // The formula on the page with both angles 45°: the ridge makes 2 arctan cos(θ/2) with the gutter.
    const along = (opening: number): number => {
      const [, y] = unit(way(moth, opening, 'moth/ridge'))
      return Math.acos(y) / RADIANS
    }
    for (const opening of [30, 110, 150])
      expect(along(opening)).toBeCloseTo((2 * Math.atan(Math.cos((opening / 2) * RADIANS))) / RADIANS, 6)
    expect(along(30)).toBeGreaterThan(85)
    expect(tip(moth, 150, 'moth').rise).toBeLessThan(tip(moth, 110, 'moth').rise)
    expect(tip(moth, 150, 'moth').reach).toBeGreaterThan(tip(moth, 110, 'moth').reach)
  })

  test('taped at 60°, a corner stops the card at 109.47°, pulled tight', () => {
    // cos²(θ/2) = (cos²45° − cos²60°) / sin²60° = 1/3.
    const wide = taped({ 'left.base': 60, 'right.base': 60 })
    expect(opensTo(wide, 'moth')).toBeCloseTo((2 * Math.acos(Math.sqrt(1 / 3))) / RADIANS, 6)
    const stop = opensTo(wide, 'moth')
    const { panels } = poseAt(wide, stop)
    const normals = ['left', 'right'].map((side) => {
      const [a, b, c] = panels[`moth/${side}`] as [Vec3, Vec3, Vec3]
      return unit(crossOf(minus(b, a), minus(c, a)))
    }) as [Vec3, Vec3]
    expect(Math.abs(dotOf(...normals))).toBeCloseTo(1, 5)
  })

  test('opens flat with a facet angle as large as the base angle, or larger', () => {
    for (const facet of [45, 50, 60, 80]) {
      const design = taped({ 'left.facet': facet, 'right.facet': facet })
      expect(opensTo(design, 'moth')).toBe(180)
      expect(failed(design).filter(({ name }) => name === 'opens-flat')).toEqual([])
    }
    expect(opensTo(taped({ 'left.facet': 44, 'right.facet': 44 }), 'moth')).toBeLessThan(180)
  })

  test('shut, the ridge lies at base angle and facet angle together from the gutter', () => {
    expect(between(way(moth, 0, 'moth/ridge'), [0, 1, 0])).toBeCloseTo(90, 6)
    const wider = taped({ 'left.facet': 60, 'right.facet': 60 })
    expect(between(way(wider, 0, 'moth/ridge'), [0, 1, 0])).toBeCloseTo(105, 6)
  })

  test('does not shut flat if base and facet angle differ in sum, whatever they are singly', () => {
    const flat = (fields: Change) => failed(taped(fields)).every(({ name }) => name !== 'shuts-flat')
    expect(flat({ 'left.base': 50 })).toBe(false)
    expect(flat({ 'left.base': 50, 'left.facet': 55, 'right.facet': 60 })).toBe(true)
  })

  test('has a second state that stays in the gutter from shut to flat', () => {
    const lying = taped({ pop: 'down' })
    for (const opening of OPENINGS) expect(tip(lying, opening, 'moth').rise).toBeCloseTo(0, 9)
    // The same piece: every length is the same in both states.
    const lengths = (design: Design) =>
      Object.values(poseAt(design, 90).panels).map((points) =>
        points.map((p, k) => Math.hypot(...minus(points[(k + 1) % points.length] as Vec3, p)).toFixed(9)),
      )
    expect(lengths(lying)).toEqual(lengths(moth))
  })
})

describe('V on V', () => {
  const owl = dummy('owl')

  test('the wing goes up and away from the reader all the way', () => {
    const path = [0, 30, 60, 90, 120, 150, 180].map((opening) => tip(owl, opening, 'left-wing'))
    grows(path.map(({ rise }) => rise))
    grows(path.map(({ reach }) => reach))
  })

  test('a ridge swings the way its V opens: on the gutter, on a joint, on a ridge', () => {
    for (const [id, host, toward] of [
      ['body', 'gutter', 1],
      ['left-wing', 'body/left', 1],
      ['right-wing', 'body/right', 1],
    ] as const)
      for (let opening = 10; opening <= 180; opening += 10) {
        const lean = (at: number) =>
          between(way(owl, at, `${id}/ridge`), way(owl, at, host).map((x) => toward * x) as Vec3)
        expect(lean(opening), `${id} at ${opening}`).toBeLessThan(lean(opening - 10))
      }
  })

  test('wings turned round go in and run into the tail', () => {
    const turned = ['left-wing', 'right-wing'].reduce(
      (design, id) => change(design, id, { toward: -1, apex: 54 }),
      owl,
    )
    const hits = failed(turned).filter(
      ({ name, verdict }) => name === 'clear-motion' && verdict === 'touches',
    )
    expect(hits.map(({ ids }) => ids.slice(0, 2))).toEqual([
      ['left-wing', 'tail'],
      ['right-wing', 'tail'],
    ])
  })

  test('the tail lies closest to the back when shut, and lifts off it as the card opens', () => {
    const lift = (opening: number): number =>
      between(way(owl, opening, 'tail/ridge'), way(owl, opening, 'body/ridge').map((x) => -x) as Vec3)
    // Shut: facet angle less base angle.
    expect(lift(0)).toBeCloseTo(size(owl, 'tail', 'facet') - size(owl, 'tail', 'base'), 6)
    grows([0, 30, 60, 90, 120, 150, 180].map(lift))
  })
})

describe('Pieces that sweep', () => {
  const night = dummy('moon')

  test('shut, the moon comes nearer to the near edge than anything to any edge', () => {
    const [nearest] = [...night.mechanisms].sort((a, b) => partMargin(night, a.id) - partMargin(night, b.id))
    expect(nearest?.id).toBe('moon')
    const ys = (poseAt(night, 0).panels['moon/face'] ?? []).map(([, y]) => y)
    expect(Math.min(...ys)).toBeCloseTo(partMargin(night, 'moon'), 9)
  })

  test.each(OPENINGS)(
    'at %d° every point of the moon is as far from apex and joint as it was drawn',
    (opening) => {
      const now = poseAt(night, opening)
      const flat = poseAt(night, 0)
      const far = ({ panels, creases }: typeof now): number[] => {
        const joint = creases['hill/left']
        if (!joint) throw new Error('the hill has no left joint')
        const along = unit(minus(joint.end, joint.start))
        return (panels['moon/face'] ?? []).flatMap((p) => {
          const from = minus(p, joint.start)
          return [Math.hypot(...from), Math.hypot(...crossOf(from, along))]
        })
      }
      const [a, b] = [far(now), far(flat)]
      a.forEach((x, k) => {
        expect(x).toBeCloseTo(b[k] as number, 9)
      })
    },
  )

  test('the star never leaves its page', () => {
    for (const opening of OPENINGS) expect(tip(night, opening, 'star').rise).toBeCloseTo(0, 9)
  })

  test('a large moon sticks out of the shut card, and one that is larger still on its way', () => {
    const moons = (width: number) => change(night, 'moon', fieldsFor(found(night, 'moon'), 'size', width))
    expect(partMargin(moons(64), 'moon')).toBeLessThan(0)
    const way = failed(change(moons(70), 'hill', { apex: 44 })).find(({ name }) => name === 'stays-inside')
    expect(way?.opening).toBeGreaterThan(0)
  })
})

describe('Tents and floating layers', () => {
  const garden = dummy('hedgehog')

  test('the heap shuts flat because its sums agree, and its longer wall goes with the shorter foot', () => {
    const [a, c, b, d] = ['leftFoot', 'leftWall', 'rightFoot', 'rightWall'].map((name) =>
      size(garden, 'heap', name),
    ) as [number, number, number, number]
    expect(a + c).toBe(b + d)
    expect(d > c && b < a).toBe(true)
    const longer = failed(change(garden, 'heap', { leftWall: c + 10 })).find(
      ({ name }) => name === 'shuts-flat',
    )
    expect(longer?.value).toBeCloseTo(10, 9)
  })

  test('walls shorter than the feet together stop the card', () => {
    const tight = change(garden, 'body', { leftWall: 24, rightWall: 24 })
    // Joints 26 mm from the gutter, spanned by 48 mm: sin(θ/2) = 24/26.
    expect(opensTo(tight, 'body')).toBeCloseTo((2 * Math.asin(24 / 26)) / RADIANS, 6)
  })

  test.each(OPENINGS)(
    'at %d° the pond floats lower than its walls are high, its halves in line with the pages',
    (opening) => {
      const height = size(garden, 'pond', 'height')
      expect(tip(garden, opening, 'pond').rise).toBeCloseTo(height * Math.sin((opening * RADIANS) / 2), 9)
      const { panels } = poseAt(garden, opening)
      const normal = (panel: string): Vec3 => {
        const [a, b, c] = panels[panel] as [Vec3, Vec3, Vec3]
        return unit(crossOf(minus(b, a), minus(c, a)))
      }
      for (const side of ['left', 'right'])
        expect(Math.abs(dotOf(normal(`pond/${side}`), normal(`page/${side}`)))).toBeCloseTo(1, 9)
    },
  )

  test('flat open, the pond floats as high as its walls', () => {
    expect(tip(garden, 180, 'pond').rise).toBeCloseTo(size(garden, 'pond', 'height'), 9)
  })
})
