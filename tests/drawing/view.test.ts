import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PathMark, Point } from '../../src/drawing/pen/marks.ts'
import type { Camera } from '../../src/drawing/view/camera.ts'
import { cardMarks, DEFAULT_CAMERA, view } from '../../src/drawing/view/view.ts'
import type { Check, Design, Surface, Vec3 } from '../../src/paper/index.ts'
import { compile, measure, parseDesign, SHUT, surfaces } from '../../src/paper/index.ts'
import { design, designs, gluedMoth, runs, vFold } from '../paper/shared/designs.ts'
import { crossOf, dotOf, minus } from '../paper/shared/space.ts'
import { moth, owl, pond } from './garden.ts'
import { hits, within } from './rays.ts'

const size = { width: 600, height: 460 }

const tent = {
  kind: 'glued-tent',
  on: 'gutter',
  start: 50,
  end: 110,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 45,
  rightWall: 45,
}

const cameras: fc.Arbitrary<Camera> = fc.record({
  turn: fc.double({ min: -180, max: 180, noNaN: true }),
  tilt: fc.double({ min: 2, max: 90, noNaN: true }),
})

const openings = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: 0, max: 180, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, 0.01, 1, 90, 179, 179.99, 180) },
)

const weights = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 })

const facetsOf = (marks: readonly { mark: string; role: string }[]): readonly PathMark[] =>
  marks.filter((mark) => mark.mark === 'path' && mark.role === 'facet') as PathMark[]

/** How often the runs wind round a point (the non-zero rule fills what is not 0), and how near an outline it is. */
function relation(runs: readonly (readonly Point[])[], [x, y]: Point): { winding: number; margin: number } {
  let winding = 0
  let margin = Number.POSITIVE_INFINITY
  for (const run of runs)
    run.forEach(([ax, ay], k) => {
      const [bx, by] = run[(k + 1) % run.length] as Point
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) winding += by > ay ? 1 : -1
      const square = (bx - ax) ** 2 + (by - ay) ** 2 || 1
      const t = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
      margin = Math.min(margin, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)))
    })
  return { winding, margin }
}

/** A slit drawn so that it crosses itself leaves a facet that no sheet of paper can have: it has no one outline. */
const crossesItself = ({ points }: Surface): boolean => {
  const [a] = points as [Vec3]
  const turns = points.slice(1, -1).map((b, k) => crossOf(minus(b, a), minus(points[k + 2] as Vec3, a)))
  return turns.some((turn) => turns.some((other) => dotOf(turn, other) < -1e-6))
}

/** Compares the picture at spots on the paper with rays from the eye: how many spots were compared. */
function compared(
  one: Design,
  opening: number,
  camera: Camera,
  spots: readonly (readonly number[])[],
): number {
  const poser = compile(one)
  const picture = view(poser, opening, camera, size)
  poser(Math.max(SHUT, opening))
  const paper = surfaces(poser)
  if (paper.some(crossesItself)) return 0
  const facets = facetsOf(picture.marks)
  const targets = paper.map((surface, k) => ({ name: `${k}`, points: surface.points }))
  let count = 0
  paper.forEach((surface) => {
    for (const spot of spots) {
      const aim = within(surface.points, spot)
      const met = hits(picture.eye, aim, targets)
      const first = met[0]
      if (!first) continue
      // Sheets that touch there: what is glued on lies over its host where that side is seen, else under it.
      const touching = met
        .filter(({ reach }) => 600 * (reach - first.reach) < 1e-3)
        .map(({ name }) => paper[Number(name)] as Surface)
        .sort((a, b) => a.layer - b.layer)
      const lowest = touching[0] as Surface
      const up = dotOf(lowest.front, minus(picture.eye, lowest.points[0] as Vec3)) > 0
      const seen = up === (lowest.over ?? 1) > 0
      const nearest = (seen ? touching.at(-1) : lowest) as Surface
      // Two sheets of one layer, or an outline within a third of a pixel: either answer is right.
      if (touching.some(({ layer, leaf }) => layer === nearest.layer && leaf !== nearest.leaf)) continue
      const at = picture.toScreen(aim)
      const relations = facets.map(({ runs }) => relation(runs, at))
      if (relations.some(({ margin }) => margin < 0.3)) continue
      const last = facets[relations.findLastIndex(({ winding }) => winding !== 0)]
      const front = dotOf(nearest.front, minus(picture.eye, nearest.points[0] as Vec3)) > 0
      expect([last?.of, last?.paint?.face]).toEqual([nearest.panel, front ? 'front' : 'back'])
      count++
    }
  })
  return count
}

