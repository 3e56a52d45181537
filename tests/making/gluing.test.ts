import { describe, expect, it } from 'vitest'
import { glueAreas, heldBy, loose } from '../../src/making/gluing.ts'
import { guestLines, making } from '../../src/making/making.ts'
import type { Surface, Vec3 } from '../../src/paper/index.ts'
import { compile, flatParts, parseDesign, pieces, surfaces } from '../../src/paper/index.ts'
import { moth, owl, pond } from '../drawing/garden.ts'
import { design, vFold } from '../paper/shared/designs.ts'
import { apart, crossOf, dotOf, minus, RAD, sizeOf } from '../paper/shared/space.ts'

/** A point of the card's page, across from the gutter (left of it below zero) and along, by plane trigonometry. */
const spot = (opening: number, across: number, along: number): Vec3 => [
  across * Math.sin((opening / 2) * RAD),
  along,
  Math.abs(across) * Math.cos((opening / 2) * RAD),
]

const of = (paper: readonly Surface[], panel: string): readonly Vec3[] =>
  paper.filter((one) => one.panel === panel).flatMap(({ points }) => points)

/** How far a point stands off the plane of a panel. */
const off = (paper: readonly Surface[], panel: string, p: Vec3): number => {
  const plane = paper.find((one) => one.panel === panel)
  if (!plane) throw new Error(`no ${panel}`)
  return dotOf(plane.front, minus(p, plane.points[0] as Vec3))
}

describe('a piece that lies folded on the left page', () => {
  const paper = making(moth, { opening: 150, through: [], cut: [], lying: ['moth'] })

  it('has its left joint on its line', () => {
    // 45 degrees from the gutter at 36 mm, 50 mm long: by plane trigonometry on the page.
    const end = spot(150, -50 * Math.SQRT1_2, 36 + 50 * Math.SQRT1_2)
    const apex = spot(150, 0, 36)
    for (const place of [apex, end])
      expect(Math.min(...of(paper, 'moth/left').map((p) => apart(p, place)))).toBeLessThan(1e-9)
  })

  it('lies flat, its right half on its left one, both on the front of the page', () => {
    for (const p of of(paper, 'moth/left')) {
      expect(off(paper, 'page/left', p)).toBeGreaterThan(-1e-9)
      expect(off(paper, 'page/left', p)).toBeLessThan(0.1)
    }
    const left = of(paper, 'moth/left')
    for (const p of of(paper, 'moth/right'))
      expect(Math.min(...left.map((q) => apart(p, q)))).toBeLessThan(0.2)
  })

  it('carries tape on its free edge, or a tab where it has tabs', () => {
    expect(paper.filter(({ tape }) => tape).map(({ panel }) => panel)).toEqual(['moth/right/tape'])
    const tabbed = making(owl, { opening: 150, through: [], cut: [], lying: ['body'] })
    expect(tabbed.filter(({ panel }) => panel === 'body/right/tab')).toHaveLength(1)
    for (const p of of(tabbed, 'body/right/tab')) expect(off(tabbed, 'page/left', p)).toBeGreaterThan(-1e-6)
  })
})

describe('a piece held off its place', () => {
  it('hovers over its face by as much as is said', () => {
    const paper = making(pond, { opening: 100, through: ['moon'], cut: [], lifted: { moon: 25 } })
    for (const p of of(paper, 'moon/face')) expect(off(paper, 'page/right', p)).toBeCloseTo(25, 9)
  })

  it('of a floating layer is the platform: its walls stand where they stood', () => {
    const home = making(pond, { opening: 120, through: ['pond'], cut: [] })
    const held = making(pond, { opening: 120, through: ['pond'], cut: [], lifted: { pond: 25 } })
    for (const wall of ['pond/wall-1', 'pond/wall-2', 'pond/wall-3'])
      expect(of(held, wall)).toEqual(of(home, wall))
    of(held, 'pond/left').forEach((p, k) => {
      expect(apart(p, of(home, 'pond/left')[k] as Vec3)).toBeCloseTo(25, 9)
    })
  })
})

