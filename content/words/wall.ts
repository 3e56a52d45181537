/** Tools for whoever stands at the wall, over any page. */

export const overThePage = 'Over the page'

export const atTheWall = 'At the wall'

/** A button's title: what it does, and its key. */
export const doesByKey = (does: string, key: string): string => `${does} (${key})`

export const draw = 'Draw'

export const drawDoes = 'Draw over the page'

export const point = 'Point'

export const pointDoes = 'A large ring goes with the pointer'

export const freeze = 'Freeze'

export const freezeDoes = 'Nothing on the page moves'

export const frozen = 'Frozen: press Freeze again to go on.'

export const timer = 'Timer'

export const timerDoes = 'A time that runs down'

export const countHands = 'Count hands'

export const countHandsDoes = 'How many guess what'

export const keys = 'Keys'

export const keysDoes = 'What each key does here'

export const keysOfPage = 'This page'

export const keysOfTools = 'Tools'

export const wipe = 'Wipe'

export const wipeDoes = 'Wipes all that was drawn'

export const notes = 'Notes'

export const notesDoes = 'Opens a window for you alone'

export const putAway = 'Put away'

export const putAwayDoes = 'Puts the tools away'

export const whatIsDrawn = 'What is drawn over the page'

/* Hands that are counted. */

export const nothingAsked = 'Nothing is asked just now.'

/** Read aloud after a guess that is right. */
export const isRight = ' is right'

export const oneLess = (guess: string): string => `One less: ${guess}`

export const handsFor = (guess: string): string => `Hands for: ${guess}`

export const oneMore = (guess: string): string => `One more: ${guess}`

export const showRight = 'Show what is right'

export const hideRight = 'Hide what is right'

/* The timer. */

export const again = 'Again'

export const stop = 'Stop'

export const start = 'Start'

export const minutes = 'Minutes'

export const minutesFrom = (least: number, most: number): string => `${least} to ${most} minutes.`

export const timeIsUp = 'Time is up.'
