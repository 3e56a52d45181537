import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { change, fieldsFor, helpOn, kinds, settable, settingOf } from '../../../src/paper/index.ts'
import { design, designs, runs, vFold } from '../shared/designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const jaw = vFold('jaw', 'gutter', 30, 40, 45)

describe('slit and wedge angle', () => {
  test('are two ways to say the same: set one, the other follows', () => {
    const [m] = design([beak]).mechanisms
    if (!m) throw new Error('no beak')
    expect(settingOf(m, 'wedge')).toBeCloseTo(45, 12)
    const { cut } = fieldsFor(m, 'wedge', 30)
    expect(cut).toBeCloseTo(40 / Math.sqrt(3), 12)
    const after = change(design([beak]), 'beak', fieldsFor(m, 'wedge', 30)).mechanisms[0]
    expect(after && settingOf(after, 'wedge')).toBeCloseTo(30, 12)
  })

  test('every number a reader can set is what it was set to', () => {
    fc.assert(
      fc.property(
        designs({ most: 3 }),
        fc.nat(),
        fc.nat(),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (made, which, what, t) => {
          const m = made.mechanisms[which % made.mechanisms.length]
          if (!m) return
          const all = settable(m)
          const { name, unit, min, max } = all[what % all.length] ?? { name: '', unit: 'mm', min: 0, max: 0 }
          const value = unit === 'deg' ? min + t * (max - min) : t * 100
          const after = change(made, m.id, fieldsFor(m, name, value)).mechanisms.find(({ id }) => id === m.id)
          const trapezoidWedge = m.kind === 'cut-trapezoid' && name === 'wedge'
          // A trapezoid’s second cut cannot be less than nothing, whatever its wedge is wished to be.
          if (after && !(trapezoidWedge && settingOf(after, 'endCut') === 0))
            expect(settingOf(after, name)).toBeCloseTo(value, 6)
        },
      ),
      runs(300),
    )
  })
})

describe('a change', () => {
  test('leaves the design it was made from alone', () => {
    const made = design([beak, jaw])
    const before = JSON.stringify(made)
    const after = change(made, 'beak', { cut: 30 })
    expect(JSON.stringify(made)).toBe(before)
    expect(after).not.toBe(made)
  })

  test('of one half of a shared slit keeps the slit shared, and the other apex where it was', () => {
    const after = change(design([beak, jaw]), 'jaw', { cut: 25, run: 50 })
    expect(after.mechanisms).toMatchObject([
      { apex: 110, run: -30, cut: 25 },
      { apex: 30, run: 50, cut: 25 },
    ])
  })

  test('of a slit that is not shared touches nobody else', () => {
    const made = design([beak, { ...jaw, cut: 39 }])
    expect(change(made, 'jaw', { cut: 25 }).mechanisms[0]).toBe(made.mechanisms[0])
  })

  test('of a mechanism or a number that is not there is refused', () => {
    const made = design([beak])
    expect(() => change(made, 'owl', { cut: 3 })).toThrow('there is no mechanism owl')
    expect(() => settingOf(made.mechanisms[0] as (typeof made.mechanisms)[0], 'depth')).toThrow(
      'beak has no depth',
    )
  })
})

describe('every kind', () => {
  test.each(kinds.map((kind) => [kind.kind, kind] as const))(
    '%s says of each number what it is, its unit and its range',
    (_, kind) => {
      for (const { name, label, unit, min, max, ...field } of [...kind.fields, ...kind.derived]) {
        expect(name).toMatch(/^[a-zA-Z.]+$/)
        expect(label).toMatch(/^[A-Z]/)
        expect(['mm', 'deg']).toContain(unit)
        expect(min).toBeLessThan(max)
        // What is written out before anybody sees it is not explained.
        if (!('shorthand' in field)) expect(helpOn(kind, name)).toMatch(/^[A-Z].*\.$/)
      }
    },
  )

  test.each(kinds.map((kind) => [kind.kind, kind] as const))(
    '%s says of each choice what it is',
    (_, kind) => {
      for (const { name } of kind.choices ?? []) expect(helpOn(kind, name)).toMatch(/^[A-Z].*\.$/)
      expect(() => helpOn(kind, 'feather')).toThrow(`nothing is said of feather of a ${kind.kind}`)
    },
  )

  test('is named once', () => {
    expect(new Set(kinds.map(({ kind }) => kind)).size).toBe(kinds.length)
  })
})
