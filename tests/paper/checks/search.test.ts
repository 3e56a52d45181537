// How a repair is searched for, with checks that are made up: what mends, and what it harms, is known then.
import { describe, expect, test } from 'vitest'
import type { Examine, Means } from '../../../src/paper/checks/repair.ts'
import { repairFor } from '../../../src/paper/checks/repair.ts'
import type { Finding } from '../../../src/paper/checks/subject.ts'
import type { CheckName, Design } from '../../../src/paper/index.ts'
import { settingOf } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const number = ({ mechanisms }: Design, id: string, field: string): number => {
  const m = mechanisms.find((one) => one.id === id)
  return m ? settingOf(m, field) : Number.NaN
}

const fault = (name: CheckName, ids: readonly string[], value = 3): Finding => ({
  name,
  ok: false,
  value,
  unit: 'mm',
  limit: 5,
  sense: 'at-least',
  ids,
  sentence: 'It fails.',
})

/** What fails on a design: checks by name and what they are about. */
type Fails = (made: Design) => readonly Finding[]

const means = (fails: Fails, seen: { design: Design; names: readonly CheckName[] | null }[] = []): Means => {
  const examine: Examine = (made, names, about) => {
    seen.push({ design: made, names })
    return fails(made).filter(
      ({ name, ids }) => (!names || names.includes(name)) && (!about || ids.some((id) => about.ids.has(id))),
    )
  }
  return { examine, affords: () => 100 }
}

const beak = fold('beak', 'gutter', 110, -40, 38)
const eye = fold('eye', 'beak/ridge', 10, 20, 12)
const made = design([beak, eye])
const bridge = fault('bridge', ['eye'])

/** The repair of a fault that is there until `mended`. */
const repair = (mended: (made: Design) => boolean, of = made, one = bridge) => {
  const fails: Fails = (now) => (mended(now) ? [] : [one])
  return repairFor(of, one, fails(of), means(fails))
}

describe('the nearest change', () => {
  test('is the least that mends, to a tenth on the safe side', () => {
    expect(repair((now) => number(now, 'eye', 'cut') <= 9.96)).toEqual({
      id: 'eye',
      field: 'cut',
      label: 'Slit',
      unit: 'mm',
      from: 12,
      to: 9.9,
      change: [{ id: 'eye', fields: { cut: 9.9 } }],
      keepsRest: true,
    })
    expect(repair((now) => number(now, 'eye', 'cut') >= 14.01)).toMatchObject({ field: 'cut', to: 14.1 })
    expect(repair((now) => number(now, 'eye', 'cut') > 12)).toMatchObject({ field: 'cut', to: 12.1 })
  })

  test('is one of its host as well, and is the smaller of two', () => {
    expect(repair((now) => number(now, 'beak', 'apex') <= 101)).toMatchObject({
      id: 'beak',
      field: 'apex',
      from: 110,
      to: 101,
      change: [{ id: 'beak', fields: { apex: 101 } }],
    })
    const either = (eyeTo: number, beakTo: number) =>
      repair((now) => number(now, 'eye', 'cut') <= eyeTo || number(now, 'beak', 'apex') <= beakTo)
    expect(either(9, 106)).toMatchObject({ id: 'eye', to: 9 })
    expect(either(5, 106)).toMatchObject({ id: 'beak', to: 106 })
  })

  test('of what stands on none of them is not looked for', () => {
    const with3 = design([beak, eye, layer('reed', 'gutter', 125, 140, 9)])
    expect(repair((now) => number(now, 'reed', 'end') <= 135, with3)).toBeNull()
  })

  test('takes nothing away: what shrinks to a tenth is no repair', () => {
    expect(repair((now) => number(now, 'eye', 'cut') <= 1.3)).toMatchObject({ field: 'cut', to: 1.3 })
    const gone = repair((now) => number(now, 'eye', 'cut') <= 1.1 && number(now, 'eye', 'run') === 20)
    expect(gone).toBeNull()
  })

  test('goes to the last that a file may hold, and no further', () => {
    // A layer's depth goes down to 0; a start may not pass its end.
    const strip = design([layer('reed', 'gutter', 20, 60, 9)])
    const start = repair((now) => number(now, 'reed', 'start') >= 55.9, strip, fault('bridge', ['reed']))
    expect(start).toMatchObject({ field: 'start', to: 55.9 })
    expect(repair((now) => number(now, 'reed', 'start') >= 56.1, strip, fault('bridge', ['reed']))).toBeNull()
  })

  test('moves a shared slit at both its halves', () => {
    const both = design([fold('beak', 'gutter', 110, -40, 38), fold('jaw', 'gutter', 30, 40, 38)])
    const found = repair((now) => number(now, 'beak', 'cut') <= 35, both, fault('bridge', ['beak']))
    expect(found?.change).toEqual([
      { id: 'beak', fields: { cut: 35 } },
      { id: 'jaw', fields: { cut: 35 } },
    ])
  })
})

