/** How lengths are said. */
export type LengthUnit = 'mm' | 'in'

export const MM_PER_INCH = 25.4

/** A length given in mm: `30.7 mm`, or `1.21 in`. */
export const lengthText = (mm: number, unit: LengthUnit = 'mm'): string =>
  unit === 'mm' ? `${fixed(mm, 1)} mm` : `${fixed(mm / MM_PER_INCH, 2)} in`

/** An angle in degrees: `46.3°`; whole degrees with `digits` 0. */
export const angleText = (degrees: number, digits = 1): string => `${fixed(degrees, digits)}°`

/** A number with a fixed count of decimals, a true minus sign and no minus zero. */
function fixed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}
