/** Whether the card works as paper, in the margin and over what mends it. */
export const works = 'It works as paper'

export const looking = 'Looking …'

export const allWell = 'It shuts flat, opens flat, and nothing is in the way.'

export const thingsToMend = (count: number): string =>
  count === 0 ? 'Nothing to mend' : count === 1 ? '1 thing to mend' : `${count} things to mend`

export const seeAndMend = 'See and mend'

/** Under the picture. */
export const toMend = (count: number): string => `${count} to mend`

/** What no picture shows. */
export const hiddenParts = (names: readonly string[]): string =>
  `Hidden in the pictures: ${names.join(', ')}. What is hidden is checked, and is printed.`

export const showAll = 'Show all'
