// What a bench knows without a screen: its ranges, steps, keys, memory and strip of readings.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseDesign } from '../../src/paper/index.ts'
import { readLink } from '../../src/widgets/link/read-link.ts'
import type { BenchConfig } from '../../src/widgets/state/config.ts'
import { benchChoices, benchFields, chosen, refusal } from '../../src/widgets/state/fields.ts'
import {
  angleWords,
  digits,
  large,
  small,
  spoken,
  stepOf,
  typed,
  unitSign,
} from '../../src/widgets/state/format.ts'
import { slid, sliderKey } from '../../src/widgets/state/keys.ts'
import type { Past } from '../../src/widgets/state/past.ts'
import { back, differs, forward, NO_PAST, remember } from '../../src/widgets/state/past.ts'
import { nextStep, openingAfter, phaseAt } from '../../src/widgets/state/play.ts'
import { readingHelp, readingHelps } from '../../src/widgets/state/reading-help.ts'
import {
  measured,
  readingNames,
  readingsOf,
  readingValue,
  readingWords,
} from '../../src/widgets/state/readings.ts'
import type { BenchState } from '../../src/widgets/state/state.ts'
import { kept, leadOf, startState, within } from '../../src/widgets/state/state.ts'
import { stepped } from '../../src/widgets/state/stepped.ts'
import { bare, bareConfig, beak, layer } from './benches.ts'

const moth = parseDesign({
  hingebook: 1,
  title: 'Moth',
  card: { width: 105, height: 148 },
  mechanisms: [
    {
      id: 'moth',
      kind: 'glued-v-fold',
      on: 'gutter',
      apex: 40,
      toward: 1,
      base: 60,
      facet: 45,
      foot: 50,
      ridge: 50,
    },
    { id: 'spot', kind: 'cut-v-fold', on: 'moth/ridge', apex: 10, run: 12, cut: 6 },
  ],
})

describe('numbers', () => {
  test('each press of plus or minus goes a whole step on, also where a number follows from rounded sizes', () => {
    expect(stepped(35.3, 1, 1)).toBe(36)
    expect(stepped(35.3, 1, -1)).toBe(35)
    expect(stepped(-0.4, 1, 1)).toBe(0)
    // As shown these are whole numbers: a press that changes nothing of what is shown would look stuck.
    expect(stepped(35.98, 1, 1)).toBe(37)
    expect(stepped(35.02, 1, -1)).toBe(34)
    const fold = parseDesign({
      hingebook: 1,
      title: 'Fold',
      card: { width: 105, height: 148 },
      mechanisms: [{ id: 'fold', kind: 'cut-v-fold', on: 'gutter', apex: 60, run: 7, cut: 5 }],
    })
    const config = { fields: [{ id: 'fold', field: 'wedge' }] }
    const [wedge] = benchFields(fold, config)
    if (!wedge) throw new Error('no wedge')
    for (const way of [1, -1] as const) {
      let state = startState(fold, config)
      for (let k = 0; k < 20; k++) {
        const before = wedge.get(state)
        state = wedge.set(state, stepped(before, 1, way))
        expect(Math.abs(wedge.get(state) - before)).toBeGreaterThan(0.4)
        expect(wedge.get(state)).toBeCloseTo(Math.round(wedge.get(state)), 1)
      }
    }
  })

  test('an inch is 25.4 mm; a press is a millimetre, a degree or a thirty-second of an inch', () => {
    expect(stepOf('mm', 'mm')).toBe(1)
    expect(stepOf('deg', 'in')).toBe(1)
    expect(stepOf('mm', 'in') * 32).toBeCloseTo(25.4, 12)
    expect(digits(25.4, 'mm', 'in')).toBe('1.00')
    expect(digits(25.4, 'deg', 'in')).toBe('25.4')
    expect(digits(25.4, 'mm', 'mm')).toBe('25.4')
    expect(digits(-25.4, 'mm', 'mm')).toBe('-25.4')
    expect(typed('2', 'mm', 'in')).toBeCloseTo(50.8, 12)
    expect(typed('2', 'deg', 'in')).toBe(2)
    expect(typed('.5', 'mm', 'mm')).toBe(0.5)
    expect(unitSign('deg', 'mm')).toBe('°')
    expect(unitSign('mm', 'in')).toBe('in')
    expect(spoken(25.4, 'mm', 'in')).toBe('1.00 inches')
    expect(spoken(25.4, 'mm', 'mm')).toBe('25.4 millimetres')
    expect(angleWords(12.34)).toBe('12.3 degrees')
    expect([small('Slit depth'), large('slit depth')]).toEqual(['slit depth', 'Slit depth'])
  })

  test('what is kept is a thousandth, and never minus nought', () => {
    expect(kept(1.23456)).toBe(1.235)
    expect(Object.is(kept(-0.0001), 0)).toBe(true)
    expect([within(5, 1, 3), within(-5, 1, 3), within(2, 1, 3)]).toEqual([3, 1, 2])
  })
})

