/** The words that the sentences of the checks share. */
import * as says from '../words/checks.ts'
import { place } from './names.ts'

/** To a tenth of a millimetre, but never a failure shown as 0: below 0.05 as many digits as it takes. */
export function mm(value: number): string {
  const size = Math.abs(value)
  const text =
    size === 0 || size >= 0.05
      ? size.toFixed(1)
      : size >= 0.0005
        ? String(Number(size.toPrecision(1)))
        : says.lessThan('0.001')
  return `${text} mm`
}

/** An opening to a tenth of a degree; shut and flat by their names. */
export const degrees = (opening: number): string =>
  opening === 0 ? says.shut : opening === 180 ? says.flat : `${opening.toFixed(1)}°`

/** A crease as a reader would call it: a ridge, or a left or right fold. */
export const fold = (name: string): string =>
  /\/(left|right)$/.test(name) ? says.foldOf(place(name)) : place(name)

/** When, in words. */
export function when(opening: number): string {
  if (opening === 0) return says.whenShut
  if (opening === 180) return says.whenFlat
  return says.whenOpen(`${opening < 1 ? opening.toFixed(1) : Math.round(opening)}°`)
}
