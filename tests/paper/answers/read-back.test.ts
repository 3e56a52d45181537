import { describe, expect, test } from 'vitest'
import type { Design, Reading } from '../../../src/paper/index.ts'
import { change, measure, modelOf, readBack, settingOf } from '../../../src/paper/index.ts'
import { design, gluedMoth, gluedPond, vFold } from '../shared/designs.ts'

/** A ruler held to the finished card: half a millimetre. */
const ruler = (x: number): number => Math.round(x * 2) / 2

/** What a maker would read off a card, at these openings. */
function readings(made: Design, openings: readonly number[]): Reading[] {
  const tips = openings.flatMap((opening) =>
    Object.entries(measure(made, opening).tips).flatMap(([id, { rise, reach }]): Reading[] => [
      { what: 'rise', id, opening, value: ruler(rise) },
      { what: 'reach', id, opening, value: ruler(reach) },
    ]),
  )
  const stops = modelOf(made).builds.flatMap(({ mechanism: { id }, build: { range } }): Reading[] =>
    range && range[1] < 180 ? [{ what: 'stop', id, value: Math.round(range[1]) }] : [],
  )
  return [...tips, ...stops]
}

const openings = [60, 90, 120, 150]

const cards: Record<string, Design> = {
  beak: design([vFold('beak', 'gutter', 110, -60, 40)]),
  'small beak': design([vFold('beak', 'gutter', 80, -45, 35)]),
  'a beak with an eye': design([
    vFold('beak', 'gutter', 120, -70, 42),
    vFold('eye', 'beak/ridge', 12, 30, 35),
  ]),
  moth: design([gluedMoth({ base: 60, facet: 45, foot: 50, ridge: 70 })]),
  'wide moth': design([gluedMoth({ apex: 40, foot: 50, ridge: 60 })]),
  tent: design([
    {
      id: 'tent',
      kind: 'glued-tent',
      on: 'gutter',
      start: 40,
      end: 90,
      leftFoot: 30,
      rightFoot: 30,
      leftWall: 50,
      rightWall: 50,
    },
  ]),
  pond: design([gluedPond]),
}

/** Slips that a ruler at the tip can tell apart from all others of that card, or from all but one. */
const slips: readonly (readonly [card: string, id: string, field: string])[] = [
  ['beak', 'beak', 'apex'],
  ['beak', 'beak', 'run'],
  ['beak', 'beak', 'cut'],
  ['small beak', 'beak', 'apex'],
  ['small beak', 'beak', 'run'],
  ['small beak', 'beak', 'cut'],
  ['a beak with an eye', 'beak', 'apex'],
  ['a beak with an eye', 'beak', 'run'],
  ['a beak with an eye', 'beak', 'cut'],
  ['a beak with an eye', 'eye', 'apex'],
  ['a beak with an eye', 'eye', 'cut'],
  ['moth', 'moth', 'apex'],
  ['moth', 'moth', 'ridge'],
  ['moth', 'moth', 'right.base'],
  ['moth', 'moth', 'right.facet'],
  ['moth', 'moth', 'left.facet'],
  ['wide moth', 'moth', 'apex'],
  ['wide moth', 'moth', 'ridge'],
  ['wide moth', 'moth', 'right.base'],
  ['wide moth', 'moth', 'right.facet'],
  ['tent', 'tent', 'rightWall'],
  ['tent', 'tent', 'leftFoot'],
  ['pond', 'pond', 'height'],
]

/** Settings that do the very same to the tip cannot be told apart: mirror twins, and both ends of a tent. */
const twinOf = (field: string): string =>
  field.startsWith('right')
    ? field.replace('right', 'left')
    : field.startsWith('left')
      ? field.replace('left', 'right')
      : field

