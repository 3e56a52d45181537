// Random designs, and the fixed ones that several tests share.
import fc from 'fast-check'
import type { Card, Design, Mechanism } from '../../../src/paper/index.ts'
import { kindNamed, kindOf, parseDesign } from '../../../src/paper/index.ts'
import type { KindName } from './kinds.ts'
import { entryOf, kindsWith } from './kinds.ts'
import { nextFloat, RAD } from './space.ts'

/**
 * How often a property is tried; `RUNS=10000 npm run test:unit` looks harder. A property that fails is
 * given half a minute to find a small counterexample.
 */
export const runs = (usual: number) => ({
  numRuns: Math.max(usual, Number(process.env.RUNS ?? 0)),
  ...(process.env.RUNS === undefined ? { interruptAfterTimeLimit: 30_000 } : {}),
})

export const A6: Card = { width: 105, height: 148, caliper: 0.25 }

/** A design read as a file would be. */
export const design = (mechanisms: readonly object[], card: Partial<Card> = {}): Design =>
  parseDesign({ hingebook: 1, title: 'Night garden', card: { ...A6, ...card }, mechanisms })

/** A moth: a V-fold of its own card, with equal sides. */
export const gluedMoth = (more: object = {}) => ({
  id: 'moth',
  kind: 'glued-v-fold',
  on: 'gutter',
  apex: 60,
  toward: 1,
  base: 45,
  facet: 60,
  foot: 40,
  ridge: 40,
  ...more,
})

/** A pond: a platform on three walls. */
export const gluedPond = {
  id: 'pond',
  kind: 'floating-layer',
  on: 'gutter',
  start: 40,
  end: 90,
  height: 20,
  left: 30,
  right: 30,
  walls: [-30, 0, 30],
}

/** The fields of a V-fold by its wedge angle: what a protractor would mark. */
export const vFold = (id: string, on: string, apex: number, run: number, wedge: number) => ({
  id,
  kind: 'cut-v-fold',
  on,
  apex,
  run,
  cut: Math.abs(run) * Math.tan(wedge * RAD),
})

/** One mechanism to be, in fractions of the crease it will sit on. */
interface Plan {
  /** Counted back from the newest crease. */
  readonly host: number
  readonly kind: KindName
  readonly from: number
  readonly span: number
  readonly back: boolean
  readonly left: number
  readonly right: number
  readonly lean: number
  readonly outline: readonly (readonly [number, number])[]
}

export interface Wish {
  /** How many mechanisms at most, and how deep they may nest. */
  readonly most?: number
  readonly depth?: number
  readonly kinds?: readonly Plan['kind'][]
  /** Fractions of 0 and 1, tiny lengths, folds square to the crease: what no pair of scissors would do. */
  readonly poor?: boolean
  /** Least and greatest fraction of its crease and card that a mechanism takes; 0.1 to 0.9 unless said. */
  readonly parts?: readonly [number, number]
  /** Steepest wedge angle of a V-fold, degrees. */
  readonly steepest?: number
  /** Each mechanism sits on a crease of the one before it, so that `depth` is reached every time. */
  readonly chain?: boolean
  /** At most one guest on each crease. */
  readonly single?: boolean
  readonly card?: fc.Arbitrary<Card>
}

/** Cards up to A3: one page at most 297 x 420, either way up. */
export const cards: fc.Arbitrary<Card> = fc
  .record({
    short: fc.integer({ min: 20, max: 297 }),
    long: fc.integer({ min: 20, max: 420 }),
    wide: fc.boolean(),
  })
  .map(({ short, long, wide }) =>
    wide ? { width: long, height: short, caliper: 0.25 } : { width: short, height: long, caliper: 0.25 },
  )

const ordinary = ([min, max]: readonly [number, number]) => fc.double({ min, max, noNaN: true })

const tiny = [0, Number.MIN_VALUE, 1e-300, 1e-160, 1e-12, 1e-9, 1e-6]

const poorly = fc.oneof(
  fc.constantFrom(...tiny, 0.5, nextFloat(1, -1), 1),
  fc.double({ min: 0, max: 1, noNaN: true }),
)

