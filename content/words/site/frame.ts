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

/* What public/keep.js and public/folder.js say there; they put numbers and names in the braces. */

export const beingKept = 'Being kept on this device: {kept} of {of} files.'

export const isKept = 'Kept on this device: it works without a network.'

export const fromFolder =
  'You have opened this book from a folder. It works there without a network, as long as its files stay together. Two things do not work from a folder: you cannot install the book, and a link from here opens on this device only. To send a card, keep it as a file.'

/** Behind what says that a link was copied. */
export const opensHereOnly = ' It opens on this device only.'

export const folderLacks = 'Something here does not work: {what}. Copy the whole folder once more.'
