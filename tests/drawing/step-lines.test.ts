// What lines and frames of step figures may not mislead about: a solid line is a cut, glue is where glue is, a hand is where a hand is.
import { describe, expect, it } from 'vitest'
import { wordRect } from '../../src/drawing/pen/lettering.ts'
import type { Drawing, PathMark, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import { isDark, isDarkByNight } from '../../src/drawing/steps/ink.ts'
import { closing, glued } from '../../src/drawing/steps/scenes-glued.ts'
import type { StepOptions, StepState } from '../../src/drawing/steps/steps.ts'
import { stepFigure, taskOf } from '../../src/drawing/steps/steps.ts'
import type { Design } from '../../src/paper/index.ts'
import { stepPicture } from '../../src/site/step-picture.ts'
import { dummy } from '../sheet/designs.ts'
import { sourceOf } from '../site/chapters.ts'

const size = { width: 340, height: 250 }

const paths = ({ marks }: Drawing, role: string): readonly PathMark[] =>
  marks.filter((mark): mark is PathMark => mark.mark === 'path' && mark.role === role)

const drawn = (design: Design, state: StepState, options: StepOptions = {}): Drawing =>
  stepFigure(design, state, size, options)

const long = ([a, b]: readonly Point[]): number =>
  a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : Number.NaN

/** The corners of all paper of a panel's name, as a convex ring; by Andrew's monotone chain, 1979. */
function hull(figure: Drawing, name: string): readonly Point[] {
  const points = paths(figure, 'facet')
    .filter(({ of }) => of === name)
    .flatMap(({ runs }) => runs.flat())
    .sort(([ax, ay], [bx, by]) => ax - bx || ay - by)
  const chain = (list: readonly Point[]): Point[] => {
    const out: Point[] = []
    for (const p of list) {
      while (out.length > 1) {
        const [a, b] = out.slice(-2) as [Point, Point]
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        out.pop()
      }
      out.push(p)
    }
    return out.slice(0, -1)
  }
  return [...chain(points), ...chain([...points].reverse())]
}

/** How deep a point lies in a ring, px; below 0 outside. */
const depth = ([x, y]: Point, ring: readonly Point[]): number =>
  Math.min(
    ...ring.map(([ax, ay], k) => {
      const [bx, by] = ring[(k + 1) % ring.length] as Point
      return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay)
    }),
  )

const span = (points: readonly Point[], k: 0 | 1): number =>
  Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k]))

