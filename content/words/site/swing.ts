/** The card that opens as one scrolls. */

export const opening = 'Opening'

export const openingOf = (card: string): string => `Opening of the ${card}`
