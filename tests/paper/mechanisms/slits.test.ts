// Tabs that go through slits, in numbers worked by hand. Shoulders of 5 mm, a slit half a millimetre longer than its
// tab at each end, and 5 mm of paper beside a cut are common practice, no source.
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Joint, Piece } from '../../../src/paper/index.ts'
import { check, jointsOf, parseDesign, pieces, tabbed, withTabs } from '../../../src/paper/index.ts'
import { design, designs, gluedMoth, gluedPond, runs } from '../shared/designs.ts'

type Spot = readonly [x: number, y: number]

const tent = (fields: object = {}) => ({
  ...{ id: 'house', kind: 'glued-tent', on: 'gutter', start: 20, end: 80 },
  ...{ leftFoot: 30, rightFoot: 30, leftWall: 45, rightWall: 45, tab: 10, tabs: 'slit' },
  ...fields,
})

const pieceOf = (made: Design, id: string): Piece => {
  const found = pieces(made).find((piece) => piece.id === id)
  if (!found) throw new RangeError(`no piece ${id}`)
  return found
}

/** The cuts inside the card that belong to a mechanism, each from its lower end. */
const slits = (made: Design, of: string, piece = 'card'): readonly (readonly Spot[])[] =>
  pieceOf(made, piece)
    .lines.filter((line) => line.kind === 'cut' && line.of === of && !line.closed)
    .map(({ points }) => [...points].sort((a, b) => a[1] - b[1]))

const round = (points: readonly Spot[]): number[][] =>
  points.map((p) => p.map((x) => Number(x.toFixed(6)) + 0))

const far = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1])

const long = (points: readonly Spot[]): number => far(points[0] as Spot, points.at(-1) as Spot)

describe('a tent whose tabs go through slits', () => {
  test('is cut half a millimetre beyond its tabs, which begin 5 mm from the ends', () => {
    const made = design([tent()])
    expect(slits(made, 'house').map(round)).toEqual([
      [
        [-30, 24.5],
        [-30, 75.5],
      ],
      [
        [30, 24.5],
        [30, 75.5],
      ],
    ])
    // 10 mm wide, and half of that narrower at each end.
    const right = jointsOf(made).find(({ of }) => of === 'house/right')
    expect(round(right?.host.points ?? [])).toEqual([
      [30, 25],
      [30, 75],
      [40, 70],
      [40, 30],
    ])
  })

  test('has the fold of a tab only where the tab is, and a cut edge beside it', () => {
    const { outline, lines } = pieceOf(design([tent()]), 'house/piece')
    const folds = lines.filter(({ kind, of }) => kind === 'valley' && of === 'house/right')
    expect(folds.map(({ points }) => long(points))).toEqual([50])
    // Four corners of the tent, and four more for each tab.
    expect(outline).toHaveLength(12)
  })

  test('on a short joint keeps shoulders of a sixth of it', () => {
    const made = design([tent({ end: 32 })])
    expect(slits(made, 'house')[0]?.map(([, y]) => y)).toEqual([21.5, 30.5])
  })

  test('is a tent with its tabs on the card unless the file says so, or is taped', () => {
    expect(slits(design([tent({ tabs: 'flat' })]), 'house')).toEqual([])
    const taped = design([tent({ tab: 0, tabs: 'flat' })])
    expect(slits(taped, 'house')).toEqual([])
    expect(jointsOf(taped).map(({ isThrough, isTaped }) => [isThrough, isTaped])).toEqual([
      [false, true],
      [false, true],
    ])
    expect(() => design([tent({ tab: 2.9 })])).toThrow(
      'mechanisms[0].tab must be at least 3 mm where tabs go through slits, not 2.9',
    )
    expect(slits(design([tent({ tab: 3 })]), 'house')).toHaveLength(2)
    expect(() => parseDesign({ ...design([]), mechanisms: [tent({ tabs: 'hidden' })] })).toThrow(
      /mechanisms\[0\]\.tabs must be flat or slit/,
    )
  })
})