describe('lines in step figures', () => {
  it('are dashed where something is stuck, with short strokes: nothing there is solid but cuts', () => {
    const flat = drawn(dummy('owl'), 'flat')
    expect(paths(flat, 'place').length).toBe(4)
    for (const { runs } of paths(flat, 'glue')) expect(long(runs[0] ?? [])).toBeLessThan(12)
    expect(paths(flat, 'cut')).toEqual([])
    const body = drawn(dummy('owl'), 'piece', { of: ['body'] })
    // Two joints of the tail, and one of each wing.
    expect(paths(body, 'place').length).toBe(4)
    for (const { runs } of paths(body, 'glue')) expect(long(runs[0] ?? [])).toBeLessThan(20)
  })

  it('are dots where the other face is glued', () => {
    const owl = drawn(dummy('tree'), 'piece', { of: ['owl'] })
    expect(paths(owl, 'behind').length).toBe(4)
    expect(paths(owl, 'glue')).toEqual([])
    const tree = drawn(dummy('tree'), 'piece', { of: ['tree'] })
    expect(paths(tree, 'behind').length).toBe(8)
    // The owl's place alone is on the front.
    for (const { of } of paths(tree, 'glue')) expect(of).toBe('owl')
  })

  it('are pale on dark paper and dark on light, whatever it is cut from', () => {
    const [ridge] = paths(drawn(dummy('owl'), 'piece', { of: ['left-wing'] }), 'mountain')
    expect(ridge?.paint).toMatchObject({ card: 0, face: 'front' })
    const [lily] = paths(drawn(dummy('lilies'), 'piece', { of: ['near-lily'] }), 'mountain')
    expect(lily?.paint?.card).toBeGreaterThan(0)
    const paint = { card: 1, light: 1, face: 'front' } as const
    expect(isDark({ ...paint, paper: '#767676' })).toBe(false)
    expect(isDark({ ...paint, paper: '#757575' })).toBe(true)
    expect(isDark({ ...paint, paper: '#000000', face: 'back' })).toBe(false)
  })

  it('are pale by night alone where paper is light by day and dark then', () => {
    const inked = (name: string, id: string) =>
      paths(drawn(dummy(name), 'piece', { of: [id] }), 'mountain')[0]?.paint
    // Card 6 is the style sheet's name for it; a pen without one draws it dark.
    expect(inked('lilies', 'near-lily')).toMatchObject({ card: 6, paper: '#dd8f8c' })
    expect(inked('owl', 'body')).toMatchObject({ card: 6, paper: '#b0763f' })
    expect(inked('hedgehog', 'head')?.card).toBeLessThan(5)
    const paint = { card: 1, light: 1, face: 'front' } as const
    expect(isDarkByNight({ ...paint, paper: '#fbf6e8' })).toBe(false)
    expect(isDarkByNight({ ...paint, paper: '#fbf6e8', light: 0, sky: 0 })).toBe(true)
    expect(isDarkByNight({ ...paint, paper: '#fbf6e8', light: 0, sky: 0, face: 'back' })).toBe(false)
  })

  it('of the gutter lie on no edge, which would fill the gaps of its dashes', () => {
    for (const name of ['card', 'beak', 'layers', 'tree']) {
      const figure = drawn(dummy(name), 'flat')
      const ends = paths(figure, 'valley')
        .filter(({ of }) => of === 'gutter')
        .flatMap(({ runs }) => runs.flat())
      const [low, high] = [ends[0], ends.at(-1)]
      if (!low || !high) throw new Error('a gutter has two ends')
      const off = ([x, y]: Point): number =>
        Math.abs((high[0] - low[0]) * (y - low[1]) - (high[1] - low[1]) * (x - low[0])) / long([low, high])
      const edges = paths(figure, 'facet').flatMap(({ on = [] }) =>
        on.flatMap((mark) => (mark.mark === 'path' && mark.role === 'edge' ? mark.runs : [])),
      )
      expect(edges.length, name).toBeGreaterThan(0)
      for (const run of edges)
        for (const [k, p] of run.slice(1).entries())
          expect(Math.max(off(p), off(run[k] as Point)), name).toBeGreaterThan(1)
    }
  })

  it('strips that are cut from the card are tinted, neither as dark as it nor white, until they stand', () => {
    for (const [name, id] of [
      ['beak', 'beak'],
      ['scene', 'lantern'],
    ] as const)
      for (const state of ['cutting', 'creased', 'reversing'] as const) {
        const strips = paths(drawn(dummy(name), state, { of: [id] }), 'facet').filter(({ of }) =>
          of?.startsWith(`${id}/`),
        )
        expect(strips.length).toBeGreaterThan(0)
        for (const { paint } of strips) expect(paint?.paper).toBe('#a9bdd2')
      }
    const stands = paths(drawn(dummy('scene'), 'open'), 'facet').filter(({ of }) =>
      of?.startsWith('lantern/'),
    )
    for (const { paint } of stands) expect(paint?.paper).toBe('#1a1d33')
  })

  it('of the cuts that are made in this step have a rim, and their folds lie on the strips', () => {
    const cutting = drawn(dummy('tree'), 'cutting', { of: ['wall'] })
    const cuts = paths(cutting, 'cut')
    expect(cuts.length).toBe(2)
    for (const { runs, paint } of cuts) {
      expect(paint).toBeUndefined()
      expect(paths(cutting, 'halo').some((halo) => halo.runs === runs)).toBe(true)
    }
    expect(paths(drawn(dummy('tree'), 'flat'), 'halo')).toEqual([])
    const wall = hull(cutting, 'wall/right')
    const folds = paths(cutting, 'valley').filter(({ of }) => of?.startsWith('wall/'))
    expect(folds.length).toBeGreaterThan(0)
    for (const { runs } of folds) for (const p of runs.flat()) expect(depth(p, wall)).toBeGreaterThan(-0.1)
  })

  it('leave the rim of a cover out behind the holes of its card', () => {
    for (const name of ['layers', 'eyes', 'tree']) {
      const figure = drawn(dummy(name), 'covering')
      const pages = ['page/left', 'page/right'].map((page) => hull(figure, page))
      const rim = [...paths(figure, 'glue'), ...paths(figure, 'place')]
      expect(rim.length).toBeGreaterThan(20)
      for (const { runs } of rim)
        for (const page of pages) for (const p of runs.flat()) expect(depth(p, page), name).toBeLessThan(3)
    }
  })
})

