/** Where the work is kept, and the ways out of and into the page. */
export const title = 'Save, open, send'

export const keptAsYouGo = 'Your work is kept on this device as you go. A file or a link takes it elsewhere.'

export const keepFile = 'Keep a file'

export const fileKept = (file: string): string => `Kept as ${file}, where your browser puts what it saves.`

export const openFile = 'Open a file'

export const newDummy = 'New dummy'

/** The shelf. */
export const yourDummies = 'Your dummies'

export const looking = 'Looking …'

export const noneYet = 'The first one is kept with the first part that you add.'

export const onTable = 'on the table'

export const copy = 'Copy'

export const remove = 'Delete'

/** In front of the way back. */
export const isDeleted = (name: string): string => `“${name}” is deleted.`

/** Behind it, where no other was left to take its place. */
export const emptyInstead = 'An empty card is on the table now.'

export const bringBack = 'Bring it back'

export const deleted = 'Deleted, to be had back for 30 days'

export const before = 'How this dummy was before'

export const putBackSo = 'Put it back so'

export const asBefore = 'As it was before. Undo takes it back.'

/** A link, and a code for a phone. */
export const copyLink = 'Copy the link'

export const linkCopied = 'The link is copied. It carries the whole dummy; nothing is sent to a server.'

export const copyThis = 'Copy this link:'

export const linkLabel = 'Link to this dummy'

export const noLinkOnDisk =
  'You read this book from a folder, and a link would open on this device alone. Send the file.'

export const tooLargeForLink = 'This dummy is too large for a link. Send the file.'

export const phoneCode = 'Code for a phone'

export const codeOpens = (title: string): string => `A code that opens “${title}” on a phone`

export const tooLargeForCode = 'This dummy is too large for a code. Send the link or the file.'

/** What could not be loaded. */
export const code = 'The code'

/** To other pages. */
export const makeIt = 'Make it, step by step'

export const lesson = 'A lesson with it'

export const cardTooLarge = 'This card is too large for a link: pictures may have to go.'