describe('view', () => {
  it('paints last what is nearest to the eye, for any design, opening and camera', () => {
    let count = 0
    fc.assert(
      fc.property(
        designs({ most: 6 }),
        openings,
        cameras,
        fc.array(weights, { minLength: 6, maxLength: 6 }),
        (one, opening, camera, spots) => {
          count += compared(one, opening, camera, spots)
        },
      ),
      { ...runs(60), endOnFailure: true },
    )
    expect(count).toBeGreaterThan(500)
  }, 120_000)

  it('is right for glued pieces of every kind, from all sides: in space, lying flat, and stuck on a face', () => {
    const spots = Array.from({ length: 8 }, (_, k) => [0, 1, 2, 3].map((n) => ((k * (n + 3) * 17) % 23) / 23))
    const stuck = { front: 0, back: 0 }
    for (const one of [moth, owl, pond])
      for (const opening of [0, 35, 110, 180])
        for (const turn of [-170, -100, -30, 60])
          for (const tilt of [8, 44, 85]) {
            expect(compared(one, opening, { turn, tilt }, spots)).toBeGreaterThan(6)
            if (one !== pond) continue
            const spines = facetsOf(view(one, opening, { turn, tilt }, size).marks).filter(
              ({ of }) => of === 'spines/face',
            )
            for (const { paint } of spines) stuck[paint?.face ?? 'front']++
          }
    // Both sides of what is stuck on a face came into sight.
    expect(stuck.front).toBeGreaterThan(0)
    expect(stuck.back).toBeGreaterThan(0)
  }, 120_000)

  it('is right for random designs with glued pieces', () => {
    let count = 0
    fc.assert(
      fc.property(
        designs({ most: 5, kinds: ['glued-v-fold', 'glued-tent', 'cut-v-fold'] }),
        openings,
        cameras,
        fc.array(weights, { minLength: 5, maxLength: 5 }),
        (one, opening, camera, spots) => {
          count += compared(one, opening, camera, spots)
        },
      ),
      { ...runs(90), endOnFailure: true },
    )
    expect(count).toBeGreaterThan(400)
  }, 120_000)

  it('shows a card that lies flat as one that is nearly flat, where depth tells what is in front', () => {
    const on = (more: object) =>
      gluedMoth({ id: 'owl', on: 'moth/ridge', apex: 3, foot: 14, ridge: 14, base: 40, facet: 40, ...more })
    const square = (from: number, to: number) => [
      [from, 20],
      [to, 20],
      [to, 35],
      [from, 35],
    ]
    const star = (on: string, face: string) => ({
      id: `star-${face}`,
      kind: 'rider',
      on,
      face,
      shape: square(4, 24),
      glue: square(6, 16),
    })
    const body = gluedMoth({ facet: 45 })
    const spots = Array.from({ length: 12 }, (_, k) =>
      [0, 1, 2, 3].map((n) => ((k * (n + 3) * 17) % 23) / 23),
    )
    let count = 0
    for (const mechanisms of [
      [gluedMoth({ facet: 45, side: 'outside' })],
      [body, on({})],
      [body, on({ side: 'outside' })],
    ])
      for (const tilt of [60, 85]) {
        const made = design(mechanisms)
        const [flat, near] = [180, 179.5].map((at) => view(made, at, { turn: 20, tilt }, size))
        const poser = compile(made)
        poser(180)
        for (const { points } of surfaces(poser))
          for (const spot of spots) {
            const at = flat?.toScreen(within(points, spot)) as Point
            const shown = [flat, near].map((picture) => {
              const facets = facetsOf(picture?.marks ?? [])
              const found = facets.map(({ runs }) => relation(runs, at))
              if (found.some(({ margin }) => margin < 2.5)) return null
              return facets[found.findLastIndex(({ winding }) => winding !== 0)]?.of
            })
            if (shown.includes(null)) continue
            expect(shown[0], `${JSON.stringify(mechanisms.at(-1))} at ${at}`).toBe(shown[1])
            count++
          }
      }
    expect(count).toBeGreaterThan(100)
    // What is stuck on the back of a wall is hidden by the wall from all who see its front, and the other way round.
    let [hidden, seen] = [0, 0]
    for (const host of [body, { ...tent, id: 'moth' }, { ...tent, id: 'moth', side: 'outside' }])
      for (const face of ['front', 'back'])
        for (const turn of [-150, -80, -20, 40, 120])
          for (const tilt of [10, 40]) {
            const made = design([host, star('moth/left', face)])
            const picture = view(made, 100, { turn, tilt }, size)
            const poser = compile(made)
            poser(100)
            const wall = surfaces(poser).find(({ panel }) => panel === 'moth/left') as Surface
            const spot = surfaces(poser).find(({ panel }) => panel.startsWith('star')) as Surface
            const isFront = dotOf(wall.front, minus(picture.eye, wall.points[0] as Vec3)) > 0
            const at = picture.toScreen(within(spot.points, [0.3, 0.3, 0.2, 0.2]))
            const facets = facetsOf(picture.marks)
            const top = facets[facets.findLastIndex(({ runs }) => relation(runs, at).winding !== 0)]?.of
            // Something else may stand before both.
            if (top !== 'moth/left' && !top?.startsWith('star')) continue
            const isSeen = isFront === (face === 'front')
            expect(top, `${face} of ${host.kind}, ${turn}, ${tilt}`).toBe(isSeen ? spot.panel : 'moth/left')
            if (isSeen) seen++
            else hidden++
          }
    expect(Math.min(hidden, seen)).toBeGreaterThan(4)
  })

  it('is right where panels pass through one another', () => {
    // Two wide layers on the beak's folds reach over its ridge and into one another.
    const tangle = design([
      vFold('beak', 'gutter', 130, -70, 50),
      { id: 'lid', kind: 'cut-layer', on: 'beak/left', start: 20, end: 60, left: 40, right: 12 },
      { id: 'lash', kind: 'cut-layer', on: 'beak/right', start: 20, end: 60, left: 40, right: 12 },
    ])
    const spots = Array.from({ length: 20 }, (_, k) =>
      [0, 1, 2, 3].map((n) => ((k * (n + 3) * 17) % 23) / 23),
    )
    let split = 0
    for (const opening of [10, 70, 120, 170])
      for (const turn of [-150, -30, 40, 100])
        for (const tilt of [10, 60]) {
          expect(compared(tangle, opening, { turn, tilt }, spots)).toBeGreaterThan(20)
          const names = facetsOf(view(tangle, opening, { turn, tilt }, size).marks).map(({ of }) => of)
          if (new Set(names).size < names.length) split++
        }
    // The case is a real one: panels had to be split.
    expect(split).toBeGreaterThan(0)
  }, 120_000)

  it('keeps its scale while the card opens and while a slit grows', () => {
    const at = (cut: number, opening: number) =>
      view(design([{ ...vFold('beak', 'gutter', 110, -40, 45), cut }]), opening, DEFAULT_CAMERA, size)
    const foot = at(38, 96).toScreen([0, 0, 0])
    const end = at(38, 96).toScreen([0, 148, 0])
    for (const [cut, opening] of [
      [38, 0],
      [60, 96],
      [10, 180],
    ] as const) {
      expect(at(cut, opening).toScreen([0, 0, 0])).toEqual(foot)
      expect(at(cut, opening).toScreen([0, 148, 0])).toEqual(end)
    }
  })

  it('has every page inside its box at every opening', () => {
    fc.assert(
      fc.property(openings, cameras, (opening, camera) => {
        const picture = view(design([]), opening, camera, size)
        for (const { runs } of facetsOf(picture.marks))
          for (const [x, y] of runs.flat()) {
            expect(x).toBeGreaterThan(-0.5)
            expect(x).toBeLessThan(size.width + 0.5)
            expect(y).toBeGreaterThan(-0.5)
            expect(y).toBeLessThan(size.height + 0.5)
          }
      }),
      runs(60),
    )
  })

  it('finds the opening back from where its handle is', () => {
    for (const opening of [0, 7, 45, 96.5, 140, 180]) {
      const picture = view(design([]), opening, DEFAULT_CAMERA, size, { handle: true })
      const handle = picture.marks.find((mark) => mark.mark === 'dot' && mark.of === 'opening')
      expect(handle && handle.mark === 'dot' && picture.toOpening(handle.at)).toBeCloseTo(opening, 1)
    }
  })

  it('says the rise that the ruler reads, and draws the line square to the page', () => {
    const one = design([vFold('beak', 'gutter', 110, -40, 45)])
    const rise = measure(one, 96).tips.beak?.rise ?? 0
    const picture = view(one, 96, DEFAULT_CAMERA, size, { rise: ['beak'] })
    const word = picture.marks.find((mark) => mark.mark === 'word' && mark.of === 'beak/rise')
    expect(word?.mark === 'word' && word.text).toBe(`${rise.toFixed(1)} mm`)
    expect(picture.says).toContain(`beak rises ${rise.toFixed(1)} mm`)
  })

  it('throws for an opening that no card has', () => {
    expect(() => view(design([]), 181, DEFAULT_CAMERA, size)).toThrow(/opening/)
    expect(() => view(design([]), Number.NaN, DEFAULT_CAMERA, size)).toThrow(/opening/)
  })

  it('rings what fails from inside the frame, once at each place, and says equal openings once', () => {
    const one = design([vFold('beak', 'gutter', 110, -40, 45)])
    const fail = (space: Vec3, opening: number): Check => ({
      name: 'stays-inside',
      ok: false,
      value: -1,
      unit: 'mm',
      limit: 0,
      sense: 'at-least',
      ids: [],
      sentence: 'The tip sticks out.',
      space,
      opening,
    })
    const rings = (faults: readonly Check[]) => {
      const { marks } = view(one, 90, DEFAULT_CAMERA, size, { faults })
      return {
        dots: marks.filter((mark) => mark.mark === 'dot' && mark.role === 'fault'),
        words: marks.flatMap((mark) => (mark.mark === 'word' && mark.role === 'fault' ? [mark.text] : [])),
      }
    }
    const far = rings([fail([0, 4000, 0], 0), fail([10, 4100, 0], 0)])
    expect(far.words).toEqual(['at 0°'])
    expect(far.dots).toHaveLength(1)
    const [ring] = far.dots
    expect(ring?.mark === 'dot' && ring.at[1] - ring.radius).toBeGreaterThanOrEqual(0)
    expect(rings([fail([0, 60, 0], 0), fail([0, 72, 0], 0)]).words).toEqual(['at 0°'])
    expect(rings([fail([0, 60, 0], 0), fail([0, 60, 0], 40)]).words).toEqual(['at 0°', 'at 40°'])
  })
})

