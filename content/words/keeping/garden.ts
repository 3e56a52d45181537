/** Why a dummy of the garden does not come. */
export const noSuchDummy = 'The address names no dummy of the garden.'

export const notTaken = (name: string, reason: string): string =>
  `“${name}” could not be taken from the garden: ${reason}.`