describe('tape', () => {
  it('runs along the whole of both joints, half on the page and half on the piece', () => {
    const paper = making(moth, { opening: 120, through: ['moth'], cut: [], taped: ['moth'] })
    const strips = paper.filter(({ tape }) => tape)
    expect(strips).toHaveLength(4)
    for (const { panel, points } of strips) {
      const joint = panel === 'moth/left/tape' ? -1 : 1
      const end = spot(120, joint * 50 * Math.SQRT1_2, 36 + 50 * Math.SQRT1_2)
      const apex = spot(120, 0, 36)
      for (const place of [apex, end])
        expect(Math.min(...points.map((p) => apart(p, place)))).toBeLessThan(1e-9)
    }
  })
})

describe('glue areas', () => {
  it('of a piece on a face are its glue, on that face', () => {
    const [area] = glueAreas(pond, [], 'moon', 70)
    expect(area?.points).toHaveLength(3)
    expect(area?.points[0] && apart(area.points[0], spot(70, 66, 86))).toBeLessThan(1e-9)
  })
})

describe('a piece on the table', () => {
  it('is told by how it is held', () => {
    expect(['back', 'spines', 'pond'].map((id) => heldBy(pond, id))).toEqual(['joints', 'face', 'walls'])
    expect(heldBy(design([vFold('beak', 'gutter', 110, -60, 45)]), 'beak')).toBeNull()
  })

  it('lies flat with the outline of the template', () => {
    const { paper, lines } = loose(owl, 'body', false)
    const outline = pieces(owl).find(({ id }) => id === 'body/piece')?.outline ?? []
    for (const p of paper.flatMap(({ points }) => points)) expect(p[2]).toBe(0)
    // Shifted, not turned: distances are those of the template.
    const [a, b] = [outline[0], outline[3]]
    const far = Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 0), (a?.[1] ?? 0) - (b?.[1] ?? 0))
    const spots = paper.flatMap(({ points }) => points)
    expect(spots.some((p) => spots.some((q) => Math.abs(apart(p, q) - far) < 1e-9))).toBe(true)
    expect(lines.filter(({ kind }) => kind === 'glue' || kind === 'mountain').length).toBeGreaterThan(2)
  })

  it('folded over, has its halves 20 degrees apart and as long as they were', () => {
    const { paper, path } = loose(moth, 'moth', true)
    const [left, right] = ['moth/left', 'moth/right'].map((name) => paper.find(({ panel }) => panel === name))
    if (!left || !right) throw new Error('a half is missing')
    // Back to back: the fronts look away from one another.
    const angle = (Math.acos(dotOf(left.front, right.front)) * 180) / Math.PI
    expect(180 - angle).toBeCloseTo(20, 9)
    expect(left.front[2]).toBe(-1)
    for (const p of paper.flatMap(({ points }) => points)) expect(p[2]).toBeGreaterThan(-1e-9)
    expect(path.length).toBeGreaterThan(5)
    const radius = Math.hypot(path[0]?.[0] ?? 0, path[0]?.[2] ?? 0)
    for (const p of path) expect(Math.hypot(p[0], p[2])).toBeCloseTo(radius, 9)
  })

  it('shows every wall of a floating layer with both its tabs bent up', () => {
    const { paper } = loose(pond, 'pond', true)
    expect(paper.filter(({ panel }) => panel.endsWith('/tab'))).toHaveLength(6)
    for (const { points } of paper) for (const p of points) expect(p[2]).toBeGreaterThan(-1e-9)
  })

  it('is refused for a mechanism that is cut from the card', () => {
    expect(() => loose(design([vFold('beak', 'gutter', 110, -60, 45)]), 'beak', false)).toThrow(/no piece/)
  })
})