describe('keys', () => {
  const plain = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false }
  test.each([
    ['ArrowRight', 1, 0],
    ['ArrowLeft', -1, 0],
    ['ArrowUp', 0, 1],
    ['ArrowDown', 0, -1],
  ])('%s points %i, %i', (key, right, up) => {
    expect(sliderKey({ ...plain, key })).toEqual({ kind: 'nudge', right, up, by: 1 })
    expect(sliderKey({ ...plain, key, altKey: true })).toEqual({ kind: 'nudge', right, up, by: 0.1 })
    expect(sliderKey({ ...plain, key, shiftKey: true, altKey: true })).toMatchObject({ by: 10 })
    expect(sliderKey({ ...plain, key, metaKey: true })).toBeNull()
  })

  test('a page key is ten arrows; home and end are the ends, whatever the unit', () => {
    const press = (key: string) => {
      const found = sliderKey({ ...plain, key })
      return found && slid(found, 50, -7, 180, 2)
    }
    expect([press('PageUp'), press('PageDown'), press('Home'), press('End')]).toEqual([70, 30, -7, 180])
  })
})

describe('playing', () => {
  test('it swings: a whole round takes seven seconds, half of it from shut to flat, a quarter to half open', () => {
    expect(openingAfter(0, 0)).toBe(0)
    expect(openingAfter(0, 1.75)).toBe(90)
    expect(openingAfter(0, 3.5)).toBe(180)
    expect(openingAfter(0, 5.25)).toBe(90)
    expect(openingAfter(0, 7)).toBe(0)
    // Slow at the ends: in the first half second it has come 1 - cos of it (a circle seen from the side).
    expect(openingAfter(0, 0.5)).toBeCloseTo(90 * (1 - Math.cos(Math.PI / 7)), 1)
    expect(openingAfter(phaseAt(90), 0.5)).toBeGreaterThan(90)
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (seconds) => {
        const opening = openingAfter(0, seconds)
        expect(opening >= 0 && opening <= 180).toBe(true)
        expect(opening * 10).toBeCloseTo(Math.round(opening * 10), 9)
      }),
    )
    expect(nextStep(179.9)).toBe(180)
    expect(nextStep(20)).toBe(35)
  })
})