describe('a V-fold whose tabs go through slits', () => {
  test('leaves paper at the gutter, and its slits run along its joints', () => {
    const made = design([
      gluedMoth({ apex: 30, base: 45, facet: 50, foot: 60, ridge: 40, tab: 8, tabs: 'slit' }),
    ])
    const [right] = slits(made, 'moth').filter(([a]) => (a?.[0] ?? 0) > 0)
    const [from, to] = right as [Spot, Spot]
    // The tab begins 5.5 / sin 45 from the apex, the slit half a millimetre before: 5.146 mm off the gutter.
    expect(from[0]).toBeCloseTo(5.5 - 0.5 * Math.SQRT1_2, 9)
    expect(from[1] - 30).toBeCloseTo(from[0], 9)
    expect(to[0]).toBeCloseTo((60 - 5 + 0.5) * Math.SQRT1_2, 9)
    expect(check(made, { repairs: false }).find(({ name }) => name === 'bridge')).toMatchObject({ ok: true })
  })

  test('is told where so steep a joint leaves too little', () => {
    // At 4 degrees a third of the joint is all that is kept: 20 sin 4 less a hair, 1.36 mm.
    const made = design([
      gluedMoth({ apex: 30, base: 4, facet: 4, foot: 60, ridge: 40, tab: 8, tabs: 'slit' }),
    ])
    const found = check(made, { repairs: false }).find(({ name, ok }) => name === 'bridge' && !ok)
    expect(found?.value).toBeCloseTo(19.5 * Math.sin((4 * Math.PI) / 180), 9)
    expect(found?.sentence).toMatch(
      /^Only 1\.4 mm of paper is left on the (left|right) page between the moth and the gutter/,
    )
  })
})

test('a slit too near the edge of the page is told', () => {
  const made = (end: number) =>
    check(design([tent({ start: 60, end })]), { repairs: false }).find(({ name }) => name === 'bridge')
  // The slit ends 4.5 mm before the joint does.
  expect(made(147.4)).toMatchObject({ ok: true, value: expect.closeTo(5.1, 6) })
  expect(made(147.6)).toMatchObject({ ok: false, value: expect.closeTo(4.9, 6) })
})

test('under a platform only the feet of the walls go through', () => {
  const made = design([{ ...gluedPond, walls: [-28, 0, 4.9, 28], tab: 8, tabs: 'slit' }])
  const through = jointsOf(made).map(({ of, isThrough }) => [of.split('/')[1]?.split('-')[0], isThrough])
  // A slit on the fold itself, or closer to it than 5 mm, would tear it.
  expect(through).toEqual([
    ['foot', true],
    ['top', false],
    ['foot', false],
    ['top', false],
    ['foot', false],
    ['top', false],
    ['foot', true],
    ['top', false],
  ])
  expect(slits(made, 'pond').map(round)).toHaveLength(2)
  expect(slits(made, 'pond', 'pond/platform')).toEqual([])
})

/** What changes on a joint when its tab goes through. */
const expectBehind = (flat: Joint, through: Joint): void => {
  const other = { front: 'back', back: 'front' } as const
  if (!through.isThrough) {
    expect(through).toEqual(flat)
    return
  }
  // Bent the same way, it lies behind the card instead of on it: the other face of both is glued.
  expect(through.fold).toBe(flat.fold)
  expect(through.host.face).toBe(other[flat.host.face])
  expect(through.own.face).toBe(other[flat.own.face])
  expect(through.line).toEqual(flat.line)
}

test('of random cards each tab fits its slit and its place, and nothing else is changed', () => {
  let told = 0
  fc.assert(
    fc.property(
      designs({ most: 3, kinds: ['glued-v-fold', 'glued-tent', 'cut-v-fold'] }).map((made) =>
        design(
          made.mechanisms.map((m) => (m.kind.startsWith('glued') ? { ...m, tab: 6 } : m)),
          made.card,
        ),
      ),
      (made) => {
        const cut = withTabs(made, 'slit')
        expect(withTabs(cut, 'flat').mechanisms.map(({ id }) => id)).toEqual(
          made.mechanisms.map(({ id }) => id),
        )
        const flat = jointsOf(made)
        jointsOf(cut).forEach((joint, k) => {
          expectBehind(flat[k] as Joint, joint)
          if (!joint.isThrough || !joint.line) return
          told += 1
          const [a, b, c, d] = joint.host.points as readonly Spot[] as [Spot, Spot, Spot, Spot]
          const tab = joint.own.points as readonly Spot[]
          // The place on the card is as long as the tab's fold, and as wide as the tab.
          expect(far(a, b)).toBeCloseTo(long(tab), 6)
          expect([far(b, c), far(c, d), far(d, a)].sort((p, q) => p - q)).toEqual(
            [
              far(tab[0] as Spot, tab[1] as Spot),
              far(tab[1] as Spot, tab[2] as Spot),
              far(tab[2] as Spot, tab[3] as Spot),
            ]
              .sort((p, q) => p - q)
              .map((x) => expect.closeTo(x, 6)),
          )
          // A slit of one millimetre more lies along it.
          const ends = pieceOf(cut, joint.host.piece).lines.filter(
            ({ kind, points }) =>
              kind === 'cut' &&
              points.length === 2 &&
              Math.abs(long(points) - far(a, b) - 1) < 1e-6 &&
              [a, b].every(
                (p) => Math.abs(far(points[0] as Spot, p) + far(p, points[1] as Spot) - long(points)) < 1e-6,
              ),
          )
          expect(ends.length).toBeGreaterThan(0)
        })
      },
    ),
    runs(200),
  )
  expect(told).toBeGreaterThan(100)
})

