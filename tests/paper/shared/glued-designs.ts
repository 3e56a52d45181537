// Random designs of every kind, glued ones first: on any crease and panel, in every state, with sides that
// let the card shut flat and sides that do not.
import fc from 'fast-check'
import type { Design, Flat, Mechanism } from '../../../src/paper/index.ts'
import { kindOf, kinds, parseDesign } from '../../../src/paper/index.ts'

export type KindName = Mechanism['kind']

/** All seven kinds, as the registry has them. */
export const allKinds: readonly KindName[] = kinds.map(({ kind }) => kind as KindName)

/** One mechanism to be, in fractions of what it will sit on. */
interface Plan {
  /** Counted back from the newest crease, or panel. */
  readonly host: number
  readonly kind: KindName
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

export interface GluedWish {
  readonly most?: number
  readonly least?: number
  readonly depth?: number
  readonly kinds?: readonly KindName[]
  readonly match?: readonly Plan['match'][]
  readonly sides?: readonly Plan['side'][]
  readonly pops?: readonly Plan['pop'][]
  /** Every number a multiple of an eighth, so that sums are exact; else of a thousandth. */
  readonly eighths?: boolean
}

interface Place {
  readonly name: string
  readonly length: number
  readonly depth: number
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

function placed(id: string, at: Place, plan: Plan, eighths: boolean): Mechanism {
  // Nobody writes more than thousandths.
  const steps = eighths ? 8 : 1000
  const grid = (x: number): number => Math.round(x * steps) / steps
  const start = grid(at.length * plan.from)
  const end = Math.max(start + 1, grid(start + (at.length - start) * plan.span))
  const deep = Math.max(8, Math.min(80, at.length))
  const length = (t: number): number => Math.max(1, grid(deep * t))
  const common = { id, on: at.name }
  switch (plan.kind) {
    case 'cut-v-fold': {
      const run = plan.toward * (end - start)
      return {
        ...common,
        kind: plan.kind,
        apex: plan.toward > 0 ? start : end,
        run,
        cut: Math.max(0.5, grid((end - start) * 1.5 * plan.right[0])),
        lean: grid(run * (plan.left[0] - 0.5)),
      }
    }
    case 'cut-layer':
      return {
        ...common,
        kind: plan.kind,
        start,
        end,
        left: length(plan.left[0]),
        right: length(plan.right[0]),
      }
    case 'cut-trapezoid':
      return {
        ...common,
        kind: plan.kind,
        start,
        end,
        startCut: length(plan.left[0]),
        endCut: length(plan.right[0]),
      }
    case 'glued-v-fold': {
      const { right, left } = sidesOf(plan, true, (t, of) => grid(of === 'base' ? 8 + 90 * t : 10 + 90 * t))
      const ridge = length(plan.left[1])
      return {
        ...common,
        kind: plan.kind,
        apex: start,
        toward: plan.toward,
        right,
        left,
        foot: length(plan.right[1]),
        ridge,
        side: plan.side,
        pop: plan.pop,
        tab: plan.tab,
        ...(plan.outline.length > 0
          ? { outline: plan.outline.map(([a, b]): Flat => [grid(deep * a), grid(ridge * b)]) }
          : {}),
      }
    }
    case 'glued-tent': {
      const { right, left } = sidesOf(plan, false, (t) => Math.max(4, grid(deep * t)))
      return {
        ...common,
        kind: plan.kind,
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
    }
    case 'floating-layer': {
      const [rightReach, leftReach] = [length(plan.right[0]), length(plan.left[0])]
      return {
        ...common,
        kind: plan.kind,
        start,
        end,
        height: length(plan.right[1]),
        left: leftReach,
        right: rightReach,
        walls: [-leftReach, 0, grid(rightReach * plan.left[1])],
        tab: plan.tab,
      }
    }
    case 'rider': {
      const [a, l] = [length(plan.right[0]), start]
      const size = length(plan.left[0])
      return {
        ...common,
        kind: plan.kind,
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
    }
    default:
      throw new RangeError('a kind that these designs do not know')
  }
}

function grown(plans: readonly Plan[], wish: GluedWish, height: number): Mechanism[] {
  const creases: Place[] = [{ name: 'gutter', length: height, depth: 0 }]
  const panels: Place[] = [
    { name: 'page/left', length: height, depth: 0 },
    { name: 'page/right', length: height, depth: 0 },
  ]
  return plans.map((plan, index) => {
    const kind = kinds.find((one) => one.kind === plan.kind)
    const places = (kind?.sitsOn === 'panel' ? panels : creases).filter(
      ({ depth }) => depth < (wish.depth ?? 12),
    )
    const at = places[places.length - 1 - (plan.host % places.length)] as Place
    const m = kindOf({ id: '', kind: plan.kind, on: '' }).complete(
      placed(`m${index}`, at, plan, wish.eighths ?? false),
    ) as Mechanism
    const built = kindOf(m).build(m)
    for (const { part, length, hidden } of built.creases)
      if (!hidden) creases.push({ name: `${m.id}/${part}`, length, depth: at.depth + 1 })
    for (const { part } of built.panels)
      panels.push({ name: `${m.id}/${part}`, length: at.length, depth: at.depth + 1 })
    return m
  })
}

const fraction = fc.double({ min: 0.08, max: 0.92, noNaN: true })

/** Random designs of all seven kinds (or those named), read through `parseDesign` as a file would be. */
export function gluedDesigns(wish: GluedWish = {}): fc.Arbitrary<Design> {
  const plan: fc.Arbitrary<Plan> = fc.record({
    host: fc.nat({ max: 9 }),
    kind: fc.constantFrom(...(wish.kinds ?? allKinds)),
    from: fraction,
    span: fraction,
    right: fc.tuple(fraction, fraction),
    left: fc.tuple(fraction, fraction),
    toward: fc.constantFrom(1, -1),
    side: fc.constantFrom(...(wish.sides ?? (['inside', 'outside'] as const))),
    pop: fc.constantFrom(...(wish.pops ?? (['up', 'down'] as const))),
    match: fc.constantFrom(...(wish.match ?? (['alike', 'shuts', 'shuts', 'any'] as const))),
    tab: fc.constantFrom(0, 5, 8),
    outline: fc.array(fc.tuple(fraction, fraction), { maxLength: 2 }),
  })
  return fc
    .record({
      plans: fc.array(plan, { minLength: wish.least ?? 1, maxLength: wish.most ?? 12, size: 'max' }),
      width: fc.integer({ min: 60, max: 297 }),
      height: fc.integer({ min: 60, max: 420 }),
    })
    .map(({ plans, width, height }) =>
      parseDesign({
        hingebook: 1,
        title: 'Random',
        card: { width, height, caliper: 0.25 },
        mechanisms: grown(plans, wish, height).map((m) => JSON.parse(JSON.stringify(m)) as object),
      }),
    )
}
