/** Checking the card again after its first change. */

export const whatChecksCard = 'What checks the card'
