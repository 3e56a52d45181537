/** What a card asks of the hands. */

/* How hard it is. */

export const easy = 'Easy'

export const someCare = 'Some care'

export const patientHands = 'Patient hands'

export const levelAndTime = (level: string, time: string): string => `${level} · ${time}`

/* What there is to do. */

export const cuts = (count: number): string => `${count} ${count === 1 ? 'cut' : 'cuts'}`

export const folds = (count: number): string => `${count} folds`

export const gluePlaces = (count: number): string => `${count} glue places`