describe('what a change harms', () => {
  const glue = fault('glue', ['eye'])

  test('is gone round, if a farther one harms nothing', () => {
    const fails: Fails = (now) => [
      ...(number(now, 'eye', 'cut') <= 10 || number(now, 'eye', 'apex') >= 15 ? [] : [bridge]),
      ...(number(now, 'eye', 'cut') < 12 ? [glue] : []),
    ]
    expect(repairFor(made, bridge, fails(made), means(fails))).toMatchObject({
      field: 'apex',
      to: 15,
      keepsRest: true,
    })
  })

  test('is told where nothing else mends it', () => {
    const fails: Fails = (now) => [
      ...(number(now, 'eye', 'cut') <= 10 ? [] : [bridge]),
      ...(number(now, 'eye', 'cut') < 12 ? [glue] : []),
    ]
    expect(repairFor(made, bridge, fails(made), means(fails))).toMatchObject({
      field: 'cut',
      to: 10,
      keepsRest: false,
    })
  })

  test('is less on one way than on another', () => {
    const narrow = fault('narrow', ['eye'])
    const fails: Fails = (now) => [
      ...(number(now, 'eye', 'cut') <= 11 || number(now, 'eye', 'apex') >= 13 ? [] : [bridge]),
      ...(number(now, 'eye', 'cut') < 12 ? [glue, narrow] : []),
      ...(number(now, 'eye', 'apex') > 10 ? [glue] : []),
    ]
    expect(repairFor(made, bridge, fails(made), means(fails))).toMatchObject({
      field: 'apex',
      keepsRest: false,
    })
  })

  test('does not count where it failed before', () => {
    const fails: Fails = (now) => [...(number(now, 'eye', 'cut') <= 10 ? [] : [bridge]), glue]
    expect(repairFor(made, bridge, fails(made), means(fails))).toMatchObject({ to: 10, keepsRest: true })
  })

  test('is seen in the whole design before it is believed', () => {
    // What the quick checks do not see: a motion that is no longer clear.
    const motion = fault('clear-motion', ['beak', 'eye'])
    const fails: Fails = (now) => [
      ...(number(now, 'eye', 'cut') <= 10 || number(now, 'eye', 'apex') >= 15 ? [] : [bridge]),
      ...(number(now, 'eye', 'cut') < 12 ? [motion] : []),
    ]
    expect(repairFor(made, bridge, fails(made), means(fails))).toMatchObject({
      field: 'apex',
      to: 15,
      keepsRest: true,
    })
  })
})

describe('where it is searched', () => {
  const row = Array.from({ length: 7 }, (_, k) => layer(`m${k}`, 'gutter', 5 + 20 * k, 15 + 20 * k, 9))
  const many = design([
    ...row,
    fold('host', 'm3/ridge', 4, 4, 3),
    fold('guest', 'm3/right', 4, 4, 3),
    fold('far', 'm6/ridge', 4, 4, 3),
  ])

  test('of a large design in the neighbourhood, and what is found is judged in the whole', () => {
    const one = fault('bridge', ['m3'])
    const fails: Fails = (now) => (number(now, 'm3', 'end') <= 74 ? [] : [one])
    const seen: { design: Design; names: readonly CheckName[] | null }[] = []
    expect(repairFor(many, one, fails(many), means(fails, seen))).toMatchObject({
      id: 'm3',
      field: 'end',
      to: 74,
    })
    const looked = new Set(
      seen
        .filter(({ names }) => names)
        .map(({ design: { mechanisms } }) => mechanisms.map(({ id }) => id).join(' ')),
    )
    expect([...looked]).toEqual(['m2 m3 m4 host guest'])
    const whole = seen.filter(({ names }) => !names)
    expect(whole.length).toBeGreaterThan(0)
    for (const { design: all } of whole) expect(all.mechanisms).toHaveLength(10)
  })

  test('of a small one everywhere', () => {
    const four = design([...row.slice(0, 4)])
    const one = fault('bridge', ['m0'])
    const fails: Fails = (now) => (number(now, 'm0', 'end') <= 14 ? [] : [one])
    const seen: { design: Design; names: readonly CheckName[] | null }[] = []
    expect(repairFor(four, one, fails(four), means(fails, seen))).toMatchObject({ to: 14 })
    for (const { design: all } of seen) expect(all.mechanisms).toHaveLength(4)
  })

  test('no longer than can be afforded', () => {
    const fails: Fails = (now) => (number(now, 'eye', 'cut') <= 10 ? [] : [bridge])
    expect(repairFor(made, bridge, [bridge], { ...means(fails), affords: () => 0 })).toBeNull()
    expect(repairFor(made, bridge, [bridge], { examine: () => null, affords: () => 100 })).toBeNull()
  })
})

test('a measure that points straight at its mend is followed there', () => {
  // 40 mm away no place of a coarse search need be the only one that will do: here one tenth alone is.
  const wide = design([layer('reed', 'gutter', 20, 100, 9)])
  const off = (now: Design) => Math.abs(number(now, 'reed', 'end') - 63.7)
  const one = (now: Design): Finding => ({
    ...fault('bridge', ['reed'], off(now)),
    limit: 0,
    sense: 'at-most',
  })
  const fails: Fails = (now) => (off(now) < 0.04 ? [] : [one(now)])
  expect(repairFor(wide, one(wide), fails(wide), means(fails))).toMatchObject({ field: 'end', to: 63.7 })
})
