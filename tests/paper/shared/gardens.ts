// Random designs that could be cut: guests in a row on each crease, with paper left between them.
import fc from 'fast-check'
import type { Design, Mechanism } from '../../../src/paper/index.ts'
import { kindOf, parseDesign } from '../../../src/paper/index.ts'
import type { KindName } from './kinds.ts'
import { entryOf, kindsWith } from './kinds.ts'

const sprouting = kindsWith('sprout')

interface Bud {
  readonly host: number
  readonly kind: KindName
  readonly gap: number
  readonly long: number
  readonly deep: number
  readonly other: number
  readonly back: boolean
  readonly lean: number
}

/** Spread evenly: a generator of doubles would dwell on the tiniest of them. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 2 ** 31 - 1 }).map((n) => min + ((max - min) * n) / 2 ** 31)

const bud: fc.Arbitrary<Bud> = fc.record({
  host: fc.nat({ max: 5 }),
  // One in two is the first of them.
  kind: fc.oneof(fc.constant(sprouting[0] as KindName), fc.constantFrom(...sprouting)),
  gap: between(0.02, 0.2),
  long: between(0.15, 0.5),
  deep: between(0.2, 1.4),
  other: between(0.2, 1.4),
  back: fc.boolean(),
  lean: between(-0.3, 0.3),
})

function grown(width: number, height: number, buds: readonly Bud[]): object[] {
  const creases = [{ name: 'gutter', length: height, from: 0 }]
  return buds.flatMap((bud, index): object[] => {
    const host = creases[bud.host % creases.length]
    if (!host) return []
    const start = host.from + bud.gap * host.length
    const long = Math.min(bud.long * host.length, host.length - start - 0.02 * host.length)
    if (long < 2) return []
    host.from = start + long
    const end = start + long
    const deep = Math.min(width * 0.8, long * bud.deep)
    const other = Math.min(width * 0.8, long * bud.other)
    const id = `m${index}`
    const sprout = { start, end, deep, other, back: bud.back, lean: bud.lean * long }
    const m = { id, kind: bud.kind, on: host.name, ...entryOf(bud.kind).sprout?.(sprout) } as Mechanism
    for (const { part, length } of kindOf(m).build(m).creases)
      creases.push({ name: `${id}/${part}`, length, from: 0 })
    return [m]
  })
}

/** Random designs of up to `most` mechanisms; many can be cut as drawn, some cannot. */
export const gardens = (most: number): fc.Arbitrary<Design> =>
  fc
    .record({
      width: fc.integer({ min: 40, max: 210 }),
      height: fc.integer({ min: 40, max: 297 }),
      buds: fc.array(bud, { minLength: 1, maxLength: most }),
    })
    .map(({ width, height, buds }) =>
      parseDesign({
        hingebook: 1,
        title: 'Garden',
        card: { width, height, caliper: 0.25 },
        mechanisms: grown(width, height, buds),
      }),
    )
