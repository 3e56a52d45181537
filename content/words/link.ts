/** What of a link to a bench could not be used. */

/** The numbers of a bench that a link may set, as a sentence calls them. */
export const entries = {
  opening: 'opening',
  turn: 'turn of the view',
  tilt: 'tilt of the view',
  section: 'place of the section',
  'point.across': 'point (across)',
  'point.along': 'point (along)',
} as const

/** Behind a number: of a length, of an angle. */
export const units = { mm: 'mm', deg: 'degrees' } as const

/** A number of the link is none, or out of its range. */
export const notInRange = (
  label: string,
  key: string,
  min: number,
  max: number,
  unit: string,
  given: string,
): string =>
  `The link’s ${label} (${key}) must be a number from ${min} to ${max} ${unit}, not “${given}”. The page’s own value stands.`

/** A word of the link is none of those that may stand there. */
export const notOneOf = (label: string, key: string, words: readonly string[], given: string): string =>
  `The link’s ${label} (${key}) must be ${words.join(' or ')}, not “${given}”. The page’s own value stands.`

/** What the link says is no design together; the reason is a sentence. */
export const doesNotFit = (reason: string): string =>
  `The link does not fit together: ${reason} The page’s own value stands.`

export const notOnCard = (key: string): string =>
  `The link speaks of “${key}”, which this card does not have. It was left out.`

/** The card does not open so far; the reason is a sentence. Openings in degrees. */
export const notReached = (asked: number, reason: string, shown: string): string =>
  `The link asks for an opening of ${asked}°, which this card does not reach. ${reason} It is shown at ${shown}°.`
