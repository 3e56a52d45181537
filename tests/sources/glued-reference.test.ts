// Every kind against a second kernel that knows only lengths, and against a least-squares solver.
import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { describe, expect, test } from 'vitest'
import type { Design, ModelCrease, Poser, Side, Vec3 } from '../../src/paper/index.ts'
import { compile, modelOf } from '../../src/paper/index.ts'
import { laid } from '../../src/paper/plane/lay.ts'
import { design, runs } from '../paper/shared/designs.ts'
import { gluedDesigns } from '../paper/shared/glued-designs.ts'
import { kindsWith } from '../paper/shared/kinds.ts'
import { apart, crossOf, DEG, dotOf, minus, sizeOf } from '../paper/shared/space.ts'
import type { Digits } from './lengths.ts'
import { floats, fromLengths, sixtyDigits } from './lengths.ts'

/** What the second kernel can build. */
const known = kindsWith('byLengths')

/** Two methods agree to this, mm. */
const AGREED = 1e-6

/** What the paper itself keeps, mm and degrees. */
const EXACT = 1e-9

const bothSides: readonly Side[] = ['left', 'right']

/** A mechanism and all it sits on, by index. */
function lineage(poser: Poser, owner: number): number[] {
  const build = poser.model.builds[owner]
  if (!build) return []
  const { host, hostPanel } = build
  const under =
    hostPanel === undefined ? poser.model.creases[host]?.owner : poser.model.panels[hostPanel]?.owner
  return [owner, ...lineage(poser, under ?? -1)]
}

/** True if a mechanism and all it sits on can be where the card is. */
const free = (poser: Poser, owner: number, stopped: readonly string[]): boolean =>
  lineage(poser, owner).every((k) => !stopped.includes(poser.model.builds[k]?.mechanism.id ?? ''))

interface Compared {
  /** The largest distance between the kernel's corners and the reference's, mm. */
  off: number
  /** Panels compared, and panels that were left out because the reference could not tell. */
  panels: number
  blurred: number
  /** Stops on which the two do not agree. */
  quarrels: string[]
}

function compare<T>(
  digits: Digits<T>,
  made: Design,
  poser: Poser,
  opening: number,
  at: { open: number } | { missing: number },
): Compared {
  const reference = fromLengths(digits, made, at)
  const pose = poser(opening)
  const { panels, builds, creases } = poser.model
  const found: Compared = { off: 0, panels: 0, blurred: 0, quarrels: [] }
  const idOf = (owner: number): string => builds[owner]?.mechanism.id ?? ''
  builds.forEach((_, owner) => {
    // A mechanism on a missing one is missing without a verdict of its own.
    const under = lineage(poser, owner).slice(1)
    if (under.some((k) => reference.missing.has(idOf(k)))) return
    const [refused, stopped] = [reference.refused.has(idOf(owner)), pose.stopped.includes(idOf(owner))]
    const blurred = reference.missing.has(idOf(owner)) && !refused
    if (!blurred && refused !== stopped) found.quarrels.push(`${idOf(owner)} at ${opening}`)
  })
  for (const panel of panels) {
    if (panel.owner >= 0 && reference.missing.has(idOf(panel.owner))) {
      found.blurred++
      continue
    }
    found.panels++
    pose.panels[panel.name]?.forEach((p, k) => {
      const q = reference.lift(panel.name, panel.outline[k] ?? [0, 0])
      // NaN counts as far away.
      const off = q ? apart(p, q) : Number.NaN
      if (!(off <= found.off)) found.off = Number.isNaN(off) ? Number.POSITIVE_INFINITY : off
    })
  }
  for (const crease of creases) {
    const record = pose.creases[crease.name]
    const hung = reference.crease(crease.name)
    if (!record || !hung) continue
    for (const { origin, run } of hung) {
      const end = [0, 1, 2].map((k) => (origin[k] as number) + crease.length * (run[k] as number)) as Vec3
      found.off = Math.max(found.off, apart(record.start, origin), apart(record.end, end))
    }
  }
  return found
}

