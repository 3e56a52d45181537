// What stands against adding a part, in hand-made cases.
import { describe, expect, test } from 'vitest'
import { additionsTo, failingIn } from '../../../../src/paper/answers/seek/sound.ts'
import type { Design, Mechanism } from '../../../../src/paper/index.ts'
import { fold, layer } from '../../shared/check-designs.ts'
import { design, gluedMoth } from '../../shared/designs.ts'

const effort = () => ({ left: 1e5 })

const bare = design([])

const against = (before: Design, next: Design, excused: Parameters<typeof additionsTo>[2] = []) => {
  const added = new Set(next.mechanisms.slice(before.mechanisms.length).map(({ id }) => id))
  const judge = additionsTo(before, effort(), excused)
  return { quick: judge.quick(next, added), slow: judge.slow(next, added) }
}

describe('adding a part', () => {
  test('has nothing against it where it works', () => {
    expect(against(bare, design([layer('step', 'gutter', 40, 80, 20)]))).toEqual({ quick: null, slow: null })
    expect(against(bare, design([gluedMoth()]))).toEqual({ quick: null, slow: null })
  })

  test('has that it sticks out, and by how much', () => {
    // Cut 60 deep on both sides, its ridge is at 120 when shut, on a page of 105: 15 mm out.
    const { quick } = against(bare, design([layer('step', 'gutter', 40, 80, 60)]))
    expect(quick).toMatchObject({ name: 'stays-inside', by: expect.closeTo(15, 6) })
    // If that is excused there is nothing else.
    expect(against(bare, design([layer('step', 'gutter', 40, 80, 60)]), ['stays-inside']).quick).toBeNull()
  })

  test('has that its own sizes do not fit together', () => {
    const made = design([layer('step', 'gutter', 40, 80, 20)])
    const backwards: Design = { ...made, mechanisms: [{ ...made.mechanisms[0], end: 30 } as Mechanism] }
    expect(against(bare, backwards).quick).toEqual({
      name: 'limits',
      sentence: 'Its sizes do not fit together.',
      by: Number.POSITIVE_INFINITY,
    })
  })

  test('does not count what failed before, but what fails of the new one', () => {
    // A beak that leans out of the card, and a layer that is fine, or not.
    const outside = design([fold('beak', 'gutter', 140, -60, 160)])
    expect(failingIn(outside).size).toBeGreaterThan(0)
    const beside = (depth: number) =>
      design([fold('beak', 'gutter', 140, -60, 160), layer('step', 'gutter', 10, 50, depth)])
    expect(against(outside, beside(20)).quick).toBeNull()
    expect(against(outside, beside(60)).quick?.name).toBe('stays-inside')
  })

  test('has that it cuts through the glue of another', () => {
    const before = design([gluedMoth({ tab: 8 })])
    const next = design([gluedMoth({ tab: 8 }), layer('step', 'page', 0, 0, 0)].slice(0, 1))
    expect(against(before, next).quick).toBeNull()
    // A slit at 70 along the gutter, 30 deep: the joint runs from 60 at 45 degrees, right through it.
    const through = design([gluedMoth({ tab: 8 }), layer('step', 'gutter', 70, 90, 30)])
    expect(against(before, through).quick?.name).toBe('glue')
  })

  test('has that parts run into each other on the way: that is slow to tell', () => {
    // Tips 10 mm apart lean 8.4 mm past each apex: see the tests of the motion.
    const owl = fold('owl', 'gutter', 70, -30, 40)
    const before = design([owl])
    const found = against(before, design([owl, fold('moth', 'gutter', 80, 30, 40)]))
    expect(found.quick).toBeNull()
    expect(found.slow).toMatchObject({ name: 'clear-motion' })
  })

  test('cannot be told where nothing may be spent any more', () => {
    const made = design([layer('step', 'gutter', 40, 80, 20)])
    const judge = additionsTo(bare, { left: 0 })
    for (const found of [judge.quick(made, new Set(['step'])), judge.slow(made, new Set(['step']))])
      expect(found).toEqual({
        name: 'clear-motion',
        sentence: 'It could not be told in time.',
        by: Number.POSITIVE_INFINITY,
      })
    expect(additionsTo(bare, { left: 100 }).quick(made, new Set(['step']))).toBeNull()
  })

  test('costs looks, and they are counted down', () => {
    const left = effort()
    additionsTo(bare, left).quick(design([gluedMoth()]), new Set(['moth']))
    expect(left.left).toBeLessThan(1e5)
    expect(left.left).toBeGreaterThan(1e5 - 1000)
  })
})
