/** A challenge, and how the card stands against it. */

export const done = 'Done.'

export const doneBefore = 'You have done this one.'

export const answerOnBench = 'Put your answer on the bench'

export const doneSaid = (verdict: string): string => `Challenge done. ${verdict}`

/* What is true now. */

export const sticksOut = (by: string): string => `The shut card sticks out by ${by}`

export const hidden = (by: string): string => `The shut card hides it, ${by} inside`

/** Of what stands by itself, `Rise`; a name that begins with its part, `Lantern: tabs`, makes no sentence. */
export const is = (what: string, value: string): string =>
  what.includes(':') ? `${what} ${value}` : `${what} is ${value}`

export const isAt = (what: string, value: string, opening: number): string =>
  `${is(what, value)} at ${opening}°`

/** What is measured, and of which part where the task names one. */
export const measureOf = (what: string, part: string): string =>
  /\d$/.test(part) ? `${what} of ${part}` : `${what} of the ${part}`

/* What is true now, and how far it is to go. `now` is one of the above. */

export const reached = (now: string): string => `${now}.`

export const toGo = (now: string, far: string): string => `${now}. It needs ${far} more.`

export const tooMuch = (now: string, far: string): string => `${now}. That is ${far} too much.`

export const mustWork = 'It must also work as paper.'

export const mustWorkBut = (sentence: string): string => `${mustWork} ${sentence}`

export const works = 'It works as paper: every check holds.'
