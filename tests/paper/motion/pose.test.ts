import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Flat, ModelCrease, Poser, Side, Vec3 } from '../../../src/paper/index.ts'
import { compile, keep, modelOf, parseDesign, poseAt } from '../../../src/paper/index.ts'
import { laid } from '../../../src/paper/plane/lay.ts'
import {
  A6,
  design,
  designs,
  edgyOpenings,
  everyKind,
  ladder,
  openings,
  runs,
  vFold,
} from '../shared/designs.ts'
import { apart, between, dotOf, minus, nextFloat, plus, sizeOf, unit } from '../shared/space.ts'

/** What the accuracy is promised to, mm. */
const EXACT = 1e-9

const sides: readonly Side[] = ['left', 'right']

/** A point `[across, along]` of one side of a crease, in space, by way of the panel it lies in. */
const onSide = (poser: Poser, crease: ModelCrease, side: Side, flat: Flat): Vec3 =>
  poser.lift(crease[side].panel, laid(crease[side].lay, flat))

/** The largest difference between a distance in space and the same one on the flat panel, mm. */
function stretchOf(made: Design, opening: number): number {
  const { panels } = modelOf(made)
  const pose = poseAt(made, opening)
  return Math.max(
    ...panels.flatMap(({ name, outline }) => {
      const points = pose.panels[name] as Vec3[]
      return outline.flatMap((a, i) =>
        outline.slice(i + 1).map((b, k) => {
          const flat = Math.hypot(a[0] - b[0], a[1] - b[1])
          return Math.abs(apart(points[i] as Vec3, points[i + 1 + k] as Vec3) - flat)
        }),
      )
    }),
  )
}

/** How far the crease's line, its left panel and its right panel are apart at both its ends, mm. */
function gapOf(poser: Poser, opening: number): number {
  const { creases } = poser(opening)
  return Math.max(
    ...poser.model.creases.flatMap((crease) => {
      const record = creases[crease.name]
      return sides.flatMap((side) => [
        apart(onSide(poser, crease, side, [0, 0]), record?.start ?? [Number.NaN, 0, 0]),
        apart(onSide(poser, crease, side, [0, crease.length]), record?.end ?? [Number.NaN, 0, 0]),
      ])
    }),
  )
}

/** The angle between a crease's two panels as a protractor would take it, from lifted points. */
function protractor(poser: Poser, crease: ModelCrease): number {
  const at = onSide(poser, crease, 'left', [0, 0])
  const [left, right] = sides.map((side) => minus(onSide(poser, crease, side, [100, 0]), at)) as [Vec3, Vec3]
  return between(left, right)
}

const everyNumber = (made: Design, opening: number): number[] => {
  const { panels, creases } = poseAt(made, opening)
  return [
    ...Object.values(panels).flat(2),
    ...Object.values(creases).flatMap(({ start, end, angle }) => [...start, ...end, angle]),
  ]
}

describe('paper does not stretch', () => {
  test.each(ladder)('$name keeps every length at every opening', ({ design: made }) => {
    const steps = Array.from({ length: 181 }, (_, opening) => opening)
    for (const opening of [...edgyOpenings, ...steps]) expect(stretchOf(made, opening)).toBeLessThan(EXACT)
  })

  test('whatever is cut from a card up to A3, every edge and diagonal of every panel keeps its length', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        expect(stretchOf(made, opening)).toBeLessThan(EXACT)
      }),
      runs(400),
    )
  })

  test('six deep, each mechanism on a crease of the one before, nothing stretches', () => {
    fc.assert(
      fc.property(designs({ chain: true, depth: 6 }), openings, (made, opening) => {
        expect(modelOf(made).builds).toHaveLength(6)
        expect(stretchOf(made, opening)).toBeLessThan(EXACT)
      }),
      runs(400),
    )
  })

  test('slivers, cuts of no length and folds square to the crease do not stretch either', () => {
    fc.assert(
      fc.property(designs({ poor: true, steepest: 90 }), openings, (made, opening) => {
        expect(stretchOf(made, opening)).toBeLessThan(EXACT)
      }),
      runs(400),
    )
  })
})

