// Light on the standing card: where shadows fall, which hollows darken, what is drawn on which face.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { smooth } from '../../src/drawing/art/shapes.ts'
import type { ArtMark, Mark, PathMark, Point } from '../../src/drawing/pen/marks.ts'
import { PAPERS } from '../../src/drawing/pen/papers.ts'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import { lightOn } from '../../src/drawing/view/light.ts'
import type { Receiver } from '../../src/drawing/view/shadows.ts'
import { caster, shadowOf } from '../../src/drawing/view/shadows.ts'
import { view } from '../../src/drawing/view/view.ts'
import type { Design, Vec3 } from '../../src/paper/index.ts'
import { compile, parseDesign } from '../../src/paper/index.ts'
import { gluedMoth, gluedPond, runs, vFold } from '../paper/shared/designs.ts'
import { crossOf, dotOf, minus } from '../paper/shared/space.ts'
import { hits } from './rays.ts'

const size = { width: 600, height: 460 }

const read = (mechanisms: readonly object[], more: object = {}, card: object = {}): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Card',
    card: { width: 105, height: 148, caliper: 0.25, ...card },
    mechanisms,
    ...more,
  })

const beak = vFold('beak', 'gutter', 110, -40, 45)

const sheetOf = (marks: readonly Mark[], of: string): PathMark => {
  const found = marks.find((mark) => mark.mark === 'path' && mark.role === 'facet' && mark.of === of)
  if (found?.mark !== 'path') throw new Error(`${of} is not in the picture`)
  return found
}

const onIt = (marks: readonly Mark[], of: string, role: string): readonly PathMark[] =>
  (sheetOf(marks, of).on ?? []).filter((one): one is PathMark => one.mark === 'path' && one.role === role)

/** Whether a point lies in a polygon, by the even-odd rule, and how near to its outline. */
function inside(polygon: readonly Point[], [x, y]: Point): { in: boolean; margin: number } {
  let within = false
  let margin = Number.POSITIVE_INFINITY
  polygon.forEach(([ax, ay], k) => {
    const [bx, by] = polygon[(k + 1) % polygon.length] as Point
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) within = !within
    const square = (bx - ax) ** 2 + (by - ay) ** 2 || 1
    const t = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
    margin = Math.min(margin, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)))
  })
  return { in: within, margin }
}

const unit = (v: Vec3): Vec3 => {
  const long = Math.hypot(...v) || 1
  return [v[0] / long, v[1] / long, v[2] / long]
}

const coordinate = fc.integer({ min: -60_000, max: 60_000 }).map((n) => n / 1000)

const place: fc.Arbitrary<Vec3> = fc.tuple(coordinate, coordinate, coordinate)

