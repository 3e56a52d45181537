// Tables as text: RFC 4180, with d3-dsv as a second reader.
import { csvParseRows, dsvFormat } from 'd3'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readTable, tableText } from '../../src/class/csv.ts'

const rowsOf = (text: string): readonly (readonly string[])[] => {
  const table = readTable(text)
  if (!table.ok) throw new Error(table.sentence)
  return table.rows.map((row) => row.map((cell) => cell.text))
}

describe('RFC 4180, section 2', () => {
  test('1 and 2: lines end with CR LF, the last one with or without', () => {
    expect(rowsOf('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(rowsOf('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(rowsOf('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'))
  })

  test('4: spaces are part of a field', () => {
    expect(rowsOf('aaa, bbb ,ccc')).toEqual([['aaa', ' bbb ', 'ccc']])
  })

  test('5 and 6: quoted fields may hold line breaks and commas', () => {
    expect(rowsOf('"aaa","b \r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b \r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(rowsOf('"a,b",c')).toEqual([['a,b', 'c']])
  })

  test('7: a quotation mark within is doubled', () => {
    expect(rowsOf('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']])
  })
})

test('what is written is read the same, by us and by d3-dsv', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r\n', ' ', '5', 'é'), maxLength: 6 })
  fc.assert(
    fc.property(
      fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
      (rows) => {
        const text = tableText([['sheet', 'size', 'reading'], ...rows])
        expect(rowsOf(text).slice(1)).toEqual(rows)
        expect(csvParseRows(text).slice(1)).toEqual(rows)
      },
    ),
  )
})

test('semicolons and tabs, as spreadsheets write them, are read as d3-dsv reads them', () => {
  const semi = 'sheet;size;reading\nA1;21;19,5\nA2;"a;b";3\n'
  expect(rowsOf(semi)).toEqual(dsvFormat(';').parseRows(semi))
  const tabs = 'sheet\tsize\treading\nA1\t21\t19,5\n'
  expect(rowsOf(tabs)).toEqual(dsvFormat('\t').parseRows(tabs))
})

test('a byte order mark and old line ends do not matter, empty lines are left out', () => {
  expect(rowsOf('\ufeffa,b\rc,d\n\n\ne,f')).toEqual([
    ['a', 'b'],
    ['c', 'd'],
    ['e', 'f'],
  ])
})

test('lines ended by CR alone, and empty ones before the first, leave the separator to be found', () => {
  expect(rowsOf('\r\ra;b,c\rd;e\r')).toEqual([
    ['a', 'b,c'],
    ['d', 'e'],
  ])
  expect(rowsOf('"x;y;z",b\nc,d')).toEqual([
    ['x;y;z', 'b'],
    ['c', 'd'],
  ])
})

test('the first line alone says what parts the fields', () => {
  expect(rowsOf('a,b\nc;;;,d')).toEqual([
    ['a', 'b'],
    ['c;;;', 'd'],
  ])
})

test('a line of separators is a row of empty fields', () => {
  expect(rowsOf('a,b\n,\n')).toEqual([
    ['a', 'b'],
    ['', ''],
  ])
})

test('an empty last field is a field', () => {
  expect(rowsOf('a,b,\nc,d,')).toEqual([
    ['a', 'b', ''],
    ['c', 'd', ''],
  ])
})

test('a field knows its line and column, after line breaks within quotes too', () => {
  const table = readTable('a,"b\nb",c\nd,e,f')
  if (!table.ok) throw new Error(table.sentence)
  expect(table.rows[0]?.map(({ line, column }) => [line, column])).toEqual([
    [1, 1],
    [1, 2],
    [2, 3],
  ])
  expect(table.rows[1]?.map(({ line, column }) => [line, column])).toEqual([
    [3, 1],
    [3, 2],
    [3, 3],
  ])
})

test.each([
  ['a,b\nc,"d', 'Line 2, column 2: a quotation mark begins here and has no end.'],
  ['a,b\n"c"x,d', 'Line 2, column 1: after a closing quotation mark comes “x” instead of the next column.'],
])('%j is told by line and column', (text, sentence) => {
  expect(readTable(text)).toEqual({ ok: false, sentence })
})

test('no text is too odd to be answered', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
      expect(typeof readTable(text).ok).toBe('boolean')
    }),
  )
})