describe('panels stay joined', () => {
  test('both panels of every crease meet all along it, hung from either side', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        expect(gapOf(compile(made), opening)).toBeLessThan(EXACT)
      }),
      runs(400),
    )
  })

  test('six deep they still meet', () => {
    fc.assert(
      fc.property(designs({ chain: true, depth: 6 }), openings, (made, opening) => {
        expect(gapOf(compile(made), opening)).toBeLessThan(EXACT)
      }),
      runs(400),
    )
  })

  test('slivers stay joined', () => {
    fc.assert(
      fc.property(designs({ poor: true, steepest: 90 }), openings, (made, opening) => {
        expect(gapOf(compile(made), opening)).toBeLessThan(EXACT)
      }),
      runs(400),
    )
  })

  test('the angle given for a crease is the one a protractor finds between its panels', () => {
    fc.assert(
      fc.property(designs({ depth: 6 }), openings, (made, opening) => {
        const poser = compile(made)
        const { creases } = poser(opening)
        for (const crease of poser.model.creases)
          expect(
            Math.abs(protractor(poser, crease) - (creases[crease.name]?.angle ?? Number.NaN)),
          ).toBeLessThan(EXACT)
      }),
      runs(200),
    )
  })

  test('across a crease is square to it, on either side, at every opening', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        const poser = compile(made)
        poser(opening)
        for (const crease of poser.model.creases)
          for (const side of sides) {
            const [foot, out, on] = (
              [
                [0, 0],
                [10, 0],
                [0, 10],
              ] as const
            ).map((flat) => onSide(poser, crease, side, flat)) as [Vec3, Vec3, Vec3]
            expect(Math.abs(between(minus(out, foot), minus(on, foot)) - 90)).toBeLessThan(EXACT)
          }
      }),
      runs(100),
    )
  })
})

describe('pieces of other card glued on', () => {
  const mixed = designs({ kinds: everyKind, depth: 4 })

  test('nothing stretches, cut or glued, whatever stands on what', () => {
    fc.assert(
      fc.property(mixed, openings, (made, opening) => {
        expect(stretchOf(made, opening)).toBeLessThan(EXACT)
        for (const value of everyNumber(made, opening)) expect(value).toSatisfy(Number.isFinite)
      }),
      runs(300),
    )
  })

  test('both panels of every crease meet all along it, unless a piece has come to its stop', () => {
    fc.assert(
      fc.property(mixed, openings, (made, opening) => {
        fc.pre(poseAt(made, opening).stopped.length === 0)
        expect(gapOf(compile(made), opening)).toBeLessThan(EXACT)
      }),
      runs(300),
    )
  })
})