describe('undo', () => {
  const states = Array.from(
    { length: 260 },
    (_, k): BenchState => ({ ...startState(beak, {}), opening: k / 2 }),
  )

  test('goes back and forth through all that was left, and no farther', () => {
    let past = [0, 1, 2].reduce<Past>((now, k) => remember(now, states[k] as BenchState), NO_PAST)
    let now = states[3] as BenchState
    const seen: number[] = []
    for (let step = back(past, now); step; step = back(past, now)) {
      ;({ past, state: now } = step)
      seen.push(now.opening * 2)
    }
    expect(seen).toEqual([2, 1, 0])
    for (let step = forward(past, now); step; step = forward(past, now)) {
      ;({ past, state: now } = step)
      seen.push(now.opening * 2)
    }
    expect(seen).toEqual([2, 1, 0, 1, 2, 3])
    expect(forward(past, now)).toBeNull()
    // A new change forgets what was undone.
    const undone = back(past, now)
    if (!undone) throw new Error('nothing to undo')
    expect(forward(remember(undone.past, undone.state), now)).toBeNull()
  })

  test('keeps as many as nobody goes back, and forgets the oldest first', () => {
    const [first] = states as [BenchState]
    const many = Array.from({ length: 5060 }, (_, k): BenchState => ({ ...first, opening: k / 100 }))
    const past = many.reduce<Past>((all, state) => remember(all, state), NO_PAST)
    expect(past.before).toHaveLength(5000)
    expect(past.before.at(-1)).toBe(many.at(-1))
    expect(past.before[0]).toBe(many[60])
  })

  test('looking from elsewhere is no change, and stays when a change is undone', () => {
    const [a, b] = [states[0], states[1]] as [BenchState, BenchState]
    const turned = { ...a, camera: { turn: 5, tilt: 6 }, station: 20 }
    expect(differs(a, turned)).toBe(false)
    expect(differs(a, b)).toBe(true)
    expect(differs(a, { ...a, design: layer })).toBe(true)
    expect(differs(a, { ...a, point: [1, 2] })).toBe(true)
    const undone = back(remember(NO_PAST, b), turned)
    expect(undone?.state).toMatchObject({ opening: b.opening, camera: turned.camera, station: 20 })
    const again = undone && forward(undone.past, { ...undone.state, station: 30 })
    expect(again?.state).toMatchObject({ opening: a.opening, station: 30 })
  })
})

describe('fields', () => {
  const byKey = (made: typeof beak, config: BenchConfig) =>
    new Map(benchFields(made, config).map((field) => [field.key, field]))

  test('what lies across goes as far as the page is wide, what lies along as far as the crease is long', () => {
    const fields = byKey(beak, {})
    expect(fields.get('beak.cut')).toMatchObject({ min: 0, max: 105, unit: 'mm' })
    expect(fields.get('beak.apex')).toMatchObject({ min: 0, max: 148 })
    expect(fields.get('beak.run')).toMatchObject({ min: -148, max: 148 })
    // The lead's twin comes along with its apex, and then each label says whose it is.
    expect(fields.get('jaw.apex')?.label).toMatch(/^Jaw/)
    expect(fields.get('beak.apex')?.label).toMatch(/^Beak/)
    // On a ridge of 50 mm there are 50 mm, whichever way.
    const spot = byKey(moth, { lead: 'spot' })
    expect(spot.get('spot.cut')).toMatchObject({ min: 0, max: 50 })
    expect(spot.get('spot.apex')).toMatchObject({ min: 0, max: 50, label: 'Apex' })
    expect(spot.get('spot.wedge')?.max).toBeLessThanOrEqual(180)
  })

  test('a chapter may narrow a range, never widen it', () => {
    const config = {
      fields: [
        { id: 'beak', field: 'cut', min: 10, max: 60, label: 'Deep' },
        { id: 'jaw', field: 'cut', min: -10, max: 6000 },
      ],
    }
    const fields = byKey(beak, config)
    expect(fields.get('beak.cut')).toMatchObject({ min: 10, max: 60, label: 'Deep' })
    expect(fields.get('jaw.cut')).toMatchObject({ min: 0, max: 2000 })
    const start = startState(beak, config)
    const cut = fields.get('beak.cut')
    if (!cut) throw new Error('no field')
    expect(cut.get(cut.set(start, 999))).toBe(60)
    expect(cut.get(cut.set(start, -999))).toBe(10)
    expect(cut.get(cut.set(start, 33.33333))).toBe(33.333)
    expect(refusal(cut, 'mm')).toBe('Deep goes from 10.0 mm to 60.0 mm.')
    expect(refusal(cut, 'in')).toBe('Deep goes from 0.39 in to 2.36 in.')
  })

  test('the point of a bare card keeps to its page', () => {
    const start = startState(bare, bareConfig)
    const [across, along] = benchFields(bare, bareConfig)
    if (!across || !along) throw new Error('two fields')
    expect([across.max, along.max, across.min]).toEqual([105, 148, 0])
    expect([across.get(start), along.get(start)]).toEqual([60, 80])
    expect(across.set(start, 999).point).toEqual([105, 80])
    expect(along.set(start, -3).point).toEqual([60, 0])
    expect(across.label).toMatch(/gutter/)
    expect(along.label).toMatch(/edge/)
    expect(across.help).not.toBe(along.help)
    const without = { ...start, point: null }
    expect(across.set(without, 5)).toBe(without)
    expect(across.get(without)).toBe(0)
    expect(benchFields(bare, {})).toEqual([])
  })

  test('a state is a choice and no number; what the file leaves out is the kind’s first', () => {
    const config = {
      fields: [
        { id: 'moth', field: 'side' },
        { id: 'moth', field: 'base' },
      ],
    }
    const [side, ...others] = benchChoices(moth, config)
    if (!side) throw new Error('a choice')
    expect(others).toEqual([])
    expect(benchFields(moth, config).map(({ key }) => key)).toEqual(['moth.base'])
    const start = startState(moth, config)
    const [first, second] = side.options
    expect(side.get(start)).toBe(first?.value)
    expect(side.get(side.set(start, second?.value ?? ''))).toBe(second?.value)
    expect(benchChoices(bare, { fields: [{ id: 'point', field: 'across' }] })).toEqual([])
    const m = beak.mechanisms[0]
    if (m) expect(chosen(m, { name: 'way', label: '', values: ['there', 'back'], words: [] })).toBe('there')
  })
})

