// Random sound designs broken at random: what mending makes of them.
import { describe, expect, test } from 'vitest'
import type { Design, Mended } from '../../../src/paper/index.ts'
import { change, check, forgives, mend, parseDesign, room, settingOf } from '../../../src/paper/index.ts'
import { design, gluedMoth, gluedPond, vFold } from '../shared/designs.ts'
import { broken, isSound, seenToWork, soundDesigns } from '../shared/sound.ts'

const PATIENCE = 120_000

const cases = soundDesigns(26, 5, 2)
  .map((made, k) => ({ sound: made, ...broken(made, 100 + k) }))
  .filter(({ made }) => !isSound(made))

const answers = cases.map((one) => ({ ...one, mended: mend(one.made) }))

const numberIn = (made: Design, id: string, field: string): number => {
  const m = made.mechanisms.find((one) => one.id === id)
  if (!m) throw new Error(`there is no ${id}`)
  return settingOf(m, field)
}

/** The given design with all changes that are told made by hand. */
const byHand = (given: Design, { changes }: Mended): Design =>
  changes.reduce((made, { id, field, to }) => change(made, id, { [field]: to }), given)

describe('random sound designs, broken by up to five changes', () => {
  test('are enough, and broken in many ways', () => {
    expect(cases.length).toBeGreaterThan(12)
    const names = cases.flatMap(({ made }) =>
      check(made, { repairs: false }).flatMap(({ name, ok }) => (ok ? [] : [name])),
    )
    expect(new Set(names).size).toBeGreaterThan(5)
  })

  test('end sound, nineteen in twenty at least', () => {
    const left = answers.filter(({ mended }) => mended.left.length > 0)
    expect(left.length / answers.length).toBeLessThanOrEqual(0.05)
  })

  test('what is told to be left is what fails, and nothing else does', () => {
    for (const { mended } of answers) {
      const failing = check(mended.design, { repairs: false }).filter(({ ok }) => !ok)
      expect(mended.left.map(({ sentence }) => sentence)).toEqual(failing.map(({ sentence }) => sentence))
    }
  })

  test(
    'are seen to work',
    () => {
      for (const { mended } of answers) if (mended.left.length === 0) seenToWork(mended.design, 9)
    },
    PATIENCE,
  )

  test('differ from the given ones by the changes told, and by nothing else', () => {
    for (const { made, mended } of answers) {
      const again = byHand(made, mended)
      for (const m of mended.design.mechanisms)
        for (const { id, field, to } of mended.changes)
          if (id === m.id) expect(numberIn(again, id, field)).toBe(to)
      for (const { id, field, from } of mended.changes) expect(numberIn(made, id, field)).toBe(from)
      expect(again.mechanisms).toEqual(mended.design.mechanisms)
      expect(parseDesign(JSON.parse(JSON.stringify(mended.design))).mechanisms).toEqual(
        mended.design.mechanisms,
      )
    }
  })

  test(
    'none of the changes is for nothing: taken back alone, something fails',
    () => {
      for (const { mended } of answers)
        if (mended.left.length === 0)
          for (const { id, field, from } of mended.changes)
            expect(isSound(change(mended.design, id, { [field]: from })), `${id}.${field}`).toBe(false)
    },
    PATIENCE,
  )
})

test(
  'a pinned value stays to the last digit, whatever fails',
  () => {
    let pinned = 0
    for (const { made, mended } of answers.slice(0, 3)) {
      // What mending would have changed is what is pinned.
      const pins = mended.changes.slice(0, 2).map(({ id, field }) => `${id}.${field}`)
      const again = mend(made, { pins })
      for (const { id, field } of mended.changes.slice(0, 2)) {
        pinned++
        expect(numberIn(again.design, id, field)).toBe(numberIn(made, id, field))
      }
      for (const { id, field } of again.changes) expect(pins).not.toContain(`${id}.${field}`)
    }
    expect(pinned).toBeGreaterThan(2)
  },
  PATIENCE,
)

test('with every value pinned nothing changes, and all that fails is left', () => {
  const [first] = cases
  if (!first) throw new Error('nothing is broken')
  const pins = first.made.mechanisms.flatMap((m) =>
    Object.entries(m).flatMap(([key, value]) => (typeof value === 'number' ? [`${m.id}.${key}`] : [])),
  )
  const all = mend(first.made, { pins: pins.filter((pin) => !pin.endsWith('.toward')) })
  expect(all.changes).toEqual([])
  expect(all.left.length).toBeGreaterThan(0)
})

test(
  'mending is the same when asked again',
  () => {
    for (const { made, mended } of answers.slice(0, 2)) expect(mend(made)).toEqual(mended)
  },
  PATIENCE,
)

