/** What is said once something has been done on the table. Names come with a large letter where they begin. */
export const onTable = (title: string): string => `“${title}” is on the table.`

/** Set down in the place of what lay there. */
export const putOnTable = (title: string): string => `${title} is on the table. Undo takes it away.`

export const hidden = (part: string): string =>
  `${part} hidden in the pictures. It is still checked, and it is printed.`

export const shownAgain = (part: string): string => `${part} shown again.`

export const locked = (part: string): string => `${part} locked: no drag and no mend changes it.`

export const unlocked = (part: string): string => `${part} unlocked.`

export const allShown = 'All parts are shown.'

/** Why another design is not taken. */
export const isLocked = (name: string): string =>
  `The ${name} is locked, and this would change it. Unlock it first.`

/** What was done, as the list of steps has it but with a large letter, and what else there is to know. */
export const doneSo = (step: string, note: string | undefined): string =>
  `${step}.${note === undefined ? '' : ` ${note}`}`

/** A step of the list, with a large letter, that is taken back or done again. */
export const undone = (step: string): string => `Undone: ${step}.`

export const redone = (step: string): string => `Done again: ${step}.`

/** The title of an empty card: the first one's, and that of each after it, counted from 2. */
export const firstTitle = 'My first dummy'

export const nextTitle = (number: number): string => `My dummy ${number}`
