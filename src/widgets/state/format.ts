/** How numbers are written for readers, and read back from them. */
import * as says from '../../../content/words/bench.ts'
import type { LengthUnit } from '../../drawing/pen/numbers.ts'
import { angleText, lengthText, MM_PER_INCH } from '../../drawing/pen/numbers.ts'

export type { LengthUnit } from '../../drawing/pen/numbers.ts'

/** A unit of a value inside, mm or degrees. */
export type ValueUnit = 'mm' | 'deg'

/** Decimals shown: mm and degrees one, inches two. */
const decimals = (unit: ValueUnit, length: LengthUnit): number => (unit === 'mm' && length === 'in' ? 2 : 1)

const shownValue = (value: number, unit: ValueUnit, length: LengthUnit): number =>
  unit === 'mm' && length === 'in' ? value / MM_PER_INCH : value

/** The number alone, as a field holds it: `38.0`. Never `-0.0`. */
export function digits(value: number, unit: ValueUnit, length: LengthUnit): string {
  const text = shownValue(value, unit, length).toFixed(decimals(unit, length))
  return Number(text) === 0 ? text.replace('-', '') : text
}

/** The unit as it stands behind a number. */
export const unitSign = (unit: ValueUnit, length: LengthUnit): string => (unit === 'deg' ? '°' : length)

/** Number and unit: `38.0 mm`, `1.50 in`, `46.3°`. */
export const shown = (value: number, unit: ValueUnit, length: LengthUnit): string =>
  unit === 'deg' ? angleText(value) : lengthText(value, length)

/** The same, to be spoken: `46.3 degrees`. */
export const spoken = (value: number, unit: ValueUnit, length: LengthUnit): string =>
  `${digits(value, unit, length)} ${unit === 'deg' ? says.degrees : length === 'in' ? says.inches : says.millimetres}`

/** An angle to be spoken. */
export const angleWords = (degrees: number): string => spoken(degrees, 'deg', 'mm')

/** One press of plus or minus, in mm or degrees. */
export const stepOf = (unit: ValueUnit, length: LengthUnit): number =>
  unit === 'mm' && length === 'in' ? MM_PER_INCH / 32 : 1

/** What a reader may write behind a number, and how many mm or degrees one of it is. */
const UNITS: Readonly<Record<ValueUnit, Readonly<Record<string, number>>>> = {
  mm: {
    mm: 1,
    cm: 10,
    m: 1000,
    in: MM_PER_INCH,
    inch: MM_PER_INCH,
    inches: MM_PER_INCH,
    '"': MM_PER_INCH,
    '″': MM_PER_INCH,
  },
  deg: { '°': 1, deg: 1, degrees: 1 },
}

/**
 * What a reader typed, in mm or degrees; null if it is no number. A comma may stand for the point, and a unit
 * behind the number counts for more than the one in which lengths are shown: `4,5`, `4.5 cm`, `1 3/4 in`.
 */
export function typed(text: string, unit: ValueUnit, length: LengthUnit): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-').toLowerCase()
  const [, sign = '', number, whole = '0', over, under, behind = ''] =
    /^([+-]?)\s*(?:(\d+\.?\d*|\.\d+)|(?:(\d+)\s+)?(\d+)\/(\d+))\s*(\D*)$/.exec(plain) ?? []
  const size = number === undefined ? Number(whole) + Number(over) / Number(under) : Number(number)
  const each = behind === '' ? (unit === 'mm' && length === 'in' ? MM_PER_INCH : 1) : UNITS[unit][behind]
  if (each === undefined || !Number.isFinite(size)) return null
  return (sign === '-' ? -size : size) * each
}

/** The first letter small, for the middle of a sentence. */
export const small = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1)

/** The first letter large, for a sentence's beginning. */
export const large = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1)