describe('lines of a guest in its host', () => {
  it('are as long as on the flat sheet, and lie on both sides of the fold', () => {
    const one = parseDesign({
      hingebook: 1,
      title: 'Eyes',
      card: { width: 105, height: 148, caliper: 0.2 },
      mechanisms: [
        { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 132, run: -56, cut: 48 },
        { id: 'eye', kind: 'cut-v-fold', on: 'beak/left', apex: 20, run: 34, cut: 20, lean: -12 },
      ],
    })
    const lines = guestLines(one, { opening: 60, through: ['beak'], cut: ['eye'] }, 'eye')
    const cuts = lines.filter(({ kind }) => kind === 'cut')
    expect(cuts.map(({ side }) => side)).toEqual(['left', 'right'])
    for (const { points } of cuts) {
      const [a, b] = points as [Vec3, Vec3]
      expect(sizeOf(minus(a, b))).toBeCloseTo(Math.hypot(20, 12), 9)
    }
    // The fold lines: from the apex to the slit's end, 34 - 12 along and 20 across.
    for (const { points } of lines.filter(({ kind }) => kind !== 'cut'))
      expect(apart(points[0] as Vec3, points[1] as Vec3)).toBeCloseTo(Math.hypot(22, 20), 9)
  })
})

// Common practice, no source: a template is printed on the front, and the maker works with the print in sight.
describe('every flat piece is seen from its front', () => {
  const body = {
    id: 'body',
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 70,
    toward: 1,
    base: 45,
    facet: 60,
    foot: 60,
    ridge: 70,
  }
  const vees = ['gutter', 'body/ridge', 'body/left', 'body/right'].flatMap((on) =>
    [1, -1].flatMap((toward) =>
      ['inside', 'outside'].flatMap((side) =>
        ['up', 'down'].flatMap((pop) =>
          [1, -1].map((way) => [
            { ...body, toward: way },
            {
              id: 'guest',
              kind: 'glued-v-fold',
              on,
              apex: 30,
              toward,
              left: { base: 30, facet: 45 },
              right: { base: 25, facet: 50 },
              foot: 20,
              ridge: 25,
              side,
              pop,
            },
            {
              id: 'patch',
              kind: 'rider',
              on: 'guest/left',
              shape: [
                [2, 2],
                [9, 2],
                [4, 9],
              ],
              glue: [
                [3, 3],
                [5, 3],
                [4, 5],
              ],
            },
          ]),
        ),
      ),
    ),
  )
  const others = ['inside', 'outside'].flatMap((side) =>
    ['gutter', 'body/ridge'].map((on) => [
      body,
      {
        id: 'tent',
        kind: 'glued-tent',
        on,
        start: 10,
        end: 30,
        leftFoot: 10,
        rightFoot: 6,
        leftWall: 20,
        rightWall: 24,
        side,
        tab: 5,
      },
      vFold('beak', 'gutter', 30, -20, 40),
      { id: 'step', kind: 'cut-layer', on: 'beak/left', start: 2, end: 8, left: 3, right: 2 },
    ]),
  )

  it.each([...vees, ...others])('%#', (...mechanisms) => {
    const one = design(mechanisms)
    const poser = compile(one)
    poser(70)
    const flat = flatParts(one)
    const { panels } = poser.model
    for (const { leaf, points, front, flat: own } of surfaces(poser)) {
      const { piece } = panels[leaf] ?? {}
      const part = flat.find((other) => other.index === leaf && other.points.length === points.length)
      if (piece === undefined || !part || !own) throw new Error('a surface without its flat part')
      // Counter-clockwise on the piece means counter-clockwise round the front.
      const [a, b, c] = points as [Vec3, Vec3, Vec3]
      const [p, q, r] = part.points
      const turn =
        ((q?.[0] ?? 0) - (p?.[0] ?? 0)) * ((r?.[1] ?? 0) - (p?.[1] ?? 0)) -
        ((q?.[1] ?? 0) - (p?.[1] ?? 0)) * ((r?.[0] ?? 0) - (p?.[0] ?? 0))
      const seen = dotOf(crossOf(minus(b, a), minus(c, a)), front)
      if (Math.abs(turn) > 1e-6) expect(Math.sign(seen), panels[leaf]?.name).toBe(Math.sign(turn))
    }
  })
})
