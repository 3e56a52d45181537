import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isLink, linkOf } from '../../src/widgets/link/link.ts'
import { readLink } from '../../src/widgets/link/read-link.ts'
import { linkTo } from '../../src/widgets/model/address.ts'
import { benchModel } from '../../src/widgets/model/bench-model.ts'
import { offeredBy } from '../../src/widgets/model/offered.ts'
import { benchFields } from '../../src/widgets/state/fields.ts'
import { cutAt, opened, seenFrom, startState } from '../../src/widgets/state/state.ts'
import { bare, bareConfig, beak, dummy } from './benches.ts'

const start = startState(beak, {})

describe('a link', () => {
  test('the page’s own state needs none', () => {
    expect(linkOf(start, start)).toBe('')
    expect(readLink('', start)).toEqual({ state: start, faults: [] })
  })

  test('any state a reader can reach comes back exactly', () => {
    const heron = dummy('heron')
    const config = {
      fields: heron.mechanisms.flatMap(({ id }) => [
        { id, field: 'cut' },
        { id, field: 'lean' },
        { id, field: 'apex' },
      ]),
    }
    const first = startState(heron, config)
    const fields = benchFields(heron, config)
    const setting = fc.tuple(fc.nat(fields.length - 1), fc.double({ min: -20, max: 90, noNaN: true }))
    fc.assert(
      fc.property(
        fc.array(setting, { maxLength: 5 }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        fc.double({ min: -400, max: 400, noNaN: true }),
        fc.option(fc.double({ min: 0, max: 148, noNaN: true })),
        (settings, opening, turn, station) => {
          let state = cutAt(seenFrom(opened(first, opening), { turn, tilt: 20 }), station)
          for (const [k, value] of settings) state = fields[k]?.set(state, value) ?? state
          const read = readLink(linkOf(state, first), first)
          expect(read.faults).toEqual([])
          expect(linkOf(read.state, state)).toBe('')
          expect({ ...read.state, design: null }).toEqual({ ...state, design: null })
        },
      ),
      { numRuns: 60 },
    )
  })

  test('it is short and speaks the file’s own words', () => {
    const bench = benchModel(beak, {})
    const slit = offeredBy(bench).fields.find(({ key }) => key === 'beak.cut')
    bench.step('cut', (now) => opened(slit?.set(now, 42) ?? now, 96))
    expect(linkTo(bench)).toBe('beak.cut=42&jaw.cut=42&opening=96')
  })

  test('a point of a bare card comes back too', () => {
    const first = startState(bare, bareConfig)
    const state = { ...first, point: [42.5, 80] as const }
    expect(linkOf(state, first)).toBe('point.across=42.5')
    expect(readLink('point.across=42.5', first).state.point).toEqual([42.5, 80])
  })

  test('a place of the page is not taken for a link', () => {
    expect(isLink('#make-it')).toBe(false)
    expect(isLink('#opening=20')).toBe(true)
  })
})

describe('a bad link', () => {
  test('a number out of range names the field and the range, and nothing else is lost', () => {
    const { state, faults } = readLink('#beak.cut=5000&jaw.cut=38&opening=120&beak.lean=2&jaw.lean=2', start)
    expect(faults).toEqual([
      'The link’s slit (beak.cut) must be a number from 0 to 105 mm, not “5000”. The page’s own value stands.',
    ])
    expect(state.opening).toBe(120)
    expect(state.design.mechanisms[0]).toMatchObject({ cut: 38, lean: 2 })
  })

  test.each([
    [
      'opening=200',
      'The link’s opening (opening) must be a number from 0 to 180 degrees, not “200”. The page’s own value stands.',
    ],
    [
      'opening=wide',
      'The link’s opening (opening) must be a number from 0 to 180 degrees, not “wide”. The page’s own value stands.',
    ],
    [
      'opening=',
      'The link’s opening (opening) must be a number from 0 to 180 degrees, not “”. The page’s own value stands.',
    ],
    ['owl.cut=3', 'The link speaks of “owl.cut”, which this card does not have. It was left out.'],
    ['beak.feather=3', 'The link speaks of “beak.feather”, which this card does not have. It was left out.'],
    ['point.across=3', 'The link speaks of “point.across”, which this card does not have. It was left out.'],
    [
      'section=-4',
      'The link’s place of the section (section) must be a number from 0 to 148 mm, not “-4”. The page’s own value stands.',
    ],
  ])('%s', (link, sentence) => {
    const { state, faults } = readLink(link, start)
    expect(faults).toEqual([sentence])
    expect(state).toEqual(start)
  })

  test('values that do not go together are told, and the page’s own stand in their place', () => {
    const { state, faults } = readLink('beak.lean=60&opening=30', start)
    expect(faults).toHaveLength(1)
    expect(faults[0]).toContain('lean')
    expect(state.design.mechanisms[0]).toMatchObject({ lean: 0 })
    expect(state.opening).toBe(30)
  })

  test('whatever stands in the address, a bench comes up', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        const { state } = readLink(text, start)
        expect(state.design.mechanisms).toHaveLength(2)
      }),
    )
    fc.assert(
      fc.property(
        fc.constantFrom(
          'beak.apex',
          'beak.run',
          'beak.cut',
          'beak.lean',
          'jaw.run',
          'opening',
          'turn',
          'tilt',
        ),
        fc.double(),
        (key, value) => {
          const { state } = readLink(`${key}=${value}`, start)
          expect(state.opening).toBeGreaterThanOrEqual(0)
          expect(state.opening).toBeLessThanOrEqual(180)
        },
      ),
    )
  })
})
