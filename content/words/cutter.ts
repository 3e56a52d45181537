/** What does not go on a sheet for a cutting machine. Numbers are mm. */
export const theCard = 'The card'
export const thePart = (part: string): string => `The ${part}`

/** A piece by its mechanism and its part. */
export const piece = (mechanism: string, part: string): string => `${mechanism} ${part}`

/** The stock. */
export const sheet = (wide: number, high: number): string => `${wide} by ${high} mm`
export const roll = (wide: number): string => `a roll ${wide} mm wide`

export const tooLarge = (what: string, wide: string, high: string, stock: string, margin: number): string =>
  `${what}, ${wide} by ${high} mm flat, does not go on ${stock} with a margin of ${margin} mm.`

export const tooMany = (most: number, copies: number): string =>
  `At most ${most} pieces are laid out at once: ${copies} copies of this design.`