describe('the strip of readings', () => {
  const values = (made: typeof beak, config: BenchConfig, opening = 90) => {
    const state = { ...startState(made, config), opening }
    const all = readingsOf(state, readingNames(made, config), measured(state, config))
    return Object.fromEntries(all.map(({ name, value }) => [name, value]))
  }

  test('tells what suits the lead', () => {
    expect(readingNames(beak, {})).toEqual(['rise', 'reach', 'gape', 'wedge', 'margin'])
    expect(readingNames(layer, {})).toEqual(['rise', 'reach', 'depth', 'margin'])
    expect(readingNames(bare, bareConfig)).toEqual(['gape', 'stand-off', 'reach'])
    expect(readingNames(bare, {})).toEqual(['opening'])
    expect(readingNames(beak, { readings: ['stop'] })).toEqual(['stop'])
  })

  test('a layer 34 deep stands 34 high at right angles; the chord of a point is 2 r sin(t/2)', () => {
    // Parallelogram; chord of a circle (Euclid).
    expect(values(layer, {})).toMatchObject({ rise: expect.closeTo(34, 9), depth: 34 })
    expect(values(bare, bareConfig, 60)).toMatchObject({
      gape: expect.closeTo(60, 9),
      'stand-off': expect.closeTo(60, 9),
      reach: 80,
    })
    expect(values(layer, { readings: ['opening', 'stop', 'wedge'] }, 40)).toEqual({ opening: 40, stop: 180 })
    // Rise is depth times the sine of the opening: highest at a right angle.
    expect(values(layer, { readings: ['highest'] }).highest).toBeCloseTo(90, 4)
    expect(values(bare, { readings: ['rise', 'highest', 'stop', 'slit', 'opening'] })).toEqual({
      opening: 90,
    })
    const beakNow = values(beak, { readings: ['slit', 'wedge', 'lean', 'stand-off'] })
    expect(beakNow).toMatchObject({ slit: 38, lean: 0 })
    expect(beakNow.wedge).toBeCloseTo((Math.atan(38 / 40) * 180) / Math.PI, 9)
    // The tip stays its ridge's length from the apex: by Pythagoras that is its distance from the gutter.
    const reach = values(beak, { readings: ['reach'] }).reach ?? Number.NaN
    expect(beakNow['stand-off']).toBeCloseTo(Math.sqrt(40 ** 2 - (110 - reach) ** 2), 9)
    expect(leadOf(beak, { lead: 'jaw' })?.id).toBe('jaw')
    expect(leadOf(beak, {})?.id).toBe('beak')
  })

  test('two tips that share a slit part as the card opens; a lead without a partner has no gape', () => {
    const gape = (opening: number) => values(beak, { readings: ['gape'] }, opening).gape ?? Number.NaN
    expect(gape(180)).toBeCloseTo(0, 6)
    expect(gape(120)).toBeGreaterThan(5)
    const state = startState(layer, {})
    expect(readingValue('gape', state, measured(state, {}))).toBeNaN()
  })

  test('words are those of what is there: a point, a ridge, a tip', () => {
    const point = startState(bare, bareConfig)
    expect(readingWords('gape', point).label).toBe('Gap')
    expect(readingWords('gape', startState(beak, {})).label).toBe('Gape')
    expect(readingHelp('rise', layer.mechanisms[0], {})).not.toMatch(/\btip\b/)
    expect(readingHelp('rise', beak.mechanisms[0], {})).toMatch(/\btip\b/)
    expect(readingHelp('gape', undefined, bareConfig)).toMatch(/^How far the point is from its twin/)
    expect(Object.keys(readingHelps(beak, {}))).toEqual([
      'rise',
      'reach',
      'gape',
      'wedge',
      'margin',
      'behind',
    ])
    expect(Object.keys(readingHelps(bare, bareConfig))).toEqual(['gape', 'stand-off', 'reach'])
  })
})