/** The largest difference between a distance in space and the same one on the flat panel, mm. */
function stretchOf(poser: Poser, opening: number): number {
  const pose = poser(opening)
  let most = 0
  for (const { name, outline } of poser.model.panels) {
    const points = pose.panels[name] as Vec3[]
    outline.forEach((a, i) => {
      for (let j = 0; j < i; j++) {
        const b = outline[j] ?? [0, 0]
        const long = Math.hypot(a[0] - b[0], a[1] - b[1])
        const off = Math.abs(apart(points[i] as Vec3, points[j] as Vec3) - long)
        if (!(off <= most)) most = Number.isNaN(off) ? Number.POSITIVE_INFINITY : off
      }
    })
  }
  return most
}

/** How far a crease's line, its left panel and its right one are apart, and how far its angle is off; mm, degrees. */
function partedOf(poser: Poser, opening: number): { line: number; angle: number } {
  const pose = poser(opening)
  const worst = { line: 0, angle: 0 }
  const lift = (crease: ModelCrease, side: Side, across: number, along: number) =>
    poser.lift(crease[side].panel, laid(crease[side].lay, [across, along]))
  poser.model.creases.forEach((crease, index) => {
    if (crease.owner >= 0 && !free(poser, crease.owner, pose.stopped)) return
    const frame = poser.frames[index] as Float64Array
    const starts = bothSides.map((side) => lift(crease, side, 0, 0)) as [Vec3, Vec3]
    const ends = bothSides.map((side) => lift(crease, side, 0, crease.length)) as [Vec3, Vec3]
    const start: Vec3 = [frame[0] as number, frame[1] as number, frame[2] as number]
    worst.line = Math.max(worst.line, apart(...starts), apart(...ends), ...starts.map((p) => apart(p, start)))
    const [left, right] = bothSides.map((side, k) => minus(lift(crease, side, 1, 0), starts[k] as Vec3)) as [
      Vec3,
      Vec3,
    ]
    const between = DEG * Math.atan2(sizeOf(crossOf(left, right)), dotOf(left, right))
    const told =
      pose.creases[crease.name]?.angle ?? 2 * DEG * Math.atan2(frame[12] as number, frame[13] as number)
    worst.angle = Math.max(worst.angle, Math.abs(Math.abs(told) - between))
  })
  return worst
}

describe('2,000 random designs of up to twelve mechanisms of every kind', () => {
  const totals = { panels: 0, blurred: 0, kinds: new Map<string, number>() }
  const fixed = [3, 35, 90, 120, 177]

  test('stand where spheres of the right sizes meet, within a millionth of a millimetre', () => {
    fc.assert(
      fc.property(
        gluedDesigns({ kinds: known }),
        fc.double({ min: 1, max: 179, noNaN: true }),
        (made, any) => {
          const poser = compile(made)
          for (const opening of [...fixed, any]) {
            const { off, panels, blurred, quarrels } = compare(floats, made, poser, opening, {
              open: opening,
            })
            totals.panels += panels
            totals.blurred += blurred
            expect(quarrels).toEqual([])
            expect(off).toBeLessThan(AGREED)
          }
          for (const { kind } of made.mechanisms) totals.kinds.set(kind, (totals.kinds.get(kind) ?? 0) + 1)
        },
      ),
      runs(2000),
    )
  })

  test('and that was no empty promise: most panels were compared, and hundreds of every kind', () => {
    expect(totals.panels).toBeGreaterThan(3 * totals.blurred)
    expect(totals.kinds.size).toBe(known.length)
    expect(Math.min(...totals.kinds.values())).toBeGreaterThan(300)
  })

  test('keep their lengths, stay joined along every crease, and tell the angle between its panels', () => {
    fc.assert(
      fc.property(gluedDesigns(), fc.double({ min: 0, max: 180, noNaN: true }), (made, any) => {
        const poser = compile(made)
        for (const opening of [0, any, 180]) {
          expect(stretchOf(poser, opening)).toBeLessThan(EXACT)
          const { line, angle } = partedOf(poser, opening)
          expect(line).toBeLessThan(EXACT)
          expect(angle).toBeLessThan(1e-8)
        }
      }),
      runs(2000),
    )
  })
})