describe('a shadow', () => {
  it('lies exactly where a ray to the lamp meets the caster: held against a ray caster', () => {
    let [dark, bright] = [0, 0]
    fc.assert(
      fc.property(
        place,
        place,
        place,
        place,
        place,
        fc.array(fc.tuple(coordinate, coordinate), { minLength: 12, maxLength: 12 }),
        (a, b, c, normalish, lampish, spots) => {
          const normal = unit(normalish)
          const lamp = unit(lampish)
          const u = unit(crossOf(normal, Math.abs(normal[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]))
          const v = crossOf(normal, u)
          fc.pre(dotOf(normal, lamp) > 0.15)
          fc.pre(Math.hypot(...crossOf(minus(b, a), minus(c, a))) > 200)
          const on: Receiver = { leaf: 0, origin: [3, -4, 5], u, v, normal, box: [-60, -60, 60, 60] }
          const shadow = shadowOf(caster(1, [a, b, c]), on, lamp)
          for (const [s, t] of spots) {
            const p = [0, 1, 2].map(
              (k) => (on.origin[k] as number) + s * (u[k] as number) + t * (v[k] as number),
            ) as unknown as Vec3
            const far = p.map((x, k) => x + 600 * (lamp[k] as number)) as unknown as Vec3
            // From far along the lamp's direction back to the spot: what is met before it stands in the light.
            const stands = hits(far, p, [{ name: 'caster', points: [a, b, c] }]).some(
              ({ reach }) => reach < 1 - 1e-6,
            )
            const { in: within, margin } =
              shadow.length > 2 ? inside(shadow, [s, t]) : { in: false, margin: 9 }
            if (margin < 1e-3) continue
            expect(within).toBe(stands)
            if (stands) dark++
            else bright++
          }
        },
      ),
      { ...runs(400), unbiased: true },
    )
    expect(dark).toBeGreaterThan(100)
    expect(bright).toBeGreaterThan(100)
  })

  it('is not thrown by what lies on the surface, behind it, or is the surface itself', () => {
    const on: Receiver = {
      leaf: 4,
      origin: [0, 0, 0],
      u: [1, 0, 0],
      v: [0, 1, 0],
      normal: [0, 0, 1],
      box: [-50, -50, 50, 50],
    }
    const square = (z: number): Vec3[] => [
      [0, 0, z],
      [10, 0, z],
      [10, 10, z],
      [0, 10, z],
    ]
    const lamp = unit([-1, 0, 1])
    expect(shadowOf(caster(1, square(0)), on, lamp)).toEqual([])
    expect(shadowOf(caster(1, square(-5)), on, lamp)).toEqual([])
    expect(shadowOf(caster(4, square(5)), on, lamp)).toEqual([])
    expect(shadowOf(caster(1, square(5)), on, unit([1, 0, -1]))).toEqual([])
    // 5 mm up, light from 45 degrees: it falls 5 mm along.
    const fallen = shadowOf(caster(1, square(5)), on, lamp)
    expect(fallen.map(([x]) => x).sort((p, q) => p - q)[0]).toBeCloseTo(5, 9)
    expect(Math.max(...fallen.map(([x]) => x))).toBeCloseTo(15, 9)
  })

  it('reaches into a surface from far beside it: a low lamp draws it long', () => {
    const wall: Vec3[] = [
      [-70, -3, 0],
      [-70, 3, 0],
      [-70, 3, 20],
      [-70, -3, 20],
    ]
    const on: Receiver = {
      leaf: 0,
      origin: [0, 0, 0],
      u: [1, 0, 0],
      v: [0, 1, 0],
      normal: [0, 0, 1],
      box: [-30, -50, 50, 50],
    }
    // 20 mm high, and the lamp stands 2 up for 5 along: 50 mm long, 10 mm of it on the surface.
    const fallen = shadowOf(caster(1, wall), on, unit([-5, 0, 2]))
    expect(Math.min(...fallen.map(([x]) => x))).toBeCloseTo(-30, 9)
    expect(Math.max(...fallen.map(([x]) => x))).toBeCloseTo(-20, 9)
  })

  it('falls from the parts on the pages, softer where nothing moves', () => {
    const one = read([gluedMoth()])
    const shadows = (moving: boolean) =>
      ['page/left', 'page/right'].flatMap((page) =>
        onIt(view(one, 100, { turn: -20, tilt: 36 }, size, { moving }).marks, page, 'shadow'),
      )
    expect(shadows(true).length).toBeGreaterThan(0)
    expect(shadows(false).length).toBeGreaterThan(2 * shadows(true).length)
    for (const { strength } of shadows(false)) expect(strength).toBeCloseTo(0.25, 9)
  })
})

describe('light', () => {
  it('is full on what faces the lamp, and none straight from it on what is turned away', () => {
    const lamp = unit([-0.5, -0.4, 0.7])
    expect(lightOn(lamp, lamp).light).toBeCloseTo(1, 12)
    expect(lightOn(unit([0.5, 0.4, -0.7]), lamp).light).toBe(0)
    expect(lightOn([0, 0, 1], lamp).sky).toBeCloseTo(1, 12)
    expect(lightOn([0, 0, -1], lamp).sky).toBeLessThan(0.7)
  })
})

describe('folds', () => {
  it('darken in their hollows more the nearer they are shut, and not at all when flat', () => {
    const strongest = (opening: number) =>
      Math.max(
        0,
        ...onIt(view(read([]), opening, { turn: -10, tilt: 50 }, size).marks, 'page/right', 'fade').map(
          ({ strength = 0 }) => strength,
        ),
      )
    expect(strongest(180)).toBe(0)
    expect(strongest(120)).toBeGreaterThan(0)
    expect(strongest(60)).toBeGreaterThan(strongest(120))
    // Half open a hollow keeps half of what it has when shut: 0.75 (1 - 90/180).
    expect(strongest(90)).toBeCloseTo(0.375, 2)
  })

  it('are told from cuts: a page has one fold, seen as a hollow from inside and as a brow from behind', () => {
    const edges = (tilt: number, turn: number, role: string) =>
      onIt(view(read([]), 100, { turn, tilt }, size).marks, 'page/right', role).flatMap(
        ({ runs: all }) => all,
      )
    expect(edges(50, -10, 'dip')).toHaveLength(1)
    expect(edges(50, -10, 'brow')).toHaveLength(0)
    expect(edges(5, 80, 'brow')).toHaveLength(1)
    expect(edges(5, 80, 'dip')).toHaveLength(0)
    // The rest of its outline is cut.
    expect(edges(50, -10, 'edge').reduce((sum, run) => sum + run.length - 1, 0)).toBe(3)
  })

  it('of a beak: the ridge is a brow and both joints are hollows, from inside the card', () => {
    const { marks } = view(read([beak]), 100, { turn: -30, tilt: 40 }, size)
    for (const side of ['beak/left', 'beak/right'])
      if (sheetOf(marks, side).paint?.face === 'front') {
        expect(onIt(marks, side, 'brow').flatMap(({ runs: all }) => all)).toHaveLength(1)
        expect(onIt(marks, side, 'dip').flatMap(({ runs: all }) => all)).toHaveLength(1)
      }
  })
})

const spot = (on: string, face: string, more: object = {}) => ({
  on,
  face,
  shape: [
    [2, 2],
    [8, 2],
    [8, 8],
  ],
  fill: 'amber',
  ...more,
})

const artIn = (marks: readonly Mark[], of: string): readonly ArtMark[] =>
  (sheetOf(marks, of).on ?? []).filter((one): one is ArtMark => one.mark === 'art')

describe('art', () => {
  const art = [spot('page/right', 'front'), spot('page/right', 'back', { fill: 'rose' })]

  it('is drawn on its own face and on no other panel', () => {
    const one = read([], { art })
    const inside = view(one, 100, { turn: -10, tilt: 50 }, size).marks
    const behind = view(one, 100, { turn: 80, tilt: 5 }, size).marks
    expect(artIn(inside, 'page/right').map(({ shapes }) => shapes[0]?.fill)).toEqual([PAPERS.amber])
    expect(artIn(behind, 'page/right').map(({ shapes }) => shapes[0]?.fill)).toEqual([PAPERS.rose])
    expect(artIn(inside, 'page/left')).toEqual([])
  })

  it('lies where its panel lies: its corners are within a pixel of where the kernel lifts them', () => {
    const one = read([gluedPond, beak], {
      art: [spot('pond/left', 'front'), spot('page/left', 'front'), spot('beak/right', 'front')],
    })
    const poser = compile(one)
    for (const opening of [40, 95, 150]) {
      const drawn = view(poser, opening, { turn: -20, tilt: 40 }, size)
      poser(opening)
      for (const name of ['pond/left', 'page/left', 'beak/right']) {
        const panel = poser.model.panels.findIndex((each) => each.name === name)
        for (const { shapes, matrix: whole, own } of artIn(drawn.marks, name)) {
          const matrix = whole ?? own?.[0]
          shapes[0]?.runs[0]?.forEach(([x, y], k) => {
            const corner = [
              [2, 2],
              [8, 2],
              [8, 8],
            ][k] as [number, number]
            const [u, v] = drawn.toScreen(poser.lift(panel, corner))
            const at: Point = matrix
              ? [matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5]]
              : [x, y]
            expect(Math.hypot(at[0] - u, at[1] - v)).toBeLessThan(1)
          })
        }
      }
    }
  })

  it('of neighbours that look alike is one shape, and what gives light lies over the shade', () => {
    const list = [
      spot('page/left', 'front'),
      spot('page/left', 'front'),
      spot('page/left', 'front', { glows: true }),
    ]
    const { marks } = view(read([], { art: list }), 100, { turn: 10, tilt: 50 }, size)
    const order = (sheetOf(marks, 'page/left').on ?? []).map((one) => (one.mark === 'art' ? 'art' : one.role))
    const [plain, lit] = artIn(marks, 'page/left')
    expect(plain?.shapes.map(({ runs: all }) => all.length)).toEqual([2])
    expect(lit?.shapes).toHaveLength(1)
    expect(order.indexOf('art')).toBeLessThan(order.indexOf('shade'))
    expect(order.lastIndexOf('art')).toBeGreaterThan(order.indexOf('shade'))
  })

  it('has its paper: what the design names, else the card it is cut from in turn', () => {
    const { marks } = view(read([beak], { papers: { page: 'moss' } }), 100, { turn: -30, tilt: 40 }, size)
    expect(sheetOf(marks, 'page/left').paint?.paper).toBe(PAPERS.moss)
    expect(sheetOf(marks, 'beak/left').paint?.paper).toBeUndefined()
  })
})

