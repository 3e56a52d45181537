// What may be off about a card: how readings are weighed, and where a slip ends that gives no card at all.
import { describe, expect, test } from 'vitest'
import type { Reading } from '../../../src/paper/answers/trials.ts'
import {
  concerned,
  errors,
  heldWrongly,
  off,
  openingTrial,
  settingTrial,
  settingTrials,
  together,
} from '../../../src/paper/answers/trials.ts'
import type { Design } from '../../../src/paper/index.ts'
import { likelyPointSlips, likelySlips, settable, settingOf } from '../../../src/paper/index.ts'
import { layer } from '../shared/check-designs.ts'
import { design, gluedMoth, vFold } from '../shared/designs.ts'

const step = design([layer('step', 'gutter', 50, 90, 34)])

const rise = (value: number, opening = 90): Reading => ({ what: 'rise', id: 'step', opening, value })

type Made = Design['mechanisms'][number]

const only = (of: Design): Made => of.mechanisms[0] as Made

const setting = (m: Made, name: string) => {
  const found = settable(m).find((one) => one.name === name)
  if (!found) throw new Error(name)
  return found
}

describe('readings are weighed', () => {
  // Common practice, no source: a ruler is read to half a millimetre, a protractor to a degree.
  test('a ruler’s by half a millimetre, a protractor’s by a degree', () => {
    // The ridge of a layer stands as high as its shallower cut is deep at 90 degrees, over the middle of its stretch.
    const [up, down] = errors(step, [rise(35), rise(33.5)])
    expect(up).toBeCloseTo(-2, 9)
    expect(down).toBeCloseTo(1, 9)
    const [reach] = errors(step, [{ what: 'reach', id: 'step', opening: 90, value: 69 }])
    expect(reach).toBeCloseTo(2, 9)
    // Base 60 and facet 45 stop at arccos(-1/3), the octahedron's angle.
    const moth = design([gluedMoth({ base: 60, facet: 45 })])
    const [stop] = errors(moth, [{ what: 'stop', id: 'moth', value: 110 }])
    expect(stop).toBeCloseTo((Math.acos(-1 / 3) * 180) / Math.PI - 110, 9)
    // What never stops is told to open flat.
    expect(errors(step, [{ what: 'stop', id: 'step', value: 178 }])[0]).toBeCloseTo(2, 9)
  })

  test('each at its own opening, whatever was read before it', () => {
    // Depth times the sine of the opening.
    const [a, b, c] = errors(step, [rise(0, 90), rise(0, 30), rise(0, 90)])
    expect(a).toBeCloseTo(68, 9)
    expect(b).toBeCloseTo(34, 9)
    expect(c).toBeCloseTo(68, 9)
  })

  test('the gape of two tips is the straight way between them', () => {
    const beaks = design([vFold('upper', 'gutter', 100, -30, 45), vFold('lower', 'gutter', 40, 30, 45)])
    // Two halves of one slit lie tip to tip when the card is flat.
    const gape = (opening: number): Reading => ({
      what: 'gape',
      between: ['upper', 'lower'],
      opening,
      value: 0,
    })
    expect(errors(beaks, [gape(180)])[0]).toBeCloseTo(0, 9)
    // Half open tan(f/2) = tan 45 cos 45, so cos f = 1/3: each tip leans back by 30 (1 - 1/3).
    expect(errors(beaks, [gape(90)])[0]).toBeCloseTo((2 * 30 * (2 / 3)) / 0.5, 9)
  })

  test('of what is not there, or shares no slit, are refused', () => {
    expect(() => errors(step, [{ what: 'stop', id: 'owl', value: 1 }])).toThrow('there is no mechanism owl')
    const apart = design([vFold('upper', 'gutter', 100, -30, 45), vFold('lower', 'gutter', 30, 20, 45)])
    expect(() =>
      errors(apart, [{ what: 'gape', between: ['upper', 'lower'], opening: 90, value: 1 }]),
    ).toThrow('upper and lower share no slit')
  })
})

test('of a design only what a reading can depend on is kept', () => {
  const whole = design([
    vFold('upper', 'gutter', 100, -30, 45),
    vFold('lower', 'gutter', 40, 30, 45),
    vFold('eye', 'upper/ridge', 8, 10, 30),
    layer('reed', 'gutter', 120, 140, 9),
  ])
  const kept = (...readings: Reading[]) => concerned(whole, readings).mechanisms.map(({ id }) => id)
  expect(kept({ what: 'rise', id: 'eye', opening: 90, value: 1 })).toEqual(['upper', 'lower', 'eye'])
  expect(kept({ what: 'rise', id: 'lower', opening: 90, value: 1 })).toEqual(['upper', 'lower'])
  expect(kept({ what: 'stop', id: 'reed', value: 1 })).toEqual(['reed'])
  expect(kept({ what: 'gape', between: ['upper', 'lower'], opening: 90, value: 1 })).toEqual([
    'upper',
    'lower',
  ])
  expect(() => kept({ what: 'stop', id: 'owl', value: 1 })).toThrow('there is no mechanism owl')
})

