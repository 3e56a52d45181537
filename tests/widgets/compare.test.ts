import { describe, expect, test } from 'vitest'
import type { Slip } from '../../src/paper/index.ts'
import { change, kindNamed, measure } from '../../src/paper/index.ts'
import {
  compare,
  compareSeveral,
  comparisonSays,
  modelSays,
  severalSay,
  slipSays,
} from '../../src/widgets/measure/compare.ts'
import { bare, bareConfig, beak, dummy, layer } from './benches.ts'

const at90 = { opening: 90 }

describe('a ruler’s reading beside the model', () => {
  test('the model says the depth for a layer at 90 degrees', () => {
    expect(modelSays(layer, {}, null, at90)).toBeCloseTo(34, 9)
  })

  test('as near as a pencil line is right', () => {
    const found = compare(layer, {}, null, at90, 34.4)
    expect(found.slips).toEqual([])
    expect(comparisonSays(found, 'mm')).toEqual(['That is right, to the width of a pencil line. Well made.'])
  })

  test('it says how far off, and the likeliest slip first', () => {
    const said = comparisonSays(compare(layer, {}, null, at90, 32), 'mm', 'body')
    // One fault, told once: not the left depth, the right one, and both.
    expect(said[0]).toBe('You are 2.0 mm low.')
    expect(said[1]).toBe('The likeliest slip: the depth is 2.0 mm short.')
    expect(said.join(' ')).not.toMatch(/left|right/)
  })

  test('what no small slip explains is told to be measured again', () => {
    const said = comparisonSays(compare(layer, {}, null, at90, 90), 'mm', 'body')
    expect(said).toEqual([
      'You are 56.0 mm high.',
      'No single small slip explains that. Measure once more, and check the opening.',
    ])
  })

  test('what no hand would be off by is not offered', () => {
    // At 90 degrees a layer rises by its depth: 5 mm low is a depth 5 mm short, 6 mm low no slip of a hand.
    const says = (reading: number) => comparisonSays(compare(layer, {}, null, at90, reading), 'mm', 'body')
    expect(says(29.1)[1]).toBe('The likeliest slip: the depth is 4.9 mm short.')
    expect(says(28)[1]).toMatch(/^No single small slip explains that/)
    for (const { slip } of compare(beak, {}, null, at90, 26).slips) expect(Math.abs(slip)).toBeLessThan(6.01)
  })

  test('the other half of the beak can be measured too', () => {
    const { model } = compare(beak, {}, null, { id: 'jaw', opening: 90 }, 25)
    // tan(delta) = slit cos(45) / run; rise = run sin(2 delta) sin(45)
    const delta = Math.atan((38 / 34) * Math.SQRT1_2)
    expect(model).toBeCloseTo(34 * Math.sin(2 * delta) * Math.SQRT1_2, 9)
  })

  test('the gap of a bare card is measured through the air', () => {
    const found = compare(bare, bareConfig, [60, 80], at90, 82)
    expect(found.model).toBeCloseTo(60 * Math.SQRT2, 9)
    expect(comparisonSays(found, 'mm').join(' ')).toContain('distance to the gutter is 2.0 mm short')
  })

  /** A slip in a number of a kind, spoken of as that kind says. */
  const slip = (id: string, kind: string, name: string, from: number, to: number): Slip => {
    const { fields = [], derived = [] } = kindNamed(kind) ?? {}
    const number = [...fields, ...derived].find((one) => one.name === name)
    if (!number) throw new Error(`${kind} has no ${name}`)
    const { label, unit, said } = number
    const off = from < 0 ? from - to : to - from
    return { id, field: name, label, unit, from, to, slip: off, ...(said ? { said } : {}) }
  }

  test.each([
    [slip('beak', 'cut-v-fold', 'cut', 38, 36.1), 'the slit is 1.9 mm short'],
    [slip('jaw', 'cut-v-fold', 'cut', 38, 40), 'the slit of the jaw is 2.0 mm long'],
    [slip('beak', 'cut-v-fold', 'run', -40, -38), 'the way from the apex to the slit is 2.0 mm short'],
    [slip('beak', 'cut-v-fold', 'lean', 0, 2), 'the end of the slit is 2.0 mm off along the fold'],
    [slip('beak', 'cut-v-fold', 'apex', 60, 58), 'the apex is 2.0 mm too far towards the start of the fold'],
    [
      slip('roof', 'cut-layer', 'end', 60, 62),
      'the end of the roof is 2.0 mm too far from the start of the fold',
    ],
    [slip('back', 'glued-tent', 'wall', 44, 42), 'both walls of the back are 2.0 mm short'],
    [slip('moth', 'glued-v-fold', 'left.base', 45, 47), 'the left base angle of the moth is 2.0° too large'],
    [
      { id: 'card', field: 'opening', label: 'Opening', unit: 'deg', from: 90, to: 84, slip: -6 } as const,
      'the card was opened to 84.0°, not 90.0°',
    ],
  ])('%o', (one, sentence) => {
    expect(slipSays(one, 'mm', 'beak')).toBe(sentence)
  })
})