describe('from a ruler back to the hand', () => {
  test('a slip of two either way is among the first two named in most cases, and by about two', () => {
    const seen = slips.flatMap(([name, id, field]) =>
      [-2, 2].map((by) => {
        const made = cards[name] as Design
        const m = made.mechanisms.find((one) => one.id === id)
        if (!m) throw new Error(id)
        const designed = settingOf(m, field)
        const found = readBack(made, readings(change(made, id, { [field]: designed + by }), openings))
        const rank = found.findIndex(
          ({ slip }) => slip?.id === id && (slip.field === field || slip.field === twinOf(field)),
        )
        const slip = found[rank]?.slip
        return {
          what: `${name} ${field} ${by}`,
          rank,
          made: slip ? slip.made - slip.designed : Number.NaN,
          by,
        }
      }),
    )
    const missed = seen.filter(({ rank }) => rank < 0 || rank > 1)
    expect(missed.length, JSON.stringify(missed)).toBeLessThanOrEqual(seen.length / 10)
    expect(seen.filter(({ rank }) => rank === 0).length).toBeGreaterThan(0.7 * seen.length)
    const known = seen.filter(({ rank }) => rank === 0)
    expect(known.filter(({ made, by }) => Math.abs(made - by) < 1).length).toBeGreaterThan(0.8 * known.length)
  })

  test('a card made right: the likeliest is that nothing is off', () => {
    for (const made of Object.values(cards)) {
      const [first] = readBack(made, readings(made, openings))
      expect(first?.slip).toBeNull()
      expect(first?.left).toBeLessThan(1)
    }
  })

  test('the gape of two beaks that share a slit tells a slit too short from the two rises together', () => {
    const made = design([vFold('upper', 'gutter', 115, -45, 42), vFold('lower', 'gutter', 25, 45, 42)])
    const short = change(made, 'upper', {
      cut: settingOf(made.mechanisms[0] ?? { id: '', kind: '', on: '' }, 'cut') - 2,
    })
    const at = [60, 90, 120]
    const gapes = at.map(
      (opening): Reading => ({
        what: 'gape',
        between: ['upper', 'lower'],
        opening,
        value: ruler(measure(short, opening).gapes[0]?.gape ?? Number.NaN),
      }),
    )
    const found = readBack(made, [...gapes, ...readings(short, at)])
    expect(found[0]?.slip).toMatchObject({ field: 'cut' })
    expect((found[0]?.slip?.made ?? 0) - (found[0]?.slip?.designed ?? 0)).toBeCloseTo(-2, 0)
  })

  // Evidence of a linear Gaussian model, where it is exact: D. MacKay, Information Theory, Inference, and Learning
  // Algorithms, ch. 28 [memory]. The apex moves the tip's reach one for one; ruler 0.5, hand 1.
  test('one reading, one straight effect: slip against no slip as Bayes’ rule has it', () => {
    const made = cards.beak as Design
    const reach = measure(made, 90).tips.beak?.reach ?? Number.NaN
    for (const off of [0, 0.5, 1.5, -2]) {
      const found = readBack(made, [{ what: 'reach', id: 'beak', opening: 90, value: reach + off }])
      const apex = found.find(({ slip }) => slip?.field === 'apex')
      const right = found.find(({ slip }) => slip === null)
      const [ruled, both] = [0.5 ** 2, 0.5 ** 2 + 1]
      const odds = Math.sqrt(ruled / both) * Math.exp((off * off * (1 / ruled - 1 / both)) / 2)
      expect((apex?.sure ?? Number.NaN) / (right?.sure ?? Number.NaN) / odds).toBeCloseTo(1, 6)
      expect((apex?.slip?.made ?? 0) - (apex?.slip?.designed ?? 0)).toBeCloseTo(off / both, 5)
    }
  })

  test('by how much: the slip that the readings ask for, not shrunk by what a hand usually does', () => {
    const made = cards.beak as Design
    const short = measure(change(made, 'beak', { cut: 36.5 }), 90).tips.beak
    const found = readBack(made, [
      { what: 'rise', id: 'beak', opening: 90, value: short?.rise ?? Number.NaN },
      { what: 'reach', id: 'beak', opening: 90, value: short?.reach ?? Number.NaN },
    ])
    const slit = found.find(({ slip }) => slip?.field === 'cut')?.slip
    expect(slit?.fitted).toBeCloseTo(36.5, 4)
    expect(slit?.made).toBeGreaterThan(36.5)
    expect(slit?.made).toBeLessThan(40)
  })

  test('readings at one opening: the card may have been held at another', () => {
    const made = cards.beak as Design
    const at84 = measure(made, 84).tips.beak
    const read = (opening: number): Reading[] => [
      { what: 'rise', id: 'beak', opening, value: at84?.rise ?? Number.NaN },
      { what: 'reach', id: 'beak', opening, value: at84?.reach ?? Number.NaN },
    ]
    const held = readBack(made, read(90)).find(({ slip }) => slip?.id === 'card')
    expect(held?.slip).toMatchObject({ field: 'opening', unit: 'deg', designed: 90 })
    expect(held?.slip?.fitted).toBeCloseTo(84, 4)
    const several = readBack(made, [...read(90), ...read(100)])
    expect(several.find(({ slip }) => slip?.id === 'card')).toBeUndefined()
  })

  test('what is left is told in ruler errors, root mean square over all that was read', () => {
    const made = cards.beak as Design
    const { rise, reach } = measure(made, 90).tips.beak ?? { rise: Number.NaN, reach: Number.NaN }
    const left = (...read: Reading[]) => readBack(made, read).find(({ slip }) => slip === null)?.left
    const at = { id: 'beak', opening: 90 }
    // A ruler is read to half a millimetre: 1.5 mm are three of them.
    expect(left({ what: 'reach', ...at, value: reach + 1.5 })).toBeCloseTo(3, 9)
    expect(
      left({ what: 'reach', ...at, value: reach + 1.5 }, { what: 'rise', ...at, value: rise - 2 }),
    ).toBeCloseTo(Math.sqrt((9 + 16) / 2), 9)
    expect(left()).toBe(0)
  })

  test('how sure it is adds up to one, the surest first', () => {
    for (const made of Object.values(cards)) {
      const found = readBack(made, readings(made, [90]))
      expect(found.reduce((sum, { sure }) => sum + sure, 0)).toBeCloseTo(1, 12)
      expect(found.map(({ sure }) => sure)).toEqual(found.map(({ sure }) => sure).sort((a, b) => b - a))
      for (const { sure } of found) expect(sure).toBeGreaterThanOrEqual(0)
    }
  })

  test('an unknown mechanism, or two tips that share no slit, is refused in words', () => {
    const made = cards.beak as Design
    expect(() => readBack(made, [{ what: 'rise', id: 'owl', opening: 90, value: 1 }])).toThrow(
      'there is no mechanism owl',
    )
    expect(() =>
      readBack(cards['a beak with an eye'] as Design, [
        { what: 'gape', between: ['beak', 'eye'], opening: 90, value: 1 },
      ]),
    ).toThrow('beak and eye share no slit')
  })
})
