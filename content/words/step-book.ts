/** How a card is made, step by step: the page, its booklet and its figures. */

export const stepByStep = 'Step by step'

export const chooseCard =
  'Choose a card and see how it is made. Your own has its steps too: on My dummy, under Save, open, send.'

export const noSteps = 'This design has no steps.'

export const stepsFor = (card: string): string => `Steps for ${card}`

export const cardStepByStep = (card: string): string => `${card}, step by step`

export const stepOf = (step: number, all: number): string => `Step ${step} of ${all}`

export const stepTitled = (step: number, all: number, title: string): string =>
  `${stepOf(step, all)}: ${title}`

/* What a step says besides its sentences: a head, and the same as it is read out. */

export const letters = 'Letters.'

export const check = 'Check.'

export const takeCare = 'Take care.'

export const lettersSaid = (said: string): string => `${letters} ${said}`

export const checkSaid = (said: string): string => `${check} ${said}`

export const cautionSaid = (said: string): string => `${takeCare} ${said}`

export const youNeed = (tools: string): string => `You need: ${tools}.`

export const thatWasTheLast = 'that was the last step'

/* Keys. */

export const pageDownDoes = 'Next step'

export const pageUpDoes = 'The step before'

export const homeDoes = 'First step'

export const endDoes = 'Last step'

export const spaceDoes = 'Plays the step, where it moves'

/* Buttons. */

export const back = 'Back'

export const tools = 'Tools'

export const next = 'Next'

export const printSteps = 'Print the steps'

export const fillScreen = 'Fill the screen'

export const allInWords = 'All steps in words'

/* The booklet as a file. */

export const bookletAsPdf = 'Booklet as PDF'

/** After the number of steps. */
export const toAPage = 'to a page'

export const paper = 'Paper'

export const a4 = 'A4'

export const usLetter = 'US Letter'

export const drawing = 'Drawing the booklet …'

export const notMade = (why: string): string => `The booklet could not be made: ${why}`

export const saved = (file: string, pages: number): string =>
  `${file} is saved: ${pages} ${pages === 1 ? 'page' : 'pages'}.`

export const notLoaded = 'What makes the booklet could not be loaded. Load the page again.'

/* A figure that moves. */

export const pause = 'Pause'

export const nextPosition = 'Next position'

export const play = 'Play'

export const howFar = 'How far the motion is'

export const inSteps = 'It goes in steps, as your device asks.'

export const picture = 'Picture'

/** What did not come, where it did not: `… could not be loaded`. */
export const theChecks = 'The checks'
