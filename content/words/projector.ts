/** A lesson at the back of a room: the bar over the figures. */

export const pageDownDoes = 'Next: asks, shows, goes on'

export const pageUpDoes = 'Back'

export const sDoes = 'Shows or hides what answers the guess'

export const spaceDoes = 'Opens and shuts the card'

export const escapeDoes = 'Ends the lesson'

/** What is right, and what was read before. */
export const answerAndWas = (answer: string, was: string): string => `${answer} Was ${was}.`

export const next = 'Next'

export const tools = 'Tools'

export const end = 'End'