describe('a smooth outline', () => {
  // The cubic of a uniform Catmull-Rom spline at its middle, from its matrix form (Catmull and Rom 1974):
  // (-a + 9 b + 9 c - d) / 16.
  it('goes through its points and half-way between them where the spline does', () => {
    const points = [
      [0, 0],
      [4, 1],
      [7, 5],
      [2, 9],
    ] as const
    const out = smooth(points, true)
    points.forEach((p, k) => {
      expect(out[3 * k]).toEqual(p)
      const [a, b, c, d] = [0, 1, 2, 3].map((n) => points[(k + 3 + n) % 4] as readonly [number, number])
      const bezier = out.slice(3 * k, 3 * k + 4)
      for (const n of [0, 1] as const) {
        const [p0, p1, p2, p3] = bezier.map((q) => q[n]) as [number, number, number, number]
        const spline = (-(a?.[n] ?? 0) + 9 * (b?.[n] ?? 0) + 9 * (c?.[n] ?? 0) - (d?.[n] ?? 0)) / 16
        expect((p0 + 3 * p1 + 3 * p2 + p3) / 8).toBeCloseTo(spline, 12)
      }
    })
  })
  it('has a corner where a point is given twice', () => {
    const out = smooth(
      [
        [0, 0],
        [10, 0],
        [10, 0],
        [10, 10],
      ],
      false,
    )
    // Two cubics, and at the corner their directions differ.
    expect(out).toHaveLength(7)
    const [, , before, corner, after] = out as [Point, Point, Point, Point, Point]
    expect(corner[1] - before[1]).toBeCloseTo(0, 12)
    expect(after[0] - corner[0]).toBeCloseTo(0, 12)
  })
})

