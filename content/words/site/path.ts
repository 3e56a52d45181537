/** The chapters as a path, and where the reader is on it. */

export const youAreHere = 'You are here.'

export const begun = 'Begun.'

/** Counted on the device: `met` and `goals` are put in there. */
export const challengesMet = (met: string, goals: string): string => `${met} of ${goals} challenges met.`

export const toMake = (time: string, materials: string): string => `${time} to make. You need ${materials}.`
