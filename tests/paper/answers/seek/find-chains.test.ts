// Chains of two brought to a place, quick beside the slow tests of random wishes: what is told of each is measured on
// the design itself, and what a millimetre more does by changing one number after another.
import { describe, expect, test } from 'vitest'
import type { Find } from '../../../../src/paper/answers/seek/find.ts'
import { sought } from '../../../../src/paper/answers/seek/find.ts'
import type { Wish } from '../../../../src/paper/answers/seek/wish.ts'
import type { Design, Vec3 } from '../../../../src/paper/index.ts'
import { change, check, fieldsFor, kindOf, measure, read, settingOf } from '../../../../src/paper/index.ts'
import { layer } from '../../shared/check-designs.ts'
import { design } from '../../shared/designs.ts'
import { apart } from '../../shared/space.ts'

const bare = design([])

const tipOf = (made: Design, id: string, opening: number): Vec3 =>
  measure(made, opening).tips[id]?.at ?? [Number.NaN, 0, 0]

/** The farthest that one millimetre or degree more in any one number of the new mechanisms moves the tip. */
function swayOf({ design: made, ids }: Find, opening: number): number {
  const tip = ids.at(-1) ?? ''
  const here = tipOf(made, tip, opening)
  const ways = ids.flatMap((id) => {
    const m = made.mechanisms.find((one) => one.id === id)
    if (!m) return []
    return kindOf(m)
      .fields.filter(({ name, idle, shorthand }) => !idle && !shorthand && typeof read(m, name) === 'number')
      .map(({ name }) => {
        const next = change(made, id, fieldsFor(m, name, settingOf(m, name) + 1))
        return apart(here, tipOf(next, tip, opening))
      })
  })
  return Math.max(...ways.filter(Number.isFinite))
}