describe('shut and flat', () => {
  test('shut, every fold is shut: all angles are 0 and every panel lies in the plane x = 0', () => {
    fc.assert(
      fc.property(designs(), (made) => {
        const { panels, creases } = poseAt(made, 0)
        for (const { angle } of Object.values(creases)) expect(angle).toBe(0)
        for (const [x] of Object.values(panels).flat()) expect(Math.abs(x)).toBe(0)
      }),
      runs(200),
    )
  })

  test('flat, every fold is flat: all angles are 180 and every panel lies in the plane z = 0', () => {
    fc.assert(
      fc.property(designs(), (made) => {
        const { panels, creases } = poseAt(made, 180)
        for (const { angle } of Object.values(creases)) expect(angle).toBe(180)
        for (const [, , z] of Object.values(panels).flat()) expect(Math.abs(z)).toBeLessThan(EXACT)
      }),
      runs(200),
    )
  })

  test('flat, a V-fold lies where it was drawn on the sheet', () => {
    const made = design([{ ...vFold('beak', 'gutter', 110, -40, 45), lean: 5, outline: [[10, 66]] }])
    const { panels, creases } = poseAt(made, 180)
    const drawn = (sign: 1 | -1) => [
      [0, 110, 0],
      [0, 70, 0],
      [sign * 10, 66, 0],
      [sign * 40, 75, 0],
    ]
    for (const [side, sign] of [
      ['left', -1],
      ['right', 1],
    ] as const) {
      panels[`beak/${side}`]?.forEach((point, k) => {
        expect(apart(point, drawn(sign)[k] as unknown as Vec3)).toBeLessThan(1e-12)
      })
      expect(apart(creases[`beak/${side}`]?.end as Vec3, [sign * 40, 75, 0])).toBeLessThan(1e-12)
    }
  })

  test('nothing of the cut family ever stops on the way', () => {
    fc.assert(
      fc.property(designs({ poor: true, steepest: 90 }), openings, (made, opening) => {
        expect(poseAt(made, opening).stopped).toEqual([])
      }),
      runs(200),
    )
  })
})

describe('numbers stay numbers', () => {
  test('no size from nothing to 2000 mm, at no opening, gives anything but a finite number', () => {
    fc.assert(
      fc.property(designs({ poor: true, steepest: 90, depth: 6 }), openings, (made, opening) => {
        for (const value of everyNumber(made, opening)) expect(value).toSatisfy(Number.isFinite)
      }),
      runs(400),
    )
  })

  test.each([
    ['a slit of no length', { kind: 'cut-v-fold', apex: 20, run: 30, cut: 0 }],
    ['an apex on the slit itself', { kind: 'cut-v-fold', apex: 20, run: 0, cut: 30 }],
    ['nothing at all', { kind: 'cut-v-fold', apex: 0, run: 0, cut: 0 }],
    ['folds square to the gutter', { kind: 'cut-v-fold', apex: 20, run: 30, cut: 30, lean: -30 }],
    [
      'the smallest number there is',
      { kind: 'cut-v-fold', apex: 20, run: Number.MIN_VALUE, cut: Number.MIN_VALUE },
    ],
    ['the largest size allowed', { kind: 'cut-v-fold', apex: 2000, run: -2000, cut: 2000, lean: -2000 }],
    ['a slit all but square to its fold', { kind: 'cut-v-fold', apex: 20, run: 1e-9, cut: 2000 }],
    ['a layer of no depth', { kind: 'cut-layer', start: 10, end: 40, left: 0, right: 0 }],
    ['a layer of no width', { kind: 'cut-layer', start: 10, end: 10, left: 20, right: 20 }],
    ['a layer on one page alone', { kind: 'cut-layer', start: 10, end: 40, left: 0, right: 20 }],
    ['a trapezoid of no depth', { kind: 'cut-trapezoid', start: 10, end: 40, startCut: 0, endCut: 0 }],
    ['a trapezoid of no width', { kind: 'cut-trapezoid', start: 10, end: 10, startCut: 5, endCut: 20 }],
  ])('%s poses without a stretch, and so does what sits on it', (_, fields) => {
    const guests = ['ridge', 'left', 'right'].map((part) => vFold(part, `poor/${part}`, 0, 12, 40))
    const made = design([{ id: 'poor', on: 'gutter', ...fields }, ...guests])
    for (const opening of [...edgyOpenings, 30, 120]) {
      for (const value of everyNumber(made, opening)) expect(value).toSatisfy(Number.isFinite)
      expect(stretchOf(made, opening)).toBeLessThan(EXACT)
      expect(gapOf(compile(made), opening)).toBeLessThan(EXACT)
    }
  })

  test.each([-1, nextFloat(0, -1), nextFloat(180, 1), 181, Number.NaN, Number.POSITIVE_INFINITY])(
    'an opening of %d degrees is refused in a sentence',
    (opening) => {
      expect(() => poseAt(design([]), opening)).toThrow(
        `opening must be a number from 0 (shut) to 180 (flat) degrees, not ${opening}`,
      )
    },
  )
})

