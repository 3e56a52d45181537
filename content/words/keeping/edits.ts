/** Why a change of a design is refused, and what else a maker should know of it. `Part` begins with a large letter. */

/** Behind a number: of a length, of an angle. */
export const units = { mm: 'mm', deg: 'degrees' } as const

/** In the place of a number that is none. */
export const noNumber = 'what was given'

/** The name may be empty. */
export const noPart = (name: string): string => `There is no ${name || 'part of that name'} on this card.`

export const noSize = (part: string, name: string): string => `${part} has no size called ${name}.`

export const noChoice = (part: string, name: string): string => `${part} has no choice called ${name}.`

export const noOutline = (part: string, name: string): string => `${part} has no outline called ${name}.`

export const sizeRange = (
  part: string,
  label: string,
  min: number,
  max: number,
  unit: string,
  given: string,
): string => `${part}: the ${label} must be from ${min} to ${max} ${unit}, not ${given}.`

/** mm. */
export const cardRange = (label: string, min: number, max: number, given: string): string =>
  `The ${label} must be from ${min} to ${max} mm, not ${given}.`

/** `part` is the same name with a large letter. */
export const onItself = (part: string, place: string, name: string): string =>
  `${part} cannot sit on ${place}: that sits on ${name} itself.`

export const noRoomForCopy = (place: string): string =>
  `There is no free room on ${place}: the copy lies over what is there.`

export const noRoom = (place: string): string =>
  `There is no free room on ${place}: it lies over what is there.`

export const madeSmaller = (percent: number): string => `It is made smaller to fit: ${percent} % of its size.`

export const nameNeedsLetters = 'A name needs letters from a to z or digits, 1 to 40 of them.'

export const nameKeeps = (name: string): string =>
  `A name keeps letters from a to z, digits and spaces, 40 of them at most: this one is “${name}”.`

export const nameTaken = (name: string): string => `There is a ${name} on this card already.`
