// Random designs that could be cut: guests in a row on each crease, with paper left between them.
import fc from 'fast-check'
import type { Design } from '../../../src/paper/index.ts'
import { kindOf, parseDesign } from '../../../src/paper/index.ts'

interface Sprout {
  readonly host: number
  readonly kind: 'cut-v-fold' | 'cut-layer' | 'cut-trapezoid'
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

const sprout: fc.Arbitrary<Sprout> = fc.record({
  host: fc.nat({ max: 5 }),
  kind: fc.constantFrom('cut-v-fold', 'cut-v-fold', 'cut-layer', 'cut-trapezoid'),
  gap: between(0.02, 0.2),
  long: between(0.15, 0.5),
  deep: between(0.2, 1.4),
  other: between(0.2, 1.4),
  back: fc.boolean(),
  lean: between(-0.3, 0.3),
})

function grown(width: number, height: number, sprouts: readonly Sprout[]): object[] {
  const creases = [{ name: 'gutter', length: height, from: 0 }]
  return sprouts.flatMap((sprout, index): object[] => {
    const host = creases[sprout.host % creases.length]
    if (!host) return []
    const start = host.from + sprout.gap * host.length
    const long = Math.min(sprout.long * host.length, host.length - start - 0.02 * host.length)
    if (long < 2) return []
    host.from = start + long
    const end = start + long
    const deep = Math.min(width * 0.8, long * sprout.deep)
    const other = Math.min(width * 0.8, long * sprout.other)
    const id = `m${index}`
    const base = { id, kind: sprout.kind, on: host.name }
    const m =
      sprout.kind === 'cut-layer'
        ? { ...base, start, end, left: deep, right: sprout.back ? deep : other }
        : sprout.kind === 'cut-trapezoid'
          ? { ...base, start, end, startCut: deep, endCut: other }
          : sprout.back
            ? { ...base, apex: end, run: -long, cut: deep, lean: sprout.lean * long }
            : { ...base, apex: start, run: long, cut: deep, lean: sprout.lean * long }
    for (const { part, length } of kindOf(m).build(m as never).creases)
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
      sprouts: fc.array(sprout, { minLength: 1, maxLength: most }),
    })
    .map(({ width, height, sprouts }) =>
      parseDesign({
        hingebook: 1,
        title: 'Garden',
        card: { width, height, caliper: 0.25 },
        mechanisms: grown(width, height, sprouts),
      }),
    )