describe('frames of step figures', () => {
  it('are filled by a piece that lies by itself', () => {
    for (const [name, id] of [
      ['moth', 'moth'],
      ['lilies', 'near-lily'],
    ] as const)
      for (const state of ['piece', 'folded'] as const) {
        const figure = drawn(dummy(name), state, { of: [id] })
        const all = [...paths(figure, 'facet'), ...paths(figure, 'hand')].flatMap(({ runs }) => runs.flat())
        expect(Math.max(span(all, 0) / size.width, span(all, 1) / size.height)).toBeGreaterThan(0.6)
      }
  })

  it('come close to small cuts where that is asked for', () => {
    const of = ['left-lid']
    const cuts = (near: boolean) =>
      paths(drawn(dummy('eyes'), 'cutting', { of, near }), 'cut').flatMap(({ runs }) => runs.flat())
    expect(span(cuts(true), 0)).toBeGreaterThan(3 * span(cuts(false), 0))
  })

  it('show where the half lay that is folded over: the arrow comes from there', () => {
    for (const [name, id] of [
      ['moth', 'moth'],
      ['house', 'house'],
      ['lamps', 'big'],
    ] as const) {
      const figure = drawn(dummy(name), 'folded', { of: [id] })
      const [ghost] = paths(figure, 'ghost')
      const [hand] = paths(figure, 'hand')
      const from = hand?.runs[0]?.[0] as Point
      const near = (ghost?.runs[0] ?? []).map(([x, y]) => Math.hypot(x - from[0], y - from[1]))
      expect(Math.min(...near), name).toBeLessThan(12)
      // A curve, not a chain: no stretch of it is long.
      const [run] = hand?.runs ?? []
      for (const [k, p] of (run ?? []).slice(1).entries())
        expect(long([run?.[k] as Point, p]), name).toBeLessThan(14)
      // On the table beside what is folded, along the whole of its ridge.
      const paper = paths(figure, 'facet').flatMap(({ runs }) => runs.flat())
      const meets = (ghost?.runs[0] ?? []).filter(([x, y]) =>
        paper.some((p) => Math.hypot(x - p[0], y - p[1]) < 0.5),
      )
      expect(meets.length, name).toBeGreaterThanOrEqual(2)
    }
  })

  it('show the broader half of a lopsided piece behind the other', () => {
    const figure = drawn(dummy('lilies'), 'folded', { of: ['near-lily'] })
    const facets = paths(figure, 'facet')
    // Painted from back to front: each half is one panel.
    const names = [...new Set(facets.map(({ of }) => of ?? ''))]
    const [under, over] = names.map((name) => hull(figure, name))
    expect(names.length).toBe(2)
    expect(under?.some((p) => depth(p, over ?? []) < -10)).toBe(true)
  })

  it('are seen from the chapter’s own bench once the card is done, and from where a step says', () => {
    const chapter = {
      design: dummy('eyes'),
      config: { camera: { turn: -11, tilt: 12 }, stand: 'edge' },
    } as const
    const place = 'here'
    const open = stepPicture(chapter, { shows: 'open', at: 118, place })
    // What is cut out of it shows its cover, not the page on which it is drawn.
    expect(paths(open, 'facet')[0]?.of).toBe('cover/left')
    // Upright: the card is as high as it is wide, and its art faces the reader.
    const points = paths(open, 'facet').flatMap(({ runs }) => runs.flat())
    expect(span(points, 1)).toBeGreaterThan(0.8 * span(points, 0))
    // The picture may be moved for the shadow: its marks are the same.
    const marksOf = ({ marks }: { readonly marks: unknown }) => marks
    expect(marksOf(stepPicture(chapter, { shows: 'shut', place }))).toEqual(
      marksOf(drawn(chapter.design, 'shut')),
    )
    expect(marksOf(stepPicture(chapter, { shows: 'open', turn: 20, tilt: 30, place }))).toEqual(
      marksOf(drawn(chapter.design, 'open', { camera: { turn: 20, tilt: 30 }, covered: true })),
    )
    expect(() => stepPicture(chapter, { shows: 'open', turn: 20, place })).toThrow(/here <Step> .*both/)
    expect(() => stepPicture(chapter, { shows: 'open', only: 'nose', place })).toThrow(/"nose"/)
  })
})

