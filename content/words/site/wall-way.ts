/** On a projector: the way through a page, and the tools at the wall. */

export const onTheWall = 'On the wall'

export const back = 'Back'

export const next = 'Next'

export const tools = 'Tools'

export const theTools = 'The tools'

/* What the keys do. A stop is what each page calls it: a card, a step. */

export const pageDownDoes = (stop: string): string => `Next ${stop}`

export const pageUpDoes = (stop: string): string => `The ${stop} before`

export const spaceDoes = 'Opens and shuts the cards'

export const escapeDoes = 'Ends the projector'
