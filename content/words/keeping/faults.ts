/** What a design cannot hold. `fault` begins with its verb: `must be from 0 to 2000 mm, not 5000.` */

const withNearest = (fault: string, nearest: number | undefined): string =>
  nearest === undefined ? fault : `${fault} The nearest that works is ${nearest}.`

export const ofPart = (part: string, label: string, fault: string, nearest?: number): string =>
  withNearest(`${part}: the ${label} ${fault}`, nearest)

export const ofCard = (label: string, fault: string, nearest?: number): string =>
  withNearest(`The ${label} ${fault}`, nearest)

/** Of something that has no label: by its place in the file. */
export const ofPlace = (place: string, fault: string, nearest?: number): string =>
  withNearest(`${place} ${fault}`, nearest)

/** A part without a name. */
export const partNumber = (number: number): string => `Part ${number}`

/** Where a part sits, and what it is called: in a file `on` and `id`. */
export const place = 'place'

export const name = 'name'

/** One of a list. */
export const numbered = (label: string, number: number): string => `${label} (number ${number})`
