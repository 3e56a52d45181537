import fc from 'fast-check'
import { expect, test } from 'vitest'
import { keyOf } from '../../../src/paper/checks/subject.ts'
import type { Check, Design, Repair } from '../../../src/paper/index.ts'
import { change, check, parseDesign } from '../../../src/paper/index.ts'
import { runs } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'

/** What a button does with a repair. */
const applied = (made: Design, repair: Repair): Design =>
  repair.change.reduce((next, { id, fields }) => change(next, id, fields), made)

const failed = (checks: readonly Check[]): string[] => checks.filter(({ ok }) => !ok).map(keyOf)

test('every repair mends what it is for; one that says so breaks nothing; a file can hold it', () => {
  const seen = { mended: 0, kept: 0 }
  fc.assert(
    fc.property(gardens(3), (made) => {
      const before = check(made)
      for (const one of before) {
        if (!one.repair) continue
        const after = applied(made, one.repair)
        const now = failed(check(after, { repairs: false }))
        expect(now).not.toContain(keyOf(one))
        seen.mended++
        if (one.repair.keepsRest) {
          seen.kept++
          expect(now.filter((key) => !failed(before).includes(key))).toEqual([])
        }
        expect(() => parseDesign(JSON.parse(JSON.stringify(after)))).not.toThrow()
        // To a tenth, as a hand can cut it.
        expect(one.repair.to * 10).toBeCloseTo(Math.round(one.repair.to * 10), 6)
      }
    }),
    { numRuns: 30 },
  )
  expect(seen.mended).toBeGreaterThan(20)
  expect(seen.kept).toBeGreaterThan(10)
}, 240_000)

test('no smaller turn of the same number mends it: of a repair’s tenths, the last one back fails', () => {
  fc.assert(
    fc.property(gardens(2), (made) => {
      const before = check(made)
      for (const one of before) {
        const { repair } = one
        if (!repair?.keepsRest || repair.change.length !== 1) continue
        const [only] = repair.change
        const [[field, to]] = Object.entries(only?.fields ?? {}) as [[string, number]]
        if (Object.keys(only?.fields ?? {}).length !== 1 || field !== repair.field) continue
        const back = to + (repair.from > to ? 0.1 : -0.1)
        if (Math.abs(back - repair.from) < 0.1) continue
        const now = failed(check(change(made, repair.id, { [field]: back }), { repairs: false }))
        // Either it is not mended, or something else that held is broken.
        expect(now.includes(keyOf(one)) || now.some((key) => !failed(before).includes(key))).toBe(true)
      }
    }),
    runs(25),
  )
}, 60_000)