describe('a cover', () => {
  it('stands out 3 mm all round, behind the pages, and is seen through a hole', () => {
    const one = read([beak], {}, { cover: true })
    const drawn = view(one, 100, { turn: 20, tilt: 60 }, size)
    const cover = sheetOf(drawn.marks, 'cover/left')
    const order = drawn.marks.flatMap((mark) =>
      mark.mark === 'path' && mark.role === 'facet' ? [mark.of] : [],
    )
    expect(order.indexOf('cover/left')).toBeLessThan(order.indexOf('page/left'))
    expect(cover.paint?.paper).toBe(PAPERS.night)
    // Seen from the side it is the farther of the two.
    const back = view(one, 100, { turn: -80, tilt: 5 }, size).marks.flatMap((mark) =>
      mark.mark === 'path' && mark.role === 'facet' ? [mark.of] : [],
    )
    expect(back.indexOf('cover/left')).toBeGreaterThan(back.indexOf('page/left'))
  })
  it('is there at every opening', () => {
    const one = read([beak], {}, { cover: true })
    for (const opening of [0, 0.01, 1, 20, 90, 179.9, 180]) {
      const { marks } = view(one, opening, { turn: -20, tilt: 40 }, size)
      const numbers = [...sheetOf(marks, 'cover/left').runs, ...sheetOf(marks, 'cover/right').runs].flat(2)
      for (const n of numbers) expect(Number.isFinite(n)).toBe(true)
    }
  })
})

describe('where a card stands', () => {
  it('upright its gutter is upright on the screen and its lower edge on the table', () => {
    const drawn = view(read([]), 90, { turn: 0, tilt: 0 }, size, { stand: 'edge' })
    const [foot, head] = [drawn.toScreen([0, 0, 0]), drawn.toScreen([0, 148, 0])]
    expect(foot[0]).toBeCloseTo(head[0], 6)
    expect(foot[1]).toBeGreaterThan(head[1] + 100)
    // The pages open towards the reader: seen larger at their outer edges.
    const side = (x: number) => Math.abs(drawn.toScreen([x, 148, 74])[1] - drawn.toScreen([x, 0, 74])[1])
    expect(side(74)).toBeGreaterThan(foot[1] - head[1])
  })
  it('finds the opening back from its handle, upright too', () => {
    for (const opening of [20, 96.5, 150]) {
      const drawn = view(read([]), opening, { turn: -13, tilt: 10 }, size, { handle: true, stand: 'edge' })
      const handle = drawn.marks.find((mark) => mark.mark === 'dot' && mark.of === 'opening')
      expect(handle?.mark === 'dot' && drawn.toOpening(handle.at)).toBeCloseTo(opening, 1)
    }
  })
})

describe('one part lit', () => {
  it('dims all else and keeps its art and shadows for itself', () => {
    const one = read([beak, gluedMoth({ apex: 10, foot: 20, ridge: 20 })], {
      art: [spot('page/left', 'front'), spot('moth/left', 'front')],
    })
    const { marks } = view(one, 100, { turn: 10, tilt: 40 }, size, { lit: ['moth'] })
    expect(sheetOf(marks, 'page/left').paint?.dim).toBe(true)
    expect(artIn(marks, 'page/left')).toEqual([])
    expect(sheetOf(marks, 'moth/left').paint?.dim).toBeUndefined()
    expect(artIn(marks, 'moth/left').length + artIn(marks, 'moth/right').length).toBeGreaterThanOrEqual(0)
  })
})

describe('as SVG', () => {
  it('every clip and fade that is used is there once, under a name of the drawing’s own', () => {
    const svg = (opening: number) =>
      toSvg(view(read([beak, gluedPond]), opening, { turn: -20, tilt: 40 }, size))
    const text = svg(96)
    const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id)
    const used = [...text.matchAll(/(?:url\(|href=")#([^)"]+)/g)].map(([, id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids.length).toBeGreaterThan(10)
    expect([...new Set(used)].sort()).toEqual([...ids].sort())
    expect(svg(97)).not.toContain(`id="${ids[0]}"`)
  })
})
