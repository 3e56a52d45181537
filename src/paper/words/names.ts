/** How a card's parts are called in a sentence. `name`: a part as `nameOf` says it. */

export const the = (name: string): string => `the ${name}`

/** At the beginning of a sentence. */
export const The = (name: string): string => `The ${name}`

export const gutter = 'the gutter'

export const page = (side: string): string => `the ${side} page`

export const partOf = (name: string, part: string): string => `the ${name}’s ${part}`

/** `place`: a mechanism's left or right, as `partOf` says it. */
export const sideOf = (place: string): string => `${place} side`