describe('one motion, and no other', () => {
  /** Where a crease looks: half-way between its two panels, on the inside. */
  function inside(poser: Poser, crease: ModelCrease): Vec3 {
    const at = onSide(poser, crease, 'left', [0, 0])
    const [l, r] = sides.map((side) => unit(minus(onSide(poser, crease, side, [1, 0]), at))) as [Vec3, Vec3]
    return plus(l, r)
  }

  test('every mechanism stays pushed through: its tip is never behind the fold it was cut from', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        const poser = compile(made)
        const pose = poser(opening)
        for (const { mechanism, host } of poser.model.builds) {
          const crease = poser.model.creases[host] as ModelCrease
          const ridge = pose.creases[`${mechanism.id}/ridge`]
          const foot = pose.creases[crease.name]?.start as Vec3
          const out = inside(poser, crease)
          for (const point of [ridge?.start, ridge?.end] as Vec3[]) {
            expect(dotOf(minus(point, foot), out)).toBeGreaterThan(-EXACT)
          }
        }
      }),
      runs(300),
    )
  })

  test('as the card opens, every fold opens with it', () => {
    fc.assert(
      fc.property(designs(), openings, openings, (made, a, b) => {
        const poser = compile(made)
        const angles = [Math.min(a, b), Math.max(a, b)].map((opening) =>
          Object.values(poser(opening).creases).map(({ angle }) => angle),
        ) as [number[], number[]]
        angles[0].forEach((angle, k) => {
          expect(angle).toBeLessThanOrEqual((angles[1][k] as number) + 1e-12)
        })
      }),
      runs(300),
    )
  })

  /**
   * How fast any point can move, mm for each radian of opening: an upper bound from the chain rule.
   * A fold at angle a to its host turns at most 1 / cos a times as fast as the host; a ridge swings
   * by 2 tan a for each half turn; both times the size of everything beyond it.
   */
  function fastest(made: Design): number {
    const { builds, creases } = modelOf(made)
    const turn = new Map([['gutter', 1]])
    const size = 4 * (made.card.width + made.card.height) * (builds.length + 1)
    let sum = 1
    for (const { mechanism, host } of builds) {
      const [across, along] = creases.find(({ name }) => name === `${mechanism.id}/right`)?.right.lay.run ?? [
        0, 1,
      ]
      const ofHost = creases[host]?.right.lay.run ?? [0, 1]
      const cosine = Math.abs(across * ofHost[0] + along * ofHost[1])
      const rate = (turn.get(creases[host]?.name ?? '') ?? 1) / cosine
      for (const part of ['ridge', 'left', 'right']) turn.set(`${mechanism.id}/${part}`, rate)
      sum += 4 * rate
    }
    return size * sum
  }

  test('between neighbouring openings nothing jumps, near shut and near flat least of all', () => {
    const near = fc.oneof(
      openings,
      fc.double({ min: 0, max: 1e-3, noNaN: true }),
      fc.double({ min: 180 - 1e-3, max: 180, noNaN: true }),
    )
    const steps = fc.constantFrom(1e-10, 1e-8, 1e-6)
    fc.assert(
      fc.property(designs({ depth: 4 }), near, steps, (made, opening, step) => {
        const poser = compile(made)
        const to = opening + step <= 180 ? opening + step : opening - step
        const before = keep(poser(opening))
        const after = poser(to)
        const moved = Math.max(
          ...Object.entries(before.panels).flatMap(([name, points]) =>
            points.map((point, k) => apart(point, after.panels[name]?.[k] as Vec3)),
          ),
        )
        expect(moved).toBeLessThan(EXACT + (fastest(made) * step * Math.PI) / 180)
      }),
      runs(400),
    )
  })

  test.each(edgyOpenings.filter((opening) => opening > 0 && opening < 180))(
    'the next float on either side of %d degrees gives the same pose to the ninth digit',
    (opening) => {
      const made = design([
        vFold('beak', 'gutter', 110, -60, 60),
        vFold('eye', 'beak/right', 20, 30, 50),
        { id: 'lid', kind: 'cut-layer', on: 'eye/left', start: 5, end: 20, left: 8, right: 6 },
      ])
      const here = Object.values(poseAt(made, opening).panels).flat()
      for (const way of [1, -1] as const)
        Object.values(poseAt(made, nextFloat(opening, way)).panels)
          .flat()
          .forEach((point, k) => {
            expect(apart(point, here[k] as Vec3)).toBeLessThan(EXACT)
          })
    },
  )

  test('folds a hair from square to the gutter swing fast, but do not jump', () => {
    const made = design([vFold('reed', 'gutter', 20, 3, 89.9)])
    const poser = compile(made)
    const step = 1 / 2048
    let before = keep(poser(170))
    for (let opening = 170 + step; opening <= 180; opening += step) {
      const after = keep(poser(opening))
      expect(
        apart(after.creases['reed/ridge']?.end as Vec3, before.creases['reed/ridge']?.end as Vec3),
      ).toBeLessThan(3 * Math.tan((89.9 * Math.PI) / 180) * ((step * Math.PI) / 180))
      before = after
    }
    expect(apart(before.creases['reed/ridge']?.end as Vec3, [0, 23, 0])).toBeLessThan(EXACT)
  })
})