describe('a link', () => {
  const start = startState(beak, {})

  test('takes both ends of every range, and a hair more of none', () => {
    for (const [key, ends, beyond, get] of [
      ['opening', [0, 180], [-0.001, 180.001], (s: BenchState) => s.opening],
      ['turn', [-180, 180], [-180.001, 180.001], (s: BenchState) => s.camera.turn],
      ['tilt', [0, 90], [-0.001, 90.001], (s: BenchState) => s.camera.tilt],
      ['section', [0, 148], [-0.001, 148.001], (s: BenchState) => s.station],
    ] as const) {
      for (const value of ends) {
        const { state, faults } = readLink(`${key}=${value}`, start)
        expect([faults, get(state)]).toEqual([[], value])
      }
      for (const value of beyond) expect(readLink(`${key}=${value}`, start).faults).toHaveLength(1)
    }
    const spot = startState(bare, bareConfig)
    for (const [key, most] of [
      ['point.across', 105],
      ['point.along', 148],
    ] as const) {
      expect(readLink(`${key}=${most}`, spot).faults).toEqual([])
      expect(readLink(`${key}=${most + 0.001}`, spot).faults).toHaveLength(1)
      expect(readLink(`${key}=-0.001`, spot).faults).toHaveLength(1)
    }
    expect(readLink('point.along=12', spot).state.point).toEqual([60, 12])
  })

  test('shows no more than a little of a long word', () => {
    const long = 'x'.repeat(25)
    expect(readLink(`opening=${long}`, start).faults[0]).toContain(`“${'x'.repeat(21)}...”`)
    expect(readLink(`opening=${long.slice(1)}`, start).faults[0]).toContain(`“${'x'.repeat(24)}”`)
    expect(readLink('&&=4&opening=20', start)).toMatchObject({ faults: [], state: { opening: 20 } })
  })

  test('of fields that do not go together only the blamed one falls away', () => {
    const { state, faults } = readLink('beak.cut=30&jaw.lean=-60&jaw.cut=30', start)
    expect(faults).toHaveLength(1)
    expect(state.design.mechanisms[0]).toMatchObject({ cut: 30 })
    expect(state.design.mechanisms[1]).toMatchObject({ lean: 0, cut: 30 })
  })
})