describe('hands in step figures', () => {
  it('shut a card at its free edge, over the table', () => {
    for (const name of ['layers', 'eyes', 'lilies']) {
      const figure = drawn(dummy(name), 'shut')
      const [hand] = paths(figure, 'hand')
      const tip = hand?.runs[0]?.at(-1) as Point
      for (const page of ['page/left', 'page/right'])
        expect(depth(tip, hull(figure, page)), name).toBeLessThan(-2)
    }
  })

  it('push one strip on the gutter after the other: the first of them is pointed at', () => {
    const count = (of: readonly string[], role: string) =>
      paths(drawn(dummy('eyes'), 'reversing', { of }), role).length
    expect(count(['beak', 'jaw'], 'hand')).toBe(1)
    expect(count(['beak', 'jaw'], 'ghost')).toBe(count(['beak'], 'ghost'))
    expect(count(['left-eye', 'right-eye'], 'hand')).toBe(2)
  })

  it('rub a fold from its middle out, each arrow along it', () => {
    const figure = drawn(dummy('card'), 'pressed')
    const page = hull(figure, 'page/right')
    const arrows = paths(figure, 'hand').map(({ runs }) => runs[0] ?? [])
    expect(arrows.length).toBe(2)
    for (const points of arrows) for (const p of points) expect(depth(p, page)).toBeGreaterThan(0)
    const [[a, b] = [], [c, d] = []] = arrows as [readonly Point[], readonly Point[]]
    if (!a || !b || !c || !d) throw new Error('an arrow has two ends')
    expect((b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])).toBeLessThan(0)
    expect(Math.hypot(a[0] - c[0], a[1] - c[1])).toBeLessThan(Math.hypot(b[0] - d[0], b[1] - d[1]) / 4)
  })

  it('fold a card the other way: the gutter on top, the inside without', () => {
    const figure = drawn(dummy('card'), 'ridged')
    for (const { paint } of paths(figure, 'facet')) expect(paint?.face).toBe('front')
    const [left, right] = ['page/left', 'page/right'].map((name) => hull(figure, name))
    const both = (left ?? []).filter((p) => right?.some(([x, y]) => Math.hypot(x - p[0], y - p[1]) < 0.01))
    expect(both.length).toBe(2)
    // Of each page the gutter's end lies above the other end of the same edge.
    const top = Math.min(...[...(left ?? []), ...(right ?? [])].map(([, y]) => y))
    expect(both.some(([, y]) => y < top + 0.01)).toBe(true)
  })

  it('point from beside a small part to beside its place: the arrow hides neither', () => {
    for (const [name, id, there] of [
      ['lamps', 'moth', ['big', 'small']],
      ['scene', 'moon', ['lantern', 'reeds', 'heron']],
      ['tree', 'owl', ['wall', 'tree']],
    ] as const) {
      const figure = drawn(dummy(name), 'glued', { of: [id], there, opening: 120 })
      const [hand] = paths(figure, 'hand')
      const part = hull(figure, `${id}/face`)
      expect(part.length, name).toBeGreaterThan(2)
      for (const p of hand?.runs[0] ?? []) expect(depth(p, part), name).toBeLessThan(0)
    }
  })

  it('hold the heron where it does not come through the page, at the opening that its step has', () => {
    const source = sourceOf('a-scene')
    const at = Number(/only="heron" there="lantern reeds" at=\{(\d+)\}/.exec(source)?.[1])
    const task = taskOf(dummy('scene'), { of: ['heron'], there: ['lantern', 'reeds'], opening: at })
    // By hand: the left page leans out by half the opening, and its inside looks the other way.
    const half = (at * Math.PI) / 360
    const corners = glued(task)
      .paper.filter(({ panel }) => panel.startsWith('heron/'))
      .flatMap(({ points }) => points)
    expect(corners.length).toBeGreaterThan(2)
    for (const [x, , z] of corners) expect(x * Math.cos(half) + z * Math.sin(half)).toBeGreaterThan(1)
  })

  it('cut a guest with its fold pinched flat on its page, the other page out of the way', () => {
    for (const [of, page] of [
      ['left-eye', 'page/left'],
      ['right-eye', 'page/right'],
      ['left-lid', 'page/left'],
      ['right-lid', 'page/right'],
    ] as const) {
      const figure = drawn(dummy('eyes'), 'cutting', { of: [of] })
      const pages = new Set(paths(figure, 'facet').flatMap(({ of }) => (of?.startsWith('page/') ? [of] : [])))
      expect([...pages], of).toEqual([page])
      // The cut stands out, on one layer, and the blades come to it.
      expect(paths(figure, 'cut').length, of).toBeGreaterThan(0)
      expect(paths(figure, 'hand').length, of).toBe(1)
    }
  })

  it('glue strips over the back of the gutter, and none where something moves', () => {
    const figure = drawn(dummy('tree'), 'backing')
    const strips = paths(figure, 'facet').filter(({ of }) => of === 'gutter/strip')
    // One below the wall and one above, each over both pages.
    expect(strips.length).toBe(4)
    expect(
      paths(drawn(dummy('moth'), 'backing'), 'facet').filter(({ of }) => of === 'gutter/strip').length,
    ).toBe(2)
  })

  it('shut a card on tape that ends at the gutter: none comes out through it', () => {
    for (const [name, id] of [
      ['lilies', 'near-lily'],
      ['moth', 'moth'],
    ] as const) {
      const task = taskOf(dummy(name), { of: [id], there: [] })
      const { paper, opening } = closing(task)
      const half = (opening * Math.PI) / 360
      const tapes = paper.filter(({ tape }) => tape)
      expect(tapes.length, name).toBeGreaterThan(0)
      for (const [x, , z] of tapes.flatMap(({ points }) => points))
        expect(z * Math.cos(half) - x * Math.sin(half), name).toBeGreaterThan(1)
    }
  })

  it('are told what is tape by words beside it, on no part and no tape', () => {
    const figure = drawn(dummy('moth'), 'taping', { of: ['moth'], opening: 120 })
    const words = figure.marks.filter((mark): mark is WordMark => mark.mark === 'word')
    expect(words.length).toBe(2)
    const parts = paths(figure, 'facet').filter(({ of }) => !of?.startsWith('page/'))
    for (const word of words) {
      const [x, y, w, h] = wordRect(word)
      for (const { runs } of parts)
        for (const run of runs)
          for (const p of [0.1, 0.5, 0.9].map((u): Point => [x + u * w, y + h / 2]))
            expect(depth(p, run), word.text).toBeLessThan(0)
    }
  })

  it('tape the joint that the words speak of: the left one, shown through the piece where that hides it', () => {
    const tapes = (name: string, id: string) => {
      const figure = drawn(dummy(name), 'glued', { of: [id], there: [] })
      return {
        tape: paths(figure, 'facet')
          .filter(({ of }) => of?.endsWith('/tape'))
          .map(({ of }) => of),
        ghosts: paths(figure, 'ghost').length,
      }
    }
    expect(tapes('moth', 'moth')).toEqual({ tape: ['moth/left/tape'], ghosts: 0 })
    expect(tapes('lilies', 'near-lily').ghosts).toBe(1)
  })
})
