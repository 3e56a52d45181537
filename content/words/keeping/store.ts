/** How it stands with what the browser keeps. */

/** Why nothing could be saved. */
export const notSaved = {
  full: 'Not saved: storage is full. Keep a file, or delete dummies you no longer need.',
  refused: 'Not saved: this browser does not let the page store anything. Keep a file.',
  absent: 'Not saved: this browser has no storage for the page, as in a private window. Keep a file.',
  newer:
    'Not saved: a newer version of this site runs in another tab. Keep a file, then load the page again.',
} as const

export const notWhole = (name: string): string => `“${name}” cannot be read: it is not all there.`

export const savedByNewer = (name: string): string =>
  `“${name}” was saved by a newer version of this page. Load the page again.`

export const cannotRead = (name: string, reason: string): string => `“${name}” cannot be read. ${reason}`

export const stepsLost = 'Its earlier steps could not be read: undo begins anew. The dummy itself is whole.'

export const notHere = 'This dummy is not here: it was deleted, or made in another browser.'
