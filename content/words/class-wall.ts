/** A lesson on the wall: one thing at a time. */

export const theLessonOnTheWall = 'The lesson on the wall'

export const shortMinutes = (count: number): string => `${count} min`

export const pageDownDoes = 'Next: shows what is covered, then goes on'

export const pageUpDoes = 'Back'

export const homeDoes = 'To the beginning'

export const endDoes = 'To the end'

export const sDoes = 'Shows or hides the answer'

export const escapeDoes = 'Ends the lesson'

/* The teacher's notes. */

export const partNote = (part: string, minutes: number, does: string): string =>
  `${part}, ${minutes} min: ${does}`

export const answerNote = (answer: string): string => `Answer: ${answer}`

export const checkNote = (check: string): string => `Check. ${check}`

export const cautionNote = (caution: string): string => `Take care. ${caution}`

export const theyMayThink = (misconception: string): string => `They may think: ${misconception}`

export const thatWasAll = 'that was all'

/* The wall itself. */

export const lineIsTheModel = 'The line is the model.'

export const back = 'Back'

export const hide = 'Hide'

export const show = 'Show'

export const slideOf = (slide: number, all: number): string => `${slide} of ${all}`

export const tools = 'Tools'

export const end = 'End'

export const next = 'Next'

export const open = 'Open'

export const openingOf = (card: string): string => `Opening of ${card}`

export const degrees = (opening: number): string => `${opening} degrees`

export const howToType = (code: string): string => `Type a sheet and its reading, as in ${code} 31.5.`

export const readingTaken = (code: string, reading: number): string => `${code}: ${reading} mm.`

export const sheetAndReading = 'Sheet and reading'

export const add = 'Add'
