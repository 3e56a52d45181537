// What a search is told of a design: faults one after another, those that are quick to tell first, and what they cost.
import { describe, expect, test } from 'vitest'
import { faults } from '../../../src/paper/checks/check.ts'
import { checksThat, examiners } from '../../../src/paper/checks/table.ts'
import type { CheckName } from '../../../src/paper/index.ts'
import { check } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const ALL: readonly CheckName[] = examiners.map(({ name }) => name)

const look = (mechanisms: readonly object[], names: readonly CheckName[] = ALL, ids?: readonly string[]) => {
  const effort = { left: 1e5 }
  const found = [...faults(design(mechanisms), { names, effort, ...(ids ? { ids: new Set(ids) } : {}) })]
  return { found, told: found.map((one) => `${one.name} ${one.ids[0]}`), spent: 1e5 - effort.left }
}

/** Too deep for its page, and 2 mm from its end: it sticks out, and its bridge is too thin. */
const deep = layer('lamp', 'gutter', 2, 40, 60)

describe('the faults of a design', () => {
  test('are what a check finds failing, and nothing else', () => {
    const { told, found } = look([deep, layer('step', 'gutter', 90, 120, 20)])
    expect(found.every(({ ok }) => !ok)).toBe(true)
    expect([...new Set(told)].sort()).toEqual(['bridge lamp', 'stays-inside lamp'])
    expect(look([layer('step', 'gutter', 60, 90, 20)]).found).toEqual([])
  })

  test('are looked for by the checks that are asked alone', () => {
    expect(look([deep], ['bridge']).told).toContain('bridge lamp')
    expect(look([deep], ['bridge']).told).not.toContain('stays-inside lamp')
    expect(new Set(look([deep], ['stays-inside']).told)).toEqual(new Set(['stays-inside lamp']))
    expect(look([deep], []).told).toEqual([])
    expect(look([deep], ['narrow', 'shuts-flat']).told).toEqual([])
  })

  test('concern those who are asked about', () => {
    const two = [deep, layer('reed', 'gutter', 100, 146, 60)]
    expect(new Set(look(two, ['stays-inside']).told)).toEqual(
      new Set(['stays-inside lamp', 'stays-inside reed']),
    )
    expect(new Set(look(two, ['stays-inside'], ['reed']).told)).toEqual(new Set(['stays-inside reed']))
  })

  test('leave out what follows from cuts that cannot be made', () => {
    // Cut over the edge of its page; its guest runs off its strip as well.
    const wide = fold('beak', 'gutter', 110, -40, 120)
    expect(
      new Set(look([wide, layer('eye', 'beak/ridge', 10, 12, 3)], ['cuts-inside', 'narrow']).told),
    ).toEqual(new Set(['cuts-inside beak', 'narrow eye']))
    const late = look([wide, gluedMoth({ apex: 20, foot: 30, ridge: 20 })], ['clear-motion'])
    expect(late.found).toMatchObject([{ name: 'clear-motion', waits: true, verdict: 'undecided' }])
    // The cuts are looked at for that, and not told of.
    expect(late.told.some((one) => one.startsWith('cuts-inside'))).toBe(false)
    expect(look([wide], ['bridge']).told).toEqual([])
  })

  test('that are quick to tell come first, and who stops there pays for no more', () => {
    const both = [layer('lamp', 'gutter', 20, 40, 60), layer('reed', 'gutter', 100, 102, 20)]
    expect([...new Set(look(both, ['stays-inside', 'narrow']).told)]).toEqual([
      'narrow reed',
      'stays-inside lamp',
    ])
    const effort = { left: 1000 }
    const first = faults(design(both), { names: ALL, effort }).next()
    expect(first.value?.name).toBe('narrow')
    const all = look(both).spent
    expect(1000 - effort.left).toBeLessThan(all)
    expect(1000 - effort.left).toBeGreaterThan(3)
  })

  test('cost three looks and more with every mechanism and check', () => {
    const row = (count: number) =>
      Array.from({ length: count }, (_, k) => layer(`s${k}`, 'gutter', 6 + 14 * k, 15 + 14 * k, 8))
    const spent = (count: number, names: readonly CheckName[]) => look(row(count), names).spent
    expect(spent(2, [])).toBe(3)
    expect(spent(9, [])).toBe(3)
    // A quick check costs two thirds of a look for each, one of the whole card two.
    expect(spent(3, ['shuts-flat'])).toBeCloseTo(3 + 2, 9)
    expect(spent(6, ['shuts-flat'])).toBeCloseTo(3 + 4, 9)
    expect(spent(6, ['shuts-flat', 'opens-flat'])).toBeCloseTo(3 + 8, 9)
    // What is made is told after the three checks of its cuts.
    expect(spent(6, ['narrow'])).toBeCloseTo(3 + 16, 9)
    expect(spent(6, ['thickness'])).toBeCloseTo(3 + 12 + 12, 9)
  })
})

test('the checks are told by what they cost and when they can be made', () => {
  expect(checksThat(({ cost }) => cost === 'last')).toEqual(['clear-motion'])
  expect(checksThat(({ stage }) => stage === 'cuts')).toEqual(['inside-fold', 'cuts-inside', 'cuts-apart'])
})

describe('of each thing', () => {
  test('that fails the worst finding is told; of all that hold the one with least to spare', () => {
    const made = design([layer('lamp', 'gutter', 20, 24, 3), layer('reed', 'gutter', 60, 80, 20)])
    const narrow = check(made, { repairs: false, names: ['narrow'] })
    // Both its sides are 3 mm deep and 4 wide: one of them is told.
    expect(narrow).toHaveLength(1)
    expect(narrow[0]).toMatchObject({
      ok: false,
      value: expect.closeTo(3, 9),
      ids: ['lamp', expect.any(String)],
    })
    const bridges = check(made, { repairs: false, names: ['bridge'], bridge: 1 })
    expect(bridges).toHaveLength(1)
  })
})
