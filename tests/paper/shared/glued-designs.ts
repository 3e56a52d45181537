// Random designs of every kind, glued ones first: on any crease and panel, in every state, with sides that
// let the card shut flat and sides that do not.
import fc from 'fast-check'
import type { Design, Mechanism } from '../../../src/paper/index.ts'
import { kindNamed, kindOf, parseDesign } from '../../../src/paper/index.ts'
import type { KindName, Plan, Seat } from './kinds.ts'
import { allKinds, entryOf } from './kinds.ts'

/** One mechanism to be, of a kind and on a seat counted back from the newest crease, or panel. */
interface Growing extends Plan {
  readonly host: number
  readonly kind: KindName
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

interface Place extends Seat {
  readonly depth: number
}

function placed(id: string, at: Place, { kind, ...plan }: Growing, eighths: boolean): Mechanism {
  // Nobody writes more than thousandths.
  const steps = eighths ? 8 : 1000
  const grid = (x: number): number => Math.round(x * steps) / steps
  const start = grid(at.length * plan.from)
  const end = Math.max(start + 1, grid(start + (at.length - start) * plan.span))
  const deep = Math.max(8, Math.min(80, at.length))
  const length = (t: number): number => Math.max(1, grid(deep * t))
  return {
    id,
    on: at.name,
    kind,
    ...entryOf(kind).grow({ plan, start, end, deep, grid, length }),
  } as Mechanism
}

function grown(plans: readonly Growing[], wish: GluedWish, height: number): Mechanism[] {
  const creases: Place[] = [{ name: 'gutter', length: height, depth: 0 }]
  const panels: Place[] = [
    { name: 'page/left', length: height, depth: 0 },
    { name: 'page/right', length: height, depth: 0 },
  ]
  return plans.map((plan, index) => {
    const places = (kindNamed(plan.kind)?.sitsOn === 'panel' ? panels : creases).filter(
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

/** Random designs of all kinds (or those named), read through `parseDesign` as a file would be. */
export function gluedDesigns(wish: GluedWish = {}): fc.Arbitrary<Design> {
  const plan: fc.Arbitrary<Growing> = fc.record({
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
