/** What stands round every page. */
import { book } from './book.ts'

/** The title of the first page. */
export const bookTitle = `${book}: how pop-up paper works`

export const pageTitle = (page: string): string => `${page} · ${book}`

export const skip = 'Skip to the page'

/* The ways at the top. */

export const chapters = 'Chapters'

export const garden = 'Garden'

export const dummy = 'My dummy'

export const fault = 'Find the fault'

export const classes = 'Class'

export const words = 'Words'

export const search = 'Search'

/* The switches at the top: what each is called, and what it does. */

export const howPageLooks = 'How the page looks'

export const projector = 'Projector'

export const projectorDoes =
  'Makes everything big enough for the back of a room, with two figures side by side.'

export const reading = 'Reading'

export const readingDoes =
  'Sets letters, words and lines further apart and keeps lines short, which helps many readers.'

export const night = 'Night'

export const nightDoes = 'Turns the page dark, or light again.'

/* The foot. */

/** After what each switch does. */
export const pageRemembers = 'The page remembers what you choose, on this device only.'

export const freeToUse =
  'Free to use, copy and change: the MIT licence. Nothing you type here is sent anywhere.'