/** Mechanisms that a plan gives on a card; every number inside the range that the file allows. */
function grown(card: Card, plans: readonly Plan[], wish: Wish): Mechanism[] {
  const creases = [{ name: 'gutter', length: card.height, depth: 0, taken: false }]
  return plans.flatMap((plan, index): Mechanism[] => {
    const open = creases.filter(({ depth, taken }) => depth < (wish.depth ?? 6) && !(wish.single && taken))
    const host = open[open.length - 1 - (plan.host % open.length)]
    if (!host) return []
    const m = placed(`m${index}`, host.name, host.length, card, plan, wish)
    host.taken = true
    for (const { part, length } of kindOf(m).build(m).creases)
      creases.push({
        name: `${m.id}/${part}`,
        length: Math.min(length, 2000),
        depth: host.depth + 1,
        taken: false,
      })
    return [m]
  })
}

function placed(id: string, on: string, length: number, card: Card, plan: Plan, wish: Wish): Mechanism {
  const { kind, from, span, back, left, right, lean, outline } = plan
  const start = length * from
  const end = start + (length - start) * span
  const deep = Math.min(card.width, length)
  const { poor = false, steepest = 70 } = wish
  const sketch = { start, end, deep, back, left, right, lean, outline, poor, steepest }
  return { id, kind, on, ...entryOf(kind).sketch?.(sketch) } as Mechanism
}

/** Every kind that these designs can draw: all that add creases to their host and stand in one piece. */
export const everyKind = kindsWith('sketch')

/** Those of them that are cut from their host. */
const cutKinds = everyKind.filter((kind) => kindNamed(kind)?.stock.from === 'host')

/** Random designs, read through `parseDesign` as a file would be. */
export function designs(wish: Wish = {}): fc.Arbitrary<Design> {
  const part = wish.poor ? poorly : ordinary(wish.parts ?? [0.1, 0.9])
  const plan: fc.Arbitrary<Plan> = fc.record({
    host: fc.nat({ max: wish.chain ? 2 : 7 }),
    kind: fc.constantFrom(...(wish.kinds ?? cutKinds)),
    from: part,
    span: part,
    back: fc.boolean(),
    left: part,
    right: part,
    lean: part,
    outline: fc.array(fc.tuple(part, part), { maxLength: 2 }),
  })
  const [minLength, maxLength] = wish.chain ? [wish.depth ?? 6, wish.depth ?? 6] : [1, wish.most ?? 8]
  return fc
    .record({ card: wish.card ?? cards, plans: fc.array(plan, { minLength, maxLength }) })
    .map(({ card, plans }) =>
      parseDesign({ hingebook: 1, title: 'Random', card, mechanisms: grown(card, plans, wish) }),
    )
}

/** Openings where formulas lose digits: the ends, their neighbours among floats, and near them. */
export const edgyOpenings: readonly number[] = [
  0,
  nextFloat(0, 1),
  1e-300,
  1e-12,
  1e-6,
  nextFloat(90, -1),
  90,
  nextFloat(90, 1),
  180 - 1e-6,
  180 - 1e-12,
  nextFloat(180, -1),
  180,
]

export const openings: fc.Arbitrary<number> = fc.oneof(
  { weight: 3, arbitrary: fc.double({ min: 0, max: 180, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(...edgyOpenings) },
)

/** The ladder of poverty: no mechanism, one, a guest, a guest of a guest. */
export const ladder: readonly { readonly name: string; readonly design: Design }[] = (() => {
  const beak = vFold('beak', 'gutter', 110, -40, 45)
  const eye = { id: 'eye', kind: 'cut-layer', on: 'beak/right', start: 20, end: 32, left: 6, right: 8 }
  const pupil = {
    id: 'pupil',
    kind: 'cut-trapezoid',
    on: 'eye/ridge',
    start: 3,
    end: 9,
    startCut: 2,
    endCut: 4,
  }
  return [
    { name: 'a bare card', design: design([]) },
    { name: 'one V-fold', design: design([beak]) },
    { name: 'a layer on its right fold', design: design([beak, eye]) },
    { name: 'a trapezoid on that layer', design: design([beak, eye, pupil]) },
  ]
})()
