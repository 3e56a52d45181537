import * as says from '../../../content/words/drawing/pen.ts'

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

/** Nearer than this to its page a tip is on it, mm: what is told in tenths shows no less. */
const ON_PAGE = 0.05

/** A tip's distance from the page beneath it: no ruler reads less than nothing, so what lies behind the page is told so. */
export const riseText = (rise: number, unit: LengthUnit = 'mm'): string =>
  rise < -ON_PAGE ? says.behindPage(lengthText(-rise, unit)) : lengthText(Math.max(0, rise), unit)

/** The same of a part by its name, in a sentence without its end. */
export const riseSaid = (name: string, rise: number, unit: LengthUnit = 'mm'): string =>
  says.rises(name, riseText(rise, unit), rise < -ON_PAGE)