describe('a card held wrongly', () => {
  test('is held between shut and flat, both told', () => {
    const trial = openingTrial(90, (at) => [at])
    expect(trial).toMatchObject({ id: 'card', field: 'opening', unit: 'deg', from: 90, hand: 3 })
    expect(trial.errors(-90)).toEqual([0])
    expect(trial.errors(90)).toEqual([180])
    expect(trial.errors(5)).toEqual([95])
    expect(trial.errors(-90.001)).toBeNull()
    expect(trial.errors(90.001)).toBeNull()
  })

  test('is asked about only where all was read at one opening; a stop is read at none', () => {
    const [held, ...more] = heldWrongly(step, [rise(17), { what: 'stop', id: 'step', value: 180 }])
    expect(more).toEqual([])
    expect(held?.from).toBe(90)
    // Half as high as the cut is deep: at 30 degrees, or at 150.
    for (const by of [-60, 60]) expect(held?.errors(by)?.[0]).toBeCloseTo(0, 9)
    expect(held?.errors(0)?.[0]).toBeCloseTo(34, 9)
    expect(heldWrongly(step, [rise(17), rise(17, 80)])).toEqual([])
    expect(heldWrongly(step, [{ what: 'stop', id: 'step', value: 180 }])).toEqual([])
  })
})

describe('a setting made wrongly', () => {
  test('goes to the ends of its range and to nought, and no further', () => {
    const left = setting(only(step), 'left')
    expect(settingOf(only(off(step, only(step), left, -34) ?? step), 'left')).toBe(0)
    expect(off(step, only(step), left, -34.001)).toBeNull()
    expect(settingOf(only(off(step, only(step), left, 2000 - 34) ?? step), 'left')).toBe(2000)
    expect(off(step, only(step), left, 2000 - 33)).toBeNull()
  })

  test('does not turn round', () => {
    const beak = design([vFold('beak', 'gutter', 100, -30, 45)])
    const run = setting(only(beak), 'run')
    expect(settingOf(only(off(beak, only(beak), run, 29) ?? beak), 'run')).toBe(-1)
    expect(off(beak, only(beak), run, 31)).toBeNull()
  })

  test('never leaves a stretch that ends before it begins', () => {
    const end = setting(only(step), 'end')
    expect(off(step, only(step), end, -39)).not.toBeNull()
    expect(off(step, only(step), end, -41)).toBeNull()
  })

  test('is told with its own field, unit and hand', () => {
    const depth = settingTrial(step, only(step), setting(only(step), 'depth'), [rise(33)])
    expect(depth).toMatchObject({ id: 'step', field: 'depth', label: 'Depth', unit: 'mm', from: 34, hand: 1 })
    expect(depth).not.toHaveProperty('said')
    expect(depth.errors(-1)?.[0]).toBeCloseTo(0, 9)
    expect(depth.errors(0)?.[0]).toBeCloseTo(2, 9)
    expect(depth.errors(-35)).toBeNull()
    const moth = design([gluedMoth()])
    const [base] = settingTrials(moth, only(moth), []).filter(({ field }) => field === 'right.base')
    // Common practice, no source: an angle is cut to a degree and a half.
    expect(base).toMatchObject({ unit: 'deg', from: 45, hand: 1.5 })
    const [apex] = settingTrials(moth, only(moth), []).filter(({ field }) => field === 'apex')
    expect(apex?.said).toEqual({ as: 'place' })
  })

  test('moves two sides at once where they are alike', () => {
    expect(together(only(step)).map(({ name }) => name)).toEqual(['depth'])
    expect(together(only(design([layer('step', 'gutter', 50, 90, 34, 30)])))).toEqual([])
  })
})

describe('slips that a ruler tells', () => {
  const fieldsAt = (reading: number) =>
    likelySlips(step, 'step', 90, reading).map(({ field, slip }) => [field, Number(slip.toFixed(3))])

  // Depth times sine: 34 at 90 degrees, so the depth is off by what the ruler is off.
  test('are no larger than a hand’s', () => {
    expect(fieldsAt(34 - 14.9)).toContainEqual(['depth', -14.9])
    expect(fieldsAt(34 - 15)).toContainEqual(['depth', -15])
    expect(fieldsAt(34 - 15.5)).toEqual([])
  })

  test('and no smaller than can be seen', () => {
    expect(fieldsAt(34 - 0.051)).toContainEqual(['depth', -0.051])
    expect(fieldsAt(34 - 0.049).map(([field]) => field)).not.toContain('depth')
  })

  // Round a turning point both ways lead there: the nearer one is told.
  test('are the nearer of two ways', () => {
    const at80 = likelySlips(step, 'step', 80, 34 * Math.sin((88 * Math.PI) / 180))
    expect(at80.find(({ field }) => field === 'opening')?.to).toBeCloseTo(88, 6)
    const at97 = likelySlips(step, 'step', 97, 34 * Math.sin((95 * Math.PI) / 180))
    expect(at97.find(({ field }) => field === 'opening')?.to).toBeCloseTo(95, 6)
  })

  test('of a point do not lead it over the gutter, and leave out what is too small', () => {
    // The chord of twins r from the gutter at 60 degrees is r.
    expect(likelyPointSlips([10, 40], 60, 0).map(({ field }) => field)).toEqual(['across'])
    expect(likelyPointSlips([60, 40], 60, 60)).toEqual([])
    const [first, second] = likelyPointSlips([60, 40], 60, 58)
    expect(first).toMatchObject({
      id: 'point',
      field: 'across',
      label: 'Distance to the gutter',
      unit: 'mm',
      from: 60,
    })
    expect(first?.slip).toBeCloseTo(-2, 9)
    expect(second).toMatchObject({ id: 'card', field: 'opening' })
    expect(second?.to).toBeCloseTo((2 * Math.asin(58 / 120) * 180) / Math.PI, 9)
  })
})
