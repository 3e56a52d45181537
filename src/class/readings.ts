/** What the class read: kept beside its sheets, written to a table and read from one. */
import * as says from '../../content/words/class/readings.ts'
import type { Sheet } from './class.ts'
import type { TableCell } from './csv.ts'
import { readTable, tableText } from './csv.ts'

/** Readings by the code of a sheet, mm. */
export type Readings = Readonly<Record<string, number>>

/** As much of a class as its readings hang on. */
export interface Read {
  readonly sheets: readonly Sheet[]
  readonly card: { readonly width: number; readonly height: number }
}

/** No two points of a card are farther apart than this: the diagonal of the open card, rounded up, mm. */
export const mostRead = ({ card }: Pick<Read, 'card'>): number =>
  Math.ceil(Math.hypot(2 * card.width, card.height) / 10) * 10

export type ReadNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly sentence: string }

/** A number as it is typed or pasted: with a decimal point or comma, and its unit or without. */
export function readNumber(text: string, most: number): ReadNumber {
  const plain = text
    .trim()
    .replace(/\s*mm$/i, '')
    .replace(',', '.')
  const value = /^\d{1,6}(\.\d{1,6})?$/.test(plain) ? Number(plain) : Number.NaN
  if (Number.isNaN(value)) return { ok: false, sentence: says.noReading(text.trim().slice(0, 30), most) }
  if (value > most) return { ok: false, sentence: says.outOfRange(plain, most) }
  return { ok: true, value }
}

/** What was read of a table. `sentences`: what was left out, each with its line and column. */
export interface ReadReadings {
  readonly readings: Readings
  readonly sentences: readonly string[]
}

const HEAD = { sheet: 'sheet', size: 'size', reading: 'reading_mm' } as const

/** The readings as a table: one row for each sheet, those that nobody has read yet left empty. */
export const readingsTable = ({ sheets }: Pick<Read, 'sheets'>, readings: Readings): string =>
  tableText([
    Object.values(HEAD),
    ...sheets.map(({ code, size }) => [
      code,
      size === null ? '' : String(size),
      readings[code]?.toString() ?? '',
    ]),
  ])

const at = ({ line, column }: TableCell, what: string): string => says.at(line, column, what)

/** Which columns hold the code and the reading: by their names, else the first and the last. */
function columnsOf(row: readonly TableCell[]): {
  readonly sheet: number
  readonly reading: number
  readonly isHead: boolean
} {
  const named = (test: RegExp): number => row.findIndex(({ text }) => test.test(text.trim()))
  const [sheet, reading] = [named(/^(sheet|code)$/i), named(/^(reading|read|rise|gap|mm)/i)]
  if (sheet >= 0 && reading >= 0) return { sheet, reading, isHead: true }
  return { sheet: 0, reading: Math.max(1, row.length - 1), isHead: false }
}

/**
 * Readings of a pasted or opened table. A row that cannot be read is left out and said; all others count. Sheets are
 * named by their code.
 */
export function readReadings(text: string, of: Read): ReadReadings {
  const table = readTable(text)
  if (!table.ok) return { readings: {}, sentences: [table.sentence] }
  const [first, ...rest] = table.rows
  if (!first) return { readings: {}, sentences: [says.empty] }
  const { sheet, reading, isHead } = columnsOf(first)
  const codes = new Map(of.sheets.map(({ code }) => [code.toUpperCase(), code]))
  const known = [...codes.values()]
  const readings: Record<string, number> = {}
  const sentences: string[] = []
  for (const row of isHead ? rest : table.rows) {
    const name = row[sheet]
    if (!name) continue
    const code = codes.get(name.text.trim().toUpperCase())
    if (code === undefined) {
      sentences.push(at(name, says.noSheet(name.text.trim().slice(0, 20), known[0], known.at(-1))))
      continue
    }
    const size = of.sheets.find((one) => one.code === code)?.size ?? null
    const isSplit = !isHead && table.separator === ','
    const value = isSplit ? joined(row, reading, size) : row[reading]
    if (!value || value.text.trim() === '') continue
    const number = readNumber(value.text, mostRead(of))
    if (!number.ok) sentences.push(at(value, number.sentence))
    else if (code in readings) sentences.push(at(name, says.readBefore(code)))
    else readings[code] = number.value
  }
  return { readings, sentences }
}

/** A decimal comma between commas: without a head, `A1,31,5` is one number unless 31 is that sheet's size. */
function joined(row: readonly TableCell[], reading: number, size: number | null): TableCell | undefined {
  const [cell, before] = [row[reading], row[reading - 1]]
  if (row.length !== 3 || !cell || !before) return cell
  const isSplit = /^\s*\d{1,4}$/.test(before.text) && /^\d{1,2}\s*$/.test(cell.text)
  return isSplit && Number(before.text) !== size ? { ...before, text: `${before.text},${cell.text}` } : cell
}