describe('several readings of one card', () => {
  /** A ruler reads to half a millimetre. */
  const ruler = (x: number | undefined): number => Math.round((x ?? Number.NaN) * 2) / 2
  const short = measure(change(beak, 'beak', { cut: 35.5 }), 90)
  const rise = ruler(short.tips.beak?.rise)
  const reach = ruler(short.tips.beak?.reach)
  const gape = ruler(short.gapes[0]?.gape)

  test('rise, reach and gape tell a slit too short from all else, and by how much', () => {
    const found = compareSeveral(beak, {}, at90, { rise, reach, gape })
    const { causes } = severalSay(found, 90, 'mm', 'beak')
    expect(causes[0]).toMatch(/^Most likely: the slit is 2\.\d mm short\.$/)
    const [slit] = found.causes
    expect(slit?.slip?.slip).toBeGreaterThan(-3)
    expect(slit?.slip?.slip).toBeLessThan(-2)
  })

  test('two of them are less sure than three', () => {
    const slitOf = (causes: ReturnType<typeof compareSeveral>['causes']) =>
      causes.find(({ slip }) => slip?.field === 'cut')?.sure ?? 0
    const two = compareSeveral(beak, {}, at90, { rise, reach })
    const three = compareSeveral(beak, {}, at90, { rise, reach, gape })
    expect(slitOf(three.causes)).toBeGreaterThan(slitOf(two.causes))
    expect(two.causes.length).toBeGreaterThan(1)
    expect(two.causes.length).toBeLessThanOrEqual(3)
  })

  test('each reading is told beside the model', () => {
    const now = measure(beak, 90).tips.beak
    const { says } = severalSay(
      compareSeveral(beak, {}, at90, { rise: now?.rise ?? 0, reach: (now?.reach ?? 0) - 2 }),
      90,
      'mm',
      'beak',
    )
    expect(says[0]).toMatch(/^At 90° the model says rise \d+\.\d mm and reach \d+\.\d mm\.$/)
    expect(says[1]).toBe('Your rise is right and your reach is 2.0 mm too small.')
  })

  test('all of them right is right, and nothing is blamed', () => {
    const now = measure(beak, 90)
    const found = compareSeveral(beak, {}, at90, {
      rise: (now.tips.beak?.rise ?? 0) + 0.3,
      reach: (now.tips.beak?.reach ?? 0) - 0.3,
      gape: now.gapes[0]?.gape ?? 0,
    })
    expect(found.causes).toEqual([])
    expect(severalSay(found, 90, 'mm', 'beak').says[1]).toBe(
      'Yours is right, to the width of a pencil line. Well made.',
    )
  })

  test('two sides that no reading tells apart are one cause', () => {
    const { causes } = severalSay(compareSeveral(layer, {}, at90, { rise: 30, reach: 70 }), 90, 'mm', 'body')
    expect(causes).toEqual(['Most likely: the left or right depth is 4.0 mm short.'])
  })

  test('the slit that two halves share is one cause, whichever half was drawn wrongly', () => {
    const off = measure(change(beak, 'beak', { run: -37.5 }), 90).tips.beak
    const { causes } = compareSeveral(beak, {}, at90, { rise: ruler(off?.rise), reach: ruler(off?.reach) })
    expect(causes[0]?.slip).toMatchObject({ id: 'beak', field: 'run' })
    expect(causes.filter(({ slip }) => slip?.id === 'jaw')).toEqual([])
  })

  test('a piece that stops early: the angle at which it stops is a reading too', () => {
    const moth = dummy('moth')
    // Base larger than facet stops the card. Source: cos²(stop/2) = (cos² facet − cos² base) / sin² base.
    const stops = change(moth, 'moth', { 'left.base': 70, 'right.base': 70 })
    const facet = 64
    const made = change(stops, 'moth', { 'left.facet': facet, 'right.facet': facet })
    const cos2 = (d: number) => Math.cos((d * Math.PI) / 180) ** 2
    const half = Math.acos(Math.sqrt((cos2(facet) - cos2(70)) / (1 - cos2(70))))
    const found = compareSeveral(made, { lead: 'moth' }, at90, { stop: 90 })
    expect(found.reads[0]?.model).toBeCloseTo((half * 360) / Math.PI, 3)
  })

  test('what no single slip explains is told to be measured again', () => {
    const found = compareSeveral(layer, {}, at90, { rise: 80, reach: 10 })
    expect(found.causes).toEqual([])
    expect(severalSay(found, 90, 'mm', 'body').says.at(-1)).toMatch(/^No single small slip explains that\./)
  })

  test('inches are told in inches', () => {
    const { says } = severalSay(compareSeveral(layer, {}, at90, { rise: 30, reach: 70 }), 90, 'in', 'body')
    expect(says.join(' ')).toMatch(/your rise is 0\.16 in too small/i)
  })
})
