// What the tests need to know of each kind: one entry a kind, from which all tests over kinds draw.
import type { Flat, Mechanism } from '../../../src/paper/index.ts'
import { kinds } from '../../../src/paper/index.ts'
import { RAD } from './space.ts'

export type KindName = Mechanism['kind']

type Of<K extends KindName> = Extract<Mechanism, { kind: K }>

/** Where a mechanism is to sit: a crease or panel, and how long that is, mm. */
export interface Seat {
  readonly name: string
  readonly length: number
}

/** One mechanism to be, in fractions of what it will sit on. */
export interface Plan {
  readonly from: number
  readonly span: number
  /** Sizes of its right and left side. */
  readonly right: readonly [number, number]
  readonly left: readonly [number, number]
  readonly toward: 1 | -1
  readonly side: 'inside' | 'outside'
  readonly pop: 'up' | 'down'
  /** How its sides match: alike, unlike but shutting flat, or as they come. */
  readonly match: 'alike' | 'shuts' | 'any'
  readonly tab: number
  readonly outline: readonly (readonly [number, number])[]
}

/** What a plan comes to on its seat, mm. */
export interface Drawn {
  readonly plan: Plan
  readonly start: number
  readonly end: number
  /** How deep it may go. */
  readonly deep: number
  /** Rounded to what somebody would write. */
  readonly grid: (x: number) => number
  /** A length for a fraction of the depth, at least a millimetre. */
  readonly length: (part: number) => number
}

/** One mechanism to be between two places of its host crease; depths and lean in fractions of what there is. */
export interface Sketch {
  readonly start: number
  readonly end: number
  readonly deep: number
  readonly back: boolean
  readonly left: number
  readonly right: number
  readonly lean: number
  readonly outline: readonly (readonly [number, number])[]
  /** What no pair of scissors would do is wanted too. */
  readonly poor: boolean
  /** Steepest wedge angle, degrees. */
  readonly steepest: number
}

/** One mechanism in a row of others that could be cut, mm. */
export interface Sprout {
  readonly start: number
  readonly end: number
  readonly deep: number
  readonly other: number
  readonly back: boolean
  readonly lean: number
}

type Fields<K extends KindName> = Omit<Of<K>, 'id' | 'on' | 'kind'>

/** What the tests know of one kind. Only the first three are asked of every kind. */
export interface Entry<K extends KindName> {
  /** A random one, in any state that a file may hold. */
  grow(drawn: Drawn): Fields<K>
  /** Left for right. */
  mirrored(m: Of<K>): Of<K>
  /** Farther along its host crease; of a kind that sits on a panel: along the crease that this one hangs on. */
  moved(m: Of<K>, by: number): Of<K>
  /** Its numbers that are no lengths: they stay when all is drawn larger. */
  readonly angles?: readonly string[]
  /** Counted from the other end of its host crease, left for right. `turned`: its own creases then start there too. */
  readonly otherEnd?: {
    count(m: Of<K>, turn: (along: number) => number): Of<K>
    readonly turned: boolean
  }
  /** One that shuts flat and opens flat, for tests that want plain ones; and one that can be cut beside others. */
  sketch?(sketch: Sketch): Fields<K>
  sprout?(sprout: Sprout): Fields<K>
  /** Whether the second kernel that knows only lengths (`tests/sources/lengths.ts`) can build it. */
  readonly byLengths?: boolean
}

/** Can some opening be found, 1 to 179 degrees, at which page, facet, facet and page close? Plain triangle inequality. */
function movesAtAll(b1: number, a1: number, b2: number, a2: number, spherical: boolean): boolean {
  const rad = Math.PI / 180
  for (let opening = 1; opening < 180; opening += 2) {
    const w = opening * rad
    const g = spherical
      ? Math.acos(
          Math.cos(b1 * rad) * Math.cos(b2 * rad) + Math.sin(b1 * rad) * Math.sin(b2 * rad) * Math.cos(w),
        ) / rad
      : Math.sqrt(b1 * b1 + b2 * b2 - 2 * b1 * b2 * Math.cos(w))
    if (g > Math.abs(a1 - a2) && g < a1 + a2 && (!spherical || g + a1 + a2 < 360)) return true
  }
  return false
}

/** What lies left of a side that is to shut flat against the same part of its page as the right one. */
const matching = (plan: Plan, base: number, facet: number, other: number): number =>
  (plan.pop === 'up') === (plan.side === 'inside') ? base + facet - other : facet - base + other