function examine(made: Design, wish: Wish): readonly Find[] {
  const { finds, missed } = sought(made, wish)
  expect(finds.length > 0).toBe(missed === null)
  const slots = finds.map(({ design: next, ids }) =>
    next.mechanisms.flatMap(({ id, kind, on }) => (ids.includes(id) ? [`${kind} ${on}`] : [])).join(),
  )
  for (const [k, find] of finds.entries()) {
    const { design: next, ids, tip, miss, strays, sway, facts } = find
    expect(next.mechanisms.slice(0, made.mechanisms.length)).toEqual(made.mechanisms)
    expect(next.mechanisms.slice(made.mechanisms.length).map(({ id }) => id)).toEqual(ids)
    expect(apart(tip, tipOf(next, ids.at(-1) ?? '', wish.opening))).toBeLessThan(1e-6)
    expect(miss).toBeCloseTo(apart(tip, wish.at), 6)
    expect(miss).toBeLessThanOrEqual(wish.within ?? 1)
    expect(check(next, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
    expect(sway).toBeCloseTo(swayOf(find, wish.opening), 6)
    const off = (wish.path ?? []).map(({ opening, at }) => apart(at, tipOf(next, ids.at(-1) ?? '', opening)))
    expect(strays).toBeCloseTo(Math.max(0, ...off), 6)
    expect(facts.layers).toBeGreaterThanOrEqual(4)
    // Of two the second stands on the first, and the first where it was asked for.
    const [first, second] = ids.map((id) => next.mechanisms.find((m) => m.id === id))
    expect(wish.on).toContain(first?.on)
    if (second) expect(second.on.split('/')[0]).toBe(first?.id)
    expect(slots.indexOf(slots[k] as string) <= k).toBe(true)
  }
  return finds
}

describe('a place beside the gutter', () => {
  // A layer leans to one side if one cut is deeper: (b - a)/sqrt 2 = 20 and (a + b)/sqrt 2 = 60.
  const wish: Wish = { opening: 90, at: [20, 70, 60], on: ['gutter'], made: 'card' }
  const finds = examine(bare, wish)

  test('is reached by one layer, and by chains of two', () => {
    const singles = finds.filter(({ ids }) => ids.length === 1)
    expect(singles.map(({ design: next }) => next.mechanisms[0]?.kind)).toEqual(['cut-layer'])
    const m = singles[0]?.design.mechanisms[0] as unknown as { left: number; right: number }
    expect(Math.abs(m.right - m.left - 20 * Math.SQRT2)).toBeLessThan(1.5)
    expect(Math.abs(m.right + m.left - 60 * Math.SQRT2)).toBeLessThan(1.5)
    expect(finds.filter(({ ids }) => ids.length === 2).length).toBeGreaterThan(0)
    for (const { ids } of finds) expect(ids.length).toBeLessThanOrEqual(2)
  })

  test('of one part comes before of two: that counts as 10 mm', () => {
    expect(finds[0]?.ids).toHaveLength(1)
  })

  test('on the other side by the mirrored ways', () => {
    const mirrored = examine(bare, { ...wish, at: [-20, 70, 60] })
    const kinds = (list: readonly Find[]) =>
      list.map(({ design: next }) => next.mechanisms.map(({ kind }) => kind).join()).sort()
    expect(kinds(mirrored)).toEqual(kinds(finds))
    const m = mirrored[0]?.design.mechanisms[0] as unknown as { left: number; right: number }
    expect(Math.abs(m.left - m.right - 20 * Math.SQRT2)).toBeLessThan(1.5)
  })

  test('lower down and farther out', () => {
    const far = examine(bare, { ...wish, at: [50, 70, 60] })
    expect(far.some(({ ids }) => ids.length === 2)).toBe(true)
    expect(far.length).toBeLessThanOrEqual(6)
  })
})

describe('beside what is there', () => {
  test('it keeps clear of it', () => {
    const made = design([layer('step', 'gutter', 10, 40, 20)])
    const found = examine(made, { opening: 90, at: [15, 100, 50], on: ['gutter'], made: 'card' })
    expect(found.length).toBeGreaterThan(0)
    for (const { ids } of found) expect(ids).not.toContain('step')
  })
})

describe('a path', () => {
  // A layer of depth d is 2 d cos(w/2) high at every opening: 40 at 90 degrees, and then 14.6 at 150.
  const at = (d: number, w: number): Vec3 => [0, 70, 2 * d * Math.cos((w * Math.PI) / 360)]

  test('that a layer goes is found', () => {
    const d = 20 * Math.SQRT2
    const [first] = examine(bare, {
      opening: 90,
      at: at(d, 90),
      on: ['gutter'],
      made: 'card',
      path: [
        { opening: 150, at: at(d, 150) },
        { opening: 30, at: at(d, 30) },
      ],
    })
    expect(first?.design.mechanisms[0]?.kind).toBe('cut-layer')
    expect(first?.strays).toBeLessThan(1)
  })

  test('that nothing goes is missed by as much as is told', () => {
    const { finds, missed } = sought(bare, {
      opening: 90,
      at: [0, 70, 40],
      on: ['gutter'],
      made: 'card',
      path: [{ opening: 150, at: [0, 70, 20] }],
    })
    expect(finds).toEqual([])
    const { design: near, ids = [], tip } = missed?.nearest ?? {}
    if (!near) throw new Error('nothing near')
    const last = ids.at(-1) ?? ''
    expect(apart(tip ?? [0, 0, 0], tipOf(near, last, 90))).toBeLessThan(1e-6)
    expect(missed?.miss).toBeCloseTo(
      Math.max(apart(tipOf(near, last, 90), [0, 70, 40]), apart(tipOf(near, last, 150), [0, 70, 20])),
      6,
    )
    expect(check(near, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
    expect(missed?.sentence).toContain(`leaves ${missed?.miss.toFixed(1)} mm`)
    // A layer that is 40 high at 90 degrees is 14.6 at 150: 5.4 off; no sound one may be worse than the middle of both.
    expect(missed?.miss).toBeLessThan(10)
  })
})