describe('what is drawn on the paper of the whole garden', () => {
  const garden = parseDesign(
    JSON.parse(readFileSync(new URL('../../content/dummies/garden.hingebook.json', import.meta.url), 'utf8')),
  )
  const poser = compile(garden)
  const { panels } = poser.model

  it('lies within a pixel of where the lens puts each of its points, and is hardly ever drawn anew', () => {
    let shapesOn = 0
    let anew = 0
    for (const opening of [60, 90, 113, 140]) {
      const drawn = view(poser, opening, { turn: -15, tilt: 38 }, { width: 560, height: 350 })
      poser(opening)
      for (const { of, on = [] } of facetsOf(drawn.marks))
        for (const art of on) {
          if (art.mark !== 'art') continue
          const panel = panels.findIndex(({ name }) => name === of)
          if (panel < 0) continue
          art.shapes.forEach(({ runs }, k) => {
            const matrix = art.matrix ?? art.own?.[k]
            shapesOn++
            if (!matrix) {
              anew++
              return
            }
            const [a, b, c, d, e, f] = matrix
            for (const [x, y] of runs.flat()) {
              const [u, v] = drawn.toScreen(poser.lift(panel, [x, y]))
              expect(Math.hypot(a * x + c * y + e - u, b * x + d * y + f - v)).toBeLessThan(1)
            }
          })
        }
    }
    expect(shapesOn).toBeGreaterThan(1000)
    // The sky and the hills on the pages, too large for a matrix.
    expect(anew / shapesOn).toBeLessThan(0.05)
  })
})

describe('a card that somebody else paints', () => {
  it('is all of the picture but what lies over it, which is drawn where it would be without', () => {
    fc.assert(
      fc.property(designs(), openings, cameras, fc.boolean(), (one, opening, camera, moving) => {
        const options = { handle: true, rise: one.mechanisms.map(({ id }) => id), moving }
        const whole = view(one, opening, camera, size, options)
        const over = view(one, opening, camera, size, { ...options, over: true })
        expect(whole.marks.slice(0, whole.card)).toEqual(cardMarks(one, opening, camera, size, options))
        expect(over.marks).toEqual(whole.marks.slice(whole.card))
        expect(over.card).toBe(0)
        // Every surface is on one side of the line, every word and every handle on the other.
        expect(over.marks.some((mark) => mark.role === 'facet' || mark.role === 'shadow')).toBe(false)
        expect(whole.marks.slice(0, whole.card).every(({ mark }) => mark === 'path')).toBe(true)
      }),
      { numRuns: 60 },
    )
  })
})