describe('where floats blur, the spheres meet in sixty digits', () => {
  const exact = { eighths: true, most: 6, depth: 4, kinds: known } as const

  test('shut, a hair open, a hair short of flat, and flat', () => {
    let panels = 0
    fc.assert(
      fc.property(gluedDesigns(exact), (made) => {
        const poser = compile(made)
        const places = [
          // Shut and flat are the limits of almost shut and almost flat.
          { opening: 0, at: { open: 1e-24 } },
          { opening: 1e-9, at: { open: 1e-9 } },
          { opening: 1e-3, at: { open: 1e-3 } },
          { opening: 180 - 2 ** -30, at: { missing: 2 ** -30 } },
          { opening: 180, at: { missing: 1e-24 } },
        ]
        for (const { opening, at } of places) {
          const found = compare(sixtyDigits, made, poser, opening, at)
          panels += found.panels
          expect(found.quarrels).toEqual([])
          expect(found.off).toBeLessThan(AGREED)
        }
      }),
      runs(60),
    )
    expect(panels).toBeGreaterThan(300)
  })

  test('a billionth and a thousandth of a degree short of every stop', () => {
    let stops = 0
    fc.assert(
      fc.property(
        gluedDesigns({ ...exact, most: 2, kinds: ['glued-v-fold', 'glued-tent'], match: ['any', 'alike'] }),
        (made) => {
          const poser = compile(made)
          for (const { build, host } of modelOf(made).builds) {
            const [least, most] = build.range ?? [0, 180]
            if (host !== 0 || least >= most) continue
            for (const short of [1e-9, 1e-3, 1])
              for (const opening of [least + short, most - short]) {
                if (opening <= least || opening >= most) continue
                stops++
                const found = compare(sixtyDigits, made, poser, opening, { open: opening })
                expect(found.off).toBeLessThan(AGREED)
              }
          }
        },
      ),
      runs(60),
    )
    expect(stops).toBeGreaterThan(100)
  })
})

/** The point of least squares of three lengths from three places, from a start; ml-levenberg-marquardt (MIT). */
function solved(centres: readonly Vec3[], lengths: readonly number[], start: Vec3): Vec3 {
  const { parameterValues } = levenbergMarquardt(
    { x: [0, 1, 2], y: [...lengths] },
    (p) => {
      const far = centres.map((c) => apart(c, p as Vec3))
      return (k) => far[k] as number
    },
    {
      initialValues: [...start],
      centralDifference: true,
      gradientDifference: 1e-4,
      improvementThreshold: 1e-16,
      errorTolerance: 1e-22,
      maxIterations: 60,
    },
  )
  return parameterValues as Vec3
}

/** How far three lengths from a tip are from lying in one plane, 0 to 1. */
function roomOf({ tip, centres }: { tip: Vec3; centres: readonly Vec3[] }): number {
  const [a, b, c] = centres.map((p) => minus(p, tip)) as [Vec3, Vec3, Vec3]
  return Math.abs(dotOf(crossOf(a, b), c)) / (sizeOf(a) * sizeOf(b) * sizeOf(c))
}

describe('a general solver that only knows three lengths', () => {
  test('started from the neighbouring pose, one degree away, finds every glued ridge where it is', () => {
    let solvedOnes = 0
    fc.assert(
      fc.property(
        gluedDesigns({ most: 5, kinds: ['glued-v-fold', 'glued-tent'], match: ['alike', 'shuts', 'any'] }),
        fc.double({ min: 25, max: 150, noNaN: true }),
        (made, opening) => {
          const poser = compile(made)
          const { builds, creases } = poser.model
          /** Three places on the host, how far the ridge's tip is from them on flat card, and where the tip is. */
          const corner = (owner: number) => {
            const { mechanism: m, firstCrease } = builds[owner] as (typeof builds)[number]
            const [ridge, left, right] = [0, 1, 2].map((k) => creases[firstCrease + k] as ModelCrease) as [
              ModelCrease,
              ModelCrease,
              ModelCrease,
            ]
            const page = (crease: ModelCrease, side: Side, along: number): Vec3 =>
              poser.lift(crease[side].panel, laid(crease[side].lay, [0, along]))
            const tip = poser.lift(ridge.right.panel, [0, 100])
            if (m.kind === 'glued-v-fold') {
              const chord = (facet: number) => 200 * Math.sin((facet * Math.PI) / 360)
              return {
                tip,
                centres: [page(right, 'right', 0), page(right, 'right', 100), page(left, 'left', 100)],
                lengths: [100, chord(m.right.facet), chord(m.left.facet)],
              }
            }
            if (m.kind !== 'glued-tent') throw new RangeError(m.kind)
            return {
              tip,
              centres: [page(right, 'right', 0), page(right, 'right', 200), page(left, 'left', 100)],
              lengths: [Math.hypot(100, m.rightWall), Math.hypot(100, m.rightWall), m.leftWall],
            }
          }
          builds.forEach((_, owner) => {
            const then = poser(opening - 1).stopped
            if (!free(poser, owner, then)) return
            const before = corner(owner)
            const start = before.tip
            const now = poser(opening).stopped
            if (!free(poser, owner, now)) return
            const { tip, centres, lengths } = corner(owner)
            // Where the three lengths all but lie in one plane the solver sees one point for two.
            if (Math.min(roomOf(before), roomOf({ tip, centres })) < 0.02) return
            solvedOnes++
            expect(apart(tip, solved(centres, lengths, start))).toBeLessThan(AGREED)
          })
        },
      ),
      runs(150),
    )
    expect(solvedOnes).toBeGreaterThan(150)
  })
})

