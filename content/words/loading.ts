/** What is said when a part of the site does not come. */

export const answeredWithError = (status: number): string => `the site answered with error ${status}`

export const noAnswer = 'the site did not answer'

export const noNetwork = 'this device has no network now'

export const ownFault = 'of a fault in this page'

/** `what` is what did not come, `why` one of the above. */
export const notLoaded = (what: string, why: string): string =>
  `${what} could not be loaded: ${why}. Try again.`
