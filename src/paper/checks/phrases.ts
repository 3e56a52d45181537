/** The words that the sentences of the checks share. */
import { nameOf } from '../design/name.ts'

/** To a tenth of a millimetre, but never a failure shown as 0: below 0.05 as many digits as it takes. */
export function mm(value: number): string {
  const size = Math.abs(value)
  const text =
    size === 0 || size >= 0.05
      ? size.toFixed(1)
      : size >= 0.0005
        ? String(Number(size.toPrecision(1)))
        : 'less than 0.001'
  return `${text} mm`
}

/** An opening to a tenth of a degree; shut and flat by their names. */
export const degrees = (opening: number): string =>
  opening === 0 ? 'shut' : opening === 180 ? 'flat' : `${opening.toFixed(1)}°`

/** A part by its id: `left-reed` is the left reed. */
export const the = (id: string): string => `the ${nameOf(id)}`

export const The = (id: string): string => `T${the(id).slice(1)}`

/** A crease or panel as a reader would call it. */
export function place(name: string): string {
  if (name === 'gutter') return 'the gutter'
  const [id = '', part = ''] = name.split('/')
  if (id === 'page') return `the ${part} page`
  return `${the(id)}’s ${part}`
}

/** A crease as a reader would call it: a ridge, or a left or right fold. */
export const fold = (name: string): string =>
  /\/(left|right)$/.test(name) ? `${place(name)} fold` : place(name)

/** A panel as a reader would call it: a page, or a mechanism's left or right side. */
export const side = (name: string): string =>
  /^page\//.test(name) ? place(name) : /\/(left|right)$/.test(name) ? `${place(name)} side` : place(name)

/** When, in words. */
export function when(opening: number): string {
  if (opening === 0) return 'when the card is shut'
  if (opening === 180) return 'when the card lies flat'
  return `when the card is open at ${opening < 1 ? opening.toFixed(1) : Math.round(opening)}°`
}