/** The two sides of a four-bar within [least, most], by the plan's wish; alike where the wish cannot be had. */
function sidesOf(plan: Plan, spherical: boolean, size: (t: number, of: 'base' | 'facet') => number) {
  const right = { base: size(plan.right[0], 'base'), facet: size(plan.right[1], 'facet') }
  const base = size(plan.left[0], 'base')
  const facet =
    plan.match === 'shuts' ? matching(plan, right.base, right.facet, base) : size(plan.left[1], 'facet')
  const fine = facet >= 4 && (!spherical || facet <= 150)
  if (plan.match === 'alike' || !fine || !movesAtAll(right.base, right.facet, base, facet, spherical))
    return { right, left: { ...right } }
  return { right, left: { base, facet } }
}

/** The state of a sketch, and whether it shuts on the outer side. */
const stateOf = ({ back, lean }: Sketch) => {
  const state = { side: back ? 'outside' : 'inside', pop: lean < 0.5 ? 'up' : 'down' } as const
  return { state, outer: (state.pop === 'up') !== (state.side === 'outside') }
}

const shiftedAlong = <M extends { readonly start: number; readonly end: number }>(m: M, by: number): M => ({
  ...m,
  start: m.start + by,
  end: m.end + by,
})

const entries: { readonly [K in KindName]: Entry<K> } = {
  'cut-v-fold': {
    grow: ({ plan, start, end, grid }) => {
      const run = plan.toward * (end - start)
      return {
        apex: plan.toward > 0 ? start : end,
        run,
        cut: Math.max(0.5, grid((end - start) * 1.5 * plan.right[0])),
        lean: grid(run * (plan.left[0] - 0.5)),
      }
    },
    mirrored: (m) => m,
    moved: (m, by) => ({
      ...m,
      apex: m.apex + by,
      ...(m.outline ? { outline: m.outline.map(([a, b]): Flat => [a, b + by]) } : {}),
    }),
    otherEnd: {
      count: (m, turn) => ({
        ...m,
        apex: turn(m.apex),
        run: -m.run,
        lean: -(m.lean ?? 0),
        ...(m.outline ? { outline: m.outline.map(([a, b]): Flat => [a, turn(b)]) } : {}),
      }),
      // They start at its apex.
      turned: false,
    },
    sketch: ({ start, end, back, left, lean: shift, outline: points, poor, steepest }) => {
      const apex = back ? end : start
      const run = (back ? -1 : 1) * (end - start)
      const lean = poor ? run * (shift * 2 - 1) : run * (shift - 0.5)
      const outward = Math.abs(run + lean)
      const least = poor ? 0 : 8
      const cut = Math.min(2000, outward * Math.tan((least + left * (steepest - 8)) * RAD))
      // A blade goes outward and stays on its side of the fold line: other cuts would cross themselves or the fold.
      const outline = points
        .map(([a, b]): Flat => [a * cut, apex + run + lean * a + run * (b - 0.5) * (1 - a)])
        .sort(([a], [b]) => a - b)
      return { apex, run, cut, lean, ...(outline.length > 0 ? { outline } : {}) }
    },
    sprout: ({ start, end, deep, back, lean }) =>
      back
        ? { apex: end, run: start - end, cut: deep, lean }
        : { apex: start, run: end - start, cut: deep, lean },
    byLengths: true,
  },
  'cut-layer': {
    grow: ({ plan, start, end, length }) => ({
      start,
      end,
      left: length(plan.left[0]),
      right: length(plan.right[0]),
    }),
    mirrored: (m) => ({ ...m, left: m.right ?? m.left ?? 0, right: m.left ?? m.right ?? 0 }),
    moved: shiftedAlong,
    otherEnd: { count: (m, turn) => ({ ...m, start: turn(m.end), end: turn(m.start) }), turned: true },
    sketch: ({ start, end, deep, left, right }) => ({ start, end, left: deep * left, right: deep * right }),
    sprout: ({ start, end, deep, other, back }) => ({ start, end, left: deep, right: back ? deep : other }),
    byLengths: true,
  },
  'cut-trapezoid': {
    grow: ({ plan, start, end, length }) => ({
      start,
      end,
      startCut: length(plan.left[0]),
      endCut: length(plan.right[0]),
    }),
    mirrored: (m) => m,
    moved: shiftedAlong,
    otherEnd: {
      count: (m, turn) => ({
        ...m,
        start: turn(m.end),
        end: turn(m.start),
        startCut: m.endCut,
        endCut: m.startCut,
      }),
      turned: true,
    },
    sketch: ({ start, end, deep, left, right }) => ({
      start,
      end,
      startCut: deep * left,
      endCut: deep * right,
    }),
    sprout: ({ start, end, deep, other }) => ({ start, end, startCut: deep, endCut: other }),
    byLengths: true,
  },
  'glued-v-fold': {
    grow: ({ plan, start, deep, grid, length }) => {
      const { right, left } = sidesOf(plan, true, (t, of) => grid(of === 'base' ? 8 + 90 * t : 10 + 90 * t))
      const ridge = length(plan.left[1])
      const outline = plan.outline.map(([a, b]): Flat => [grid(deep * a), grid(ridge * b)])
      return {
        apex: start,
        toward: plan.toward,
        right,
        left,
        foot: length(plan.right[1]),
        ridge,
        side: plan.side,
        pop: plan.pop,
        tab: plan.tab,
        ...(outline.length > 0 ? { outline } : {}),
      }
    },
    mirrored: (m) => ({ ...m, left: m.right, right: m.left }),
    moved: (m, by) => ({ ...m, apex: m.apex + by }),
    angles: ['base', 'facet', 'toward'],
    sketch: (sketch) => {
      const { state, outer } = stateOf(sketch)
      const [base, other] = [15 + 50 * sketch.left, 15 + 50 * sketch.right]
      const facet = 80
      return {
        apex: sketch.start,
        toward: 1,
        foot: sketch.end - sketch.start,
        ridge: sketch.end - sketch.start,
        right: { base, facet },
        left: { base: other, facet: outer ? base + facet - other : facet - base + other },
        ...state,
      }
    },
    byLengths: true,
  },
  'glued-tent': {
    grow: ({ plan, start, end, deep, grid }) => {
      const { right, left } = sidesOf(plan, false, (t) => Math.max(4, grid(deep * t)))
      return {
        start,
        end,
        rightFoot: right.base,
        leftFoot: left.base,
        rightWall: right.facet,
        leftWall: left.facet,
        side: plan.side,
        pop: plan.pop,
        tab: plan.tab,
      }
    },
    mirrored: (m) => ({
      ...m,
      leftFoot: m.rightFoot,
      rightFoot: m.leftFoot,
      leftWall: m.rightWall,
      rightWall: m.leftWall,
    }),
    moved: shiftedAlong,
    sketch: (sketch) => {
      const { state, outer } = stateOf(sketch)
      const [rightFoot, leftFoot] = [sketch.deep * sketch.left, sketch.deep * sketch.right]
      const rightWall = 2 * (rightFoot + leftFoot)
      const leftWall = outer ? rightFoot + rightWall - leftFoot : rightWall - rightFoot + leftFoot
      return { start: sketch.start, end: sketch.end, rightFoot, leftFoot, rightWall, leftWall, ...state }
    },
    byLengths: true,
  },
  'floating-layer': {
    grow: ({ plan, start, end, grid, length }) => {
      const [right, left] = [length(plan.right[0]), length(plan.left[0])]
      return {
        start,
        end,
        height: length(plan.right[1]),
        left,
        right,
        walls: [-left, 0, grid(right * plan.left[1])],
        tab: plan.tab,
      }
    },
    mirrored: (m) => ({ ...m, left: m.right, right: m.left, walls: m.walls.map((across) => -across) }),
    moved: shiftedAlong,
    byLengths: true,
  },
  rider: {
    grow: ({ plan, start, grid, length }) => {
      const [a, l] = [length(plan.right[0]), start]
      const size = length(plan.left[0])
      return {
        shape: [
          [a, l],
          [a + size, l - size],
          [a + 2 * size, l],
          [a + size, l + size],
        ],
        glue: [
          [a, l],
          [a + size, l],
          [a + size, l + size / 2],
        ],
        turn: grid(180 * (plan.left[1] - 0.5)),
      }
    },
    mirrored: (m) => m,
    moved: (m, by) => ({ ...m, along: (m.along ?? 0) + by }),
    angles: ['turn'],
    byLengths: true,
  },
}

/** Every kind, as the registry has them. */
export const allKinds: readonly KindName[] = kinds.map(({ kind }) => kind as KindName)

/** An entry that takes any mechanism: callers hand each only its own. */
type AnyEntry = { [Key in keyof Entry<KindName>]: Entry<never>[Key] } & {
  grow(drawn: Drawn): object
  mirrored(m: Mechanism): Mechanism
  moved(m: Mechanism, by: number): Mechanism
  readonly otherEnd?: {
    count(m: Mechanism, turn: (along: number) => number): Mechanism
    readonly turned: boolean
  }
  sketch?(sketch: Sketch): object
  sprout?(sprout: Sprout): object
}

/** What the tests know of a kind. Throws if its entry above is missing. */
export function entryOf(kind: KindName): AnyEntry {
  const entry = entries[kind] as unknown as AnyEntry | undefined
  if (!entry) throw new Error(`tests/paper/shared/kinds.ts has no entry for ${kind}`)
  return entry
}

/** The kinds whose entry has something that not all have. */
export const kindsWith = (what: 'sketch' | 'sprout' | 'byLengths'): readonly KindName[] =>
  allKinds.filter((kind) => entryOf(kind)[what])