describe('which of the two states', () => {
  /** Both points at three distances from three places: the plain formula of three spheres. */
  const V = (b1: number, a1: number, b2: number, a2: number, opening: number): [Vec3, Vec3] | null => {
    const rad = Math.PI / 180
    const [s, c] = [Math.sin((opening * rad) / 2), Math.cos((opening * rad) / 2)]
    const g1: Vec3 = [Math.sin(b1 * rad) * s, Math.cos(b1 * rad), Math.sin(b1 * rad) * c]
    const g2: Vec3 = [-Math.sin(b2 * rad) * s, Math.cos(b2 * rad), Math.sin(b2 * rad) * c]
    const n = crossOf(g1, g2)
    const k = dotOf(g1, g2)
    const [p, q] = [Math.cos(a1 * rad), Math.cos(a2 * rad)]
    const m = 1 - k * k
    const [x, y] = [(p - q * k) / m, (q - p * k) / m]
    const h2 = (1 - (x * p + y * q)) / m
    if (!(h2 > 1e-4)) return null
    const at = (h: number) =>
      [0, 1, 2].map((i) => x * (g1[i] as number) + y * (g2[i] as number) + h * (n[i] as number)) as Vec3
    return [at(Math.sqrt(h2)), at(-Math.sqrt(h2))]
  }

  // The popped piece everybody knows, base 45, facet 60, card half open, is bent by small steps into any other
  // shape; the point nearest to the last one is taken each time.
  test('bent bit by bit from a shape that is known, the piece arrives where the kernel has it', () => {
    const inner = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    let walked = 0
    fc.assert(
      fc.property(
        fc.tuple(inner(15, 80), inner(20, 120), inner(15, 80), inner(20, 120), inner(15, 165)),
        fc.constantFrom('up', 'down'),
        (to, pop) => {
          const from = [45, 60, 45, 60, 90] as const
          let now: Vec3 = pop === 'up' ? [0, 0, 1] : [0, Math.cos(-0.339837), Math.sin(-0.339837)]
          const steps = 400
          for (let k = 0; k <= steps; k++) {
            const [b1, a1, b2, a2, w] = from.map((x, i) => x + ((to[i] as number) - x) * (k / steps)) as [
              number,
              number,
              number,
              number,
              number,
            ]
            const both = V(b1, a1, b2, a2, w)
            // The way there leads through a shape that does not close: no way for a finger either.
            if (!both) return
            const [p, q] = both.map((r) => apart(r, now)) as [number, number]
            now = p < q ? both[0] : both[1]
          }
          walked++
          const [b1, a1, b2, a2, w] = to
          const made = design(
            [
              {
                id: 'moth',
                kind: 'glued-v-fold',
                on: 'gutter',
                apex: 0,
                toward: 1,
                foot: 50,
                ridge: 1,
                right: { base: b1, facet: a1 },
                left: { base: b2, facet: a2 },
                pop,
              },
            ],
            { width: 200, height: 300 },
          )
          expect(apart(compile(made)(w).creases['moth/ridge']?.end ?? [9, 9, 9], now)).toBeLessThan(1e-9)
        },
      ),
      runs(300),
    )
    expect(walked).toBeGreaterThan(60)
  })
})
