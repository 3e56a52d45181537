/** How numbers are written for readers, and read back from them. */
import type { LengthUnit } from '../../drawing/pen/numbers.ts'
import { angleText, lengthText } from '../../drawing/pen/numbers.ts'

export type { LengthUnit } from '../../drawing/pen/numbers.ts'

export const MM_PER_INCH = 25.4

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
  `${digits(value, unit, length)} ${unit === 'deg' ? 'degrees' : length === 'in' ? 'inches' : 'millimetres'}`

/** An angle to be spoken. */
export const angleWords = (degrees: number): string => spoken(degrees, 'deg', 'mm')

/** One press of plus or minus, in mm or degrees. */
export const stepOf = (unit: ValueUnit, length: LengthUnit): number =>
  unit === 'mm' && length === 'in' ? MM_PER_INCH / 32 : 1

/** What a reader typed, in mm or degrees; null if it is no number. A comma may stand for the point. */
export function typed(text: string, unit: ValueUnit, length: LengthUnit): number | null {
  const plain = text
    .trim()
    .replace(',', '.')
    .replace('−', '-')
    .replace(/\s*(mm|in|inches|°|")$/i, '')
  if (plain === '' || !/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null
  const value = Number(plain)
  return unit === 'mm' && length === 'in' ? value * MM_PER_INCH : value
}

/** The first letter small, for the middle of a sentence. */
export const small = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1)

/** The first letter large, for a sentence's beginning. */
export const large = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1)
