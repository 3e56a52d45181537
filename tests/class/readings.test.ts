// What the class read: typed, pasted, saved and opened.
import { describe, expect, test } from 'vitest'
import type { Sheet } from '../../src/class/class.ts'
import { classOf } from '../../src/class/class.ts'
import { mostRead, readingsTable, readNumber, readReadings } from '../../src/class/readings.ts'
import type { Measured } from '../../src/class/spread.ts'
import { together } from '../../src/class/together.ts'
import { orderFor } from './shared.ts'

const made = classOf(orderFor('one-slit-two-v-folds', { pupils: 6, groups: 3, differs: 'beak.cut' }))

const of = { sheets: made.sheets, card: { width: 105, height: 148 } }

describe('a number', () => {
  test.each([
    ['31.5', 31.5],
    ['31,5', 31.5],
    [' 31 ', 31],
    ['31.5 mm', 31.5],
    ['0', 0],
    ['260', 260],
  ])('%j is read', (text, value) => {
    expect(readNumber(text, 260)).toEqual({ ok: true, value })
  })

  test.each(['', 'high', '-3', '1e3', '3.5.1', '12,5,1', 'NaN'])(
    '%j is none, and the range is told',
    (text) => {
      const read = readNumber(text, 260)
      expect(read.ok).toBe(false)
      expect(!read.ok && read.sentence).toContain('from 0 to 260 mm')
    },
  )

  test('past the diagonal of the open card it is out of range', () => {
    // An open card of 210 by 148 mm: its diagonal is 256.9 mm, the theorem of Pythagoras.
    expect(mostRead(of)).toBe(260)
    const read = readNumber('260.5', 260)
    expect(!read.ok && read.sentence).toContain('out of range')
  })
})

describe('a table of readings', () => {
  const readings = { A1: 19.5, B2: 33, C1: 0 }

  test('comes back as it was saved', () => {
    const text = readingsTable(of, readings)
    expect(text.split('\r\n')[0]).toBe('sheet,size,reading_mm')
    expect(text.split('\r\n')).toHaveLength(6 + 2)
    expect(readReadings(text, of)).toEqual({ readings, sentences: [] })
  })

  test('of sheets that are alike has no sizes in it', () => {
    const alike = { sheets: made.sheets.map((sheet) => ({ ...sheet, size: null })) }
    expect(readingsTable(alike, { A2: 30 }).split('\r\n').slice(1, 3)).toEqual(['A1,,', 'A2,,30'])
  })

  test('comes back from a spreadsheet with semicolons and decimal commas', () => {
    const text = `\ufeff${readingsTable(of, readings).replaceAll(',', ';').replaceAll('.', ',')}`
    expect(readReadings(text, of)).toEqual({ readings, sentences: [] })
  })

  test('its columns may stand in another order', () => {
    expect(readReadings('reading;name;sheet\n19,5;x;A1\n33;y;B2', of).readings).toEqual({ A1: 19.5, B2: 33 })
  })

  test('without a head it is a code and a reading, small letters too', () => {
    expect(readReadings('a1, 19.5\nb2\t33\n'.replace('\t', ', '), of).readings).toEqual({ A1: 19.5, B2: 33 })
  })

  test('a decimal comma between commas is no further column; a size in front of the reading is', () => {
    const size = made.sheets.find(({ code }) => code === 'A1')?.size
    expect(readReadings('A1,19,5', of).readings).toEqual({ A1: 19.5 })
    expect(readReadings(`A1,${size},20`, of).readings).toEqual({ A1: 20 })
  })

  test('what cannot be read is told by line and column, and all else counts', () => {
    const { readings: found, sentences } = readReadings(
      'sheet,size,reading_mm\nA1,21,19.5\nZ9,30,20\nB1,30,high\nB2,30,900\nA1,21,18\nC1,50,\nC2,60,33',
      of,
    )
    expect(found).toEqual({ A1: 19.5, C2: 33 })
    expect(sentences).toEqual([
      'Line 3, column 1: there is no sheet “Z9”; this class has A1 to C2.',
      'Line 4, column 3: “high” is no reading; it must be a number from 0 to 260 mm.',
      'Line 5, column 3: 900 mm is out of range; a reading of this card is from 0 to 260 mm.',
      'Line 6, column 1: sheet A1 was read before in this table; the first reading counts.',
    ])
  })

  test('a spoilt one gives a sentence and no reading', () => {
    expect(readReadings('sheet,reading\nA1,"19', of)).toEqual({
      readings: {},
      sentences: ['Line 2, column 2: a quotation mark begins here and has no end.'],
    })
    expect(readReadings(' \n', of).sentences).toHaveLength(1)
  })
})

describe('all readings together', () => {
  const { measured } = made as { measured: Measured }
  const read = (value: (sheet: Sheet) => number) =>
    together(made.sheets, measured, Object.fromEntries(made.sheets.map((one) => [one.code, value(one)])))

  test('nothing read says nothing', () => {
    expect(together(made.sheets, measured, {})).toMatchObject({ count: 0, off: 0, opening: null })
  })

  test('a ruler whose nought lies 2 mm in: all are off by that, and nothing scatters', () => {
    const found = read(({ reads }) => reads - 2)
    expect(found.count).toBe(6)
    expect(found.off).toBeCloseTo(-2, 9)
    expect(found.scatter).toBeCloseTo(0, 9)
  })

  // The rise of a cut V-fold by the formula in spread.test.ts, at an opening of 70 degrees instead of 90.
  test('cards opened to 70 degrees are found out', () => {
    const [m] = made.design.mechanisms
    const ridge = m && 'run' in m ? Math.abs(m.run) : Number.NaN
    const half = (35 * Math.PI) / 180
    const found = read(({ size }) => {
      const f = 2 * Math.atan(((size ?? 0) / ridge) * Math.cos(half))
      return ridge * Math.sin(f) * Math.sin(half)
    })
    expect(found.opening).toBe(70)
  })

  test('readings that scatter evenly speak for no other opening', () => {
    const offs = [0.5, -0.5, 0.5, -0.5, 0.5, -0.5]
    const found = read((sheet) => sheet.reads + (offs[sheet.nth] ?? 0))
    expect(found.opening).toBeNull()
    expect(found.scatter).toBeCloseTo(0.5, 9)
  })
})