describe('a poser', () => {
  test('gives what the plain call gives, whatever it posed before', () => {
    fc.assert(
      fc.property(designs(), fc.array(openings, { minLength: 2, maxLength: 5 }), (made, list) => {
        const poser = compile(made)
        for (const opening of list) expect(poser(opening)).toEqual(poseAt(made, opening))
      }),
      runs(60),
    )
  })

  test('overwrites its last answer; keep makes one that lasts', () => {
    const poser = compile(design([vFold('beak', 'gutter', 110, -40, 45)]))
    const first = poser(30)
    const kept = keep(first)
    const second = poser(60)
    expect(second).toBe(first)
    expect(kept.opening).toBe(30)
    expect(kept).toEqual(poseAt(poser.model.design, 30))
    expect(kept.panels['beak/left']).not.toEqual(second.panels['beak/left'])
  })

  test('lifts any point of a panel, and refuses a panel that is not there', () => {
    const poser = compile(design([]))
    poser(90)
    expect(apart(poser.lift(1, [10, 20]), [Math.SQRT1_2 * 10, 20, Math.SQRT1_2 * 10])).toBeLessThan(1e-12)
    expect(() => poser.lift(2, [0, 0])).toThrow('there is no panel 2')
  })

  test('the bare card is two pages symmetric about x = 0 that open along z', () => {
    const { panels, creases } = poseAt(design([]), 60)
    expect(panels['page/right']?.map((p) => sizeOf(p))).toEqual(panels['page/left']?.map((p) => sizeOf(p)))
    expect(
      apart(panels['page/right']?.[3] as Vec3, [A6.width / 2, 0, (A6.width * Math.sqrt(3)) / 2]),
    ).toBeLessThan(1e-12)
    expect(creases.gutter?.angle).toBeCloseTo(60, 12)
    expect(creases.gutter?.end).toEqual([0, A6.height, 0])
  })

  test('two designs read from one file pose alike and share nothing', () => {
    const file = {
      hingebook: 1,
      title: 'Twin',
      card: A6,
      mechanisms: [vFold('beak', 'gutter', 110, -40, 45)],
    }
    const [a, b] = [compile(parseDesign(file)), compile(parseDesign(file))]
    a(20)
    b(140)
    expect(a.frames[0]).not.toEqual(b.frames[0])
  })
})
