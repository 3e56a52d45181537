/** The page on which a card is planned: its figures, its margin and what stands over the card. */

/** The figures. */
export const captions = {
  view: 'Standing card',
  sheet: 'Flat sheet',
  section: 'Section',
  chart: 'Chart',
} as const

/** The margin. */
export const onThisCard = 'On this card'

export const card = 'Card'

export const changeCard = 'Change the card'

/** Over the card. */
export const dummyName = 'Name of this dummy'

export const undo = 'Undo'

export const redo = 'Redo'

export const saveOpenSend = 'Save, open, send'

export const print = 'Print the sheets'

/** How it stands with the work. */
export const nothingToSave = 'Nothing to save yet'

export const saved = 'Saved on this device'

export const saving = 'Saving …'

export const wayBack = 'Back to where it was taken from'

export const goneElsewhere = 'Deleted in another tab.'

export const changedElsewhere = 'Changed in another tab.'

export const takeTheirs = 'Take what is there'

export const keepMine = 'Keep this one as a copy'
