// After any change the checks say exactly what they say of the same design that nothing is known of yet.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { change, check, fieldsFor, parseDesign, settable, settingOf } from '../../../src/paper/index.ts'
import { faultyGarden, gluedCrowd, row, stuckDown } from '../shared/crowds.ts'
import { designs, runs } from '../shared/designs.ts'
import { between, gardens } from '../shared/gardens.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'

/** The same design in objects that nobody has seen. */
const fresh = (made: Design): Design => parseDesign(JSON.parse(JSON.stringify(made)))

interface Move {
  readonly mechanism: number
  readonly field: number
  readonly by: number
}

const moves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.record({
    mechanism: fc.nat({ max: 1000 }),
    field: fc.nat({ max: 1000 }),
    by: fc.oneof(between(-0.2, 0.2), between(-25, 25)),
  }),
  { minLength: 1, maxLength: 4 },
)

function moved(made: Design, { mechanism, field, by }: Move): Design {
  const m = made.mechanisms[mechanism % Math.max(1, made.mechanisms.length)]
  const settings = m ? settable(m) : []
  const setting = settings[field % Math.max(1, settings.length)]
  if (!m || !setting) return made
  const next = change(made, m.id, fieldsFor(m, setting.name, settingOf(m, setting.name) + by))
  try {
    fresh(next)
    return next
  } catch {
    return made
  }
}

function follow(made: Design, line: readonly Move[]): void {
  let now = made
  check(now, { repairs: false })
  for (const move of line) {
    now = moved(now, move)
    expect(check(now, { repairs: false })).toEqual(check(fresh(now), { repairs: false }))
  }
  // And back again, to what was known before.
  expect(check(made, { repairs: false })).toEqual(check(fresh(made), { repairs: false }))
}

test.each([
  ['gardens', gardens(6)],
  ['glued designs', gluedDesigns({ most: 4, match: ['alike', 'shuts'] })],
  ['designs of all kinds', designs({ most: 5 })],
] as const)(
  'after a few changes: %s',
  (_, made) => {
    fc.assert(fc.property(made, moves, follow), runs(40))
  },
  120_000,
)

test.each([
  ['a row', row(12)],
  ['a garden with faults', faultyGarden(15)],
  ['pieces glued into one another', gluedCrowd(6)],
  ['stickers', stuckDown(10)],
] as const)(
  'after a few changes: %s',
  (_, made) => {
    fc.assert(
      fc.property(moves, (line) => follow(made, line)),
      runs(5),
    )
  },
  120_000,
)

test('with a mechanism taken out, and put in again', () => {
  fc.assert(
    fc.property(gardens(6), (made) => {
      check(made, { repairs: false })
      const last = made.mechanisms.at(-1)
      const without = { ...made, mechanisms: made.mechanisms.slice(0, -1) }
      expect(check(without, { repairs: false })).toEqual(check(fresh(without), { repairs: false }))
      if (last)
        expect(check({ ...without, mechanisms: [...without.mechanisms, last] }, { repairs: false })).toEqual(
          check(fresh(made), { repairs: false }),
        )
    }),
    runs(30),
  )
}, 120_000)

test('and the same repairs', () => {
  fc.assert(
    fc.property(gardens(3), moves, (made, [move]) => {
      check(made)
      const next = move ? moved(made, move) : made
      expect(check(next)).toEqual(check(fresh(next)))
    }),
    runs(6),
  )
}, 120_000)