test('what has no tabs has none to push through', () => {
  const made = design([gluedMoth({ tab: 0 }), { ...gluedMoth({ id: 'low', apex: 20, tab: 5 }) }])
  expect(tabbed(made)).toEqual(['low'])
})

/** A moth on the gutter, and a smaller one on the fold where its left tab goes through. */
const nested = (tab: number, more: object = {}): readonly object[] => [
  gluedMoth({ apex: 60, base: 45, facet: 60, foot: 60, ridge: 60, tab, tabs: 'slit' }),
  gluedMoth({
    ...{
      id: 'wing',
      on: 'moth/left',
      apex: 18,
      base: 45,
      facet: 60,
      foot: 34,
      ridge: 30,
      tab: 8,
      tabs: 'slit',
    },
    ...more,
  }),
]

const covered = (mechanisms: readonly object[], repairs = false) =>
  check(design(mechanisms), { repairs, names: ['glue'] }).filter(({ ok }) => !ok)

describe('a tab that is stuck down before another goes through its slit', () => {
  test('may not lie over that slit, and is told by how much it does', () => {
    // The wing's slit begins 5.5 less 0.5 sin 45 off the moth's joint and goes away from it at 45 degrees.
    const begins = 5.5 - 0.5 * Math.SQRT1_2
    const [fault, ...more] = covered(nested(8))
    expect(more).toEqual([])
    expect(fault).toMatchObject({ name: 'glue', ids: ['moth', 'wing', 'page/left'] })
    expect(fault?.value).toBeCloseTo((8 - begins) * Math.SQRT2, 6)
    expect(fault?.sentence).toMatch(
      /^The moth lies over 4\.0 mm of the slit for the wing on the left page: once it is glued, that tab cannot/,
    )
    expect(covered(nested(begins - 0.01))).toEqual([])
    expect(covered(nested(begins + 0.01))).toHaveLength(1)
  })

  test('is told of others alone: of one piece the covered tab goes through first', () => {
    expect(
      covered([{ ...gluedPond, left: 44, right: 44, walls: [-20, 26, 32], tab: 8, tabs: 'slit' }]),
    ).toEqual([])
  })

  test('is mended by a narrower tab', () => {
    expect(covered(nested(8), true)[0]?.repair).toMatchObject({ id: 'moth', field: 'tab', to: 5.1 })
  })

  test('is in the way on either face, and so is what is stuck on flat; what comes later is not', () => {
    const [moth, wing] = nested(8) as [object, object]
    expect(covered([{ ...moth, tabs: 'flat' }, wing])).toHaveLength(1)
    expect(covered([moth, { ...wing, tabs: 'flat' }])).toEqual([])
    const moon = {
      ...{ id: 'moon', kind: 'rider', on: 'page/right', face: 'back' },
      shape: [
        [20, 30],
        [60, 30],
        [60, 60],
        [20, 60],
      ],
      // Only its middle is glued, but all of it lies over the slit.
      glue: [
        [40, 40],
        [50, 40],
        [50, 50],
        [40, 50],
      ],
    }
    // Of the slit at 30 mm from 24.5 to 75.5, what is from 30 to 60.
    expect(covered([moon, tent()])[0]).toMatchObject({ ids: ['moon', 'house', 'page/right'], value: 30 })
    expect(covered([tent(), moon])).toEqual([])
  })

  test('is narrowed where all tabs are pushed through, and by no more than that takes', () => {
    const flat = design(nested(8).map((m) => ({ ...m, tabs: 'flat' })))
    const widths = withTabs(flat, 'slit').mechanisms.map((m) => 'tab' in m && m.tab)
    expect(widths).toEqual([5, 8])
    expect(withTabs(flat, 'flat')).toEqual(flat)
    // A third of a joint of 34 mm at 17 degrees, less half a millimetre: 3.17 mm off. The narrowest tab there may be.
    const low = design(nested(8, { base: 17, facet: 30 }))
    expect(withTabs(low, 'slit').mechanisms.map((m) => 'tab' in m && m.tab)).toEqual([3, 8])
    // Where not even that would do, it stays and the check says so.
    const steep = design(nested(8, { base: 4, facet: 20 }))
    expect(withTabs(steep, 'slit').mechanisms.map((m) => 'tab' in m && m.tab)).toEqual([8, 8])
  })
})

test('all cards of the site keep their slits free of other tabs', () => {
  const folder = new URL('../../../content/dummies/', import.meta.url)
  for (const file of readdirSync(folder)) {
    const made = withTabs(parseDesign(JSON.parse(readFileSync(new URL(file, folder), 'utf8'))), 'slit')
    expect([file, ...check(made, { repairs: false, names: ['glue'] }).filter(({ ok }) => !ok)]).toEqual([
      file,
    ])
  }
})