test('a sound design is left alone', () => {
  const made = design([vFold('beak', 'gutter', 110, -40, 45)])
  expect(mend(made)).toEqual({ design: made, changes: [], left: [] })
})

test('by hand: a beak that sticks out is moved back by what it sticks out', () => {
  // Shut, the tip of 40 mm of ridge and a wedge of 60 degrees leans 20 mm past the apex: 148 - 20 = 128.
  const made = design([vFold('beak', 'gutter', 133, -40, 60)])
  const { changes, left } = mend(made)
  expect(left).toEqual([])
  expect(changes).toHaveLength(1)
  expect(Math.abs((changes[0]?.to ?? 0) - (changes[0]?.from ?? 0))).toBeLessThanOrEqual(5.1)
})

test('by hand: sides that do not match when shut are made to match', () => {
  const moth = gluedMoth({
    base: undefined,
    facet: undefined,
    left: { base: 45, facet: 60 },
    right: { base: 45, facet: 57 },
  })
  const { changes, left } = mend(design([moth]))
  expect(left).toEqual([])
  expect(changes).toHaveLength(1)
  expect(Math.abs((changes[0]?.to ?? 0) - (changes[0]?.from ?? 0))).toBeCloseTo(3, 6)
})

test.each([
  ['wing.cut', 'pins must name mechanisms of the design, as in beak.cut, not wing.cut'],
  ['beak.foot', 'pins of beak must be one of apex, run, cut, lean, wedge, not foot'],
])('the pin %s is refused', (pin, sentence) => {
  const made = design([vFold('beak', 'gutter', 110, -40, 45)])
  expect(() => mend(made, { pins: [pin] })).toThrow(new RangeError(sentence))
})

describe('what a design forgives', () => {
  test('by hand: a beak may lie so much nearer to the edge that its tip comes to it', () => {
    // 45 degrees and 40 mm of ridge: shut, the tip stands square to the gutter at the apex; the slit's foot is 40 mm
    // below. The apex is 20 mm from the far edge, and a bridge of 5 mm must be left: 15 mm.
    const made = design([vFold('beak', 'gutter', 128, -40, 45)])
    const apex = forgives(made, { most: 30 }).find(({ field }) => field === 'apex')
    expect(apex?.more.by).toBeCloseTo(15, 0)
    expect(apex?.more.fails).toBe('bridge')
  })

  test('what is forgiven holds, and a little more does not', () => {
    const made = design([vFold('beak', 'gutter', 128, -40, 45), { ...gluedPond, start: 20, end: 60 }])
    let limits = 0
    for (const { id, field, less, more } of forgives(made, { most: 20 }))
      for (const [{ by, fails }, way] of [
        [less, -1],
        [more, 1],
      ] as const) {
        const off = (size: number): Design =>
          change(made, id, { [field]: numberIn(made, id, field) + way * size })
        expect(isSound(off(by))).toBe(true)
        if (fails === null || fails === 'limits') continue
        limits++
        expect(isSound(off(by + 0.2)), `${id}.${field}`).toBe(false)
      }
    expect(limits).toBeGreaterThan(2)
  })
})

describe('the room on a panel', () => {
  const pond = design([gluedPond])

  test('under a platform is as high as its walls, and over it there is no end', () => {
    // Walls of 20 mm stand along the bisector: square to a page at 180 degrees they are 20 mm high, at 90 degrees
    // 20 times the sine of 45 (geometry.md: rise is height times the sine of half the opening).
    const { cells } = room(pond, 'page/right', { opening: 90 })
    const under = cells.filter(({ at: [a, l] }) => a > 8 && a < 25 && l > 45 && l < 85)
    expect(under.length).toBeGreaterThan(3)
    for (const { height } of under) expect(height).toBeLessThanOrEqual(20 * Math.SQRT1_2 + 1e-6)
    const far = cells.filter(({ at: [, l] }) => l > 110)
    for (const { height } of far) expect(height).toBe(Number.POSITIVE_INFINITY)
    const over = room(pond, 'pond/right', { opening: 180 })
    for (const { height } of over.cells) expect(height).toBe(Number.POSITIVE_INFINITY)
  })

  test('is not where paper is cut out, and not bare where a piece is stuck', () => {
    const cut = design([vFold('beak', 'gutter', 110, -60, 45)])
    const { cells } = room(cut, 'page/right')
    expect(cells.every(({ at: [a, l] }) => !(a > 1 && a < 110 - l - 1 && l > 51 && l < 109))).toBe(true)
    expect(() => room(cut, 'page/top')).toThrow(new RangeError('there is no panel page/top'))
  })
})
