/** The part that is taken up: its sizes, and what can be done with it. */
export const sizesComeHere =
  'Each part that you add shows its sizes here. The card says at once if it will not shut.'

export const pressPart = 'Press a part of the card, or a name in the list, to see its sizes.'

export const sizesOf = (name: string): string => `Sizes of the ${name}`

export const sizes = 'Sizes'

/** What a part is, and how high it stands: `Glued V-fold, rise 36.0 mm`. */
export const kindAndRise = (kind: string, label: string, value: string): string =>
  `${kind}, ${label} ${value}`

export const isHidden = 'Hidden in the pictures: it is still checked, and it is printed.'

export const isLocked = 'Locked: no drag, no field and no mend changes it.'

/** A size that a mend may not change. */
export const keep = 'keep'

export const kept = 'kept'

export const keepThis = 'Keep this size when the card is mended.'

export const keptThis = 'A mend leaves this size as it is.'

/** What can be done with it. */
export const name = 'Name'

export const partName = 'Name of this part'

export const outlineAndColour = 'Outline and colour'

export const colourAndStick = 'Colour and stick'

export const duplicate = 'Duplicate'

export const mirror = 'Mirror'

export const hide = 'Hide'

export const show = 'Show'

export const hideHint = 'Hidden, it is still checked, and it is printed.'

export const lock = 'Lock'

export const unlock = 'Unlock'

export const lockHint = 'Locked, no drag and no mend changes it.'

export const moveTo = 'Move to …'

export const moveItTo = 'Move it to'

/** The part alone, or with what sits on it. */
export const remove = (guests: readonly string[]): string =>
  guests.length === 0 ? 'Remove' : `Remove, with ${guests.join(', ')}`
