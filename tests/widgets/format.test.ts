import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { digits, shown, spoken, typed } from '../../src/widgets/state/format.ts'
import { slid, sliderKey } from '../../src/widgets/state/keys.ts'
import { nextStep, openingAfter, phaseAt } from '../../src/widgets/state/play.ts'

describe('numbers for readers', () => {
  test('one decimal in mm and degrees, two in inches', () => {
    expect(shown(38, 'mm', 'mm')).toBe('38.0 mm')
    expect(shown(38.1, 'mm', 'in')).toBe('1.50 in')
    expect(shown(46.26, 'deg', 'in')).toBe('46.3°')
    expect(spoken(46.26, 'deg', 'mm')).toBe('46.3 degrees')
    expect(digits(-0.01, 'mm', 'mm')).toBe('0.0')
  })

  test('a comma, a true minus sign and a unit are understood; words are not', () => {
    expect(typed('38,5', 'mm', 'mm')).toBe(38.5)
    expect(typed(' −3.5 mm', 'mm', 'mm')).toBe(-3.5)
    expect(typed('1.5"', 'mm', 'in')).toBeCloseTo(38.1, 9)
    expect(typed('90°', 'deg', 'mm')).toBe(90)
    for (const text of ['', 'ten', '3..5', '1e3', '--2', 'NaN', 'Infinity'])
      expect(typed(text, 'mm', 'mm')).toBeNull()
  })

  test('a unit behind the number counts for more than the unit shown', () => {
    // An inch is 25.4 mm: international yard and pound agreement, 1959.
    expect(typed('4.5 cm', 'mm', 'mm')).toBeCloseTo(45, 12)
    expect(typed('4,5CM', 'mm', 'in')).toBeCloseTo(45, 12)
    expect(typed('45 mm', 'mm', 'in')).toBe(45)
    expect(typed('1 3/4 in', 'mm', 'mm')).toBeCloseTo(44.45, 12)
    expect(typed('-1/2 inch', 'mm', 'mm')).toBeCloseTo(-12.7, 12)
    expect(typed('3/4', 'mm', 'in')).toBeCloseTo(19.05, 12)
    for (const [text, unit] of [
      ['45 deg', 'mm'],
      ['45 mm', 'deg'],
      ['45 miles', 'mm'],
      ['1/0', 'mm'],
      ['1/2/3', 'mm'],
      ['4,5,6', 'mm'],
    ] as const)
      expect(typed(text, unit, 'mm'), text).toBeNull()
  })

  test('what is shown can be typed in again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.constantFrom('mm' as const, 'in' as const),
        (value, unit) => {
          const back = typed(digits(value, 'mm', unit), 'mm', unit)
          expect(Math.abs((back ?? Number.NaN) - value)).toBeLessThanOrEqual(unit === 'mm' ? 0.0501 : 0.1271)
        },
      ),
    )
  })
})

describe('keys of a slider', () => {
  const plain = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false }

  test('arrows move by one, shift by ten, alt by a tenth, home and end to the ends', () => {
    const press = (key: string, more = {}) => {
      const found = sliderKey({ ...plain, key, ...more })
      return found ? slid(found, 50, 0, 180) : null
    }
    expect(press('ArrowRight')).toBe(51)
    expect(press('ArrowDown')).toBe(49)
    expect(press('ArrowUp', { shiftKey: true })).toBe(60)
    expect(press('ArrowLeft', { altKey: true })).toBeCloseTo(49.9, 9)
    expect(press('PageUp')).toBe(60)
    expect(press('Home')).toBe(0)
    expect(press('End')).toBe(180)
  })

  test('keys with ctrl, and all others, belong to the page', () => {
    expect(sliderKey({ ...plain, key: 'ArrowLeft', ctrlKey: true })).toBeNull()
    expect(sliderKey({ ...plain, key: 'a' })).toBeNull()
    expect(sliderKey({ ...plain, key: 'Tab' })).toBeNull()
  })
})

describe('playing', () => {
  test('it begins where the card stands', () => {
    for (const opening of [0, 1, 45, 90, 135.5, 180]) expect(openingAfter(phaseAt(opening), 0)).toBe(opening)
  })

  test('by steps it goes up to flat and begins again at shut', () => {
    const seen = [170]
    for (let k = 0; k < 4; k++) seen.push(nextStep(seen[k] as number))
    expect(seen).toEqual([170, 180, 0, 15, 30])
  })
})
