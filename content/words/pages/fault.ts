/** The page that finds faults: what stands round its widgets. */

export const title = 'Find the fault'

export const description =
  'A pop-up card that does nothing, jams, tears or sticks out: find out why, and what helps.'

/** What a clicker goes to next. */
export const stop = 'cause'

export const whatIsWrong = 'What is wrong with your card?'

export const youMeasure = 'You measure'

export const oneMinute = 'One minute, a ruler.'
