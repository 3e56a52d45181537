/** The keys of the page by what is written on them, and what they do. */
export const tabKey = 'Tab'

export const tabDoes = 'goes through name, undo, list, slip, card, opening and sizes'

export const arrowKeys = 'Arrows'

export const arrowsDo = 'walk the list; on a handle or slider they move 1, with Shift 10, with Alt a tenth'

export const enterKey = 'Enter'

export const enterDoes = 'takes up the fold, face or part in the list'

export const escapeKey = 'Escape'

export const escapeDoes = 'puts the slip away'

export const undoRedoKeys = 'Ctrl + Z, Ctrl + Y'

export const undoRedoDo = 'undo, redo'

export const deleteKey = 'Delete'

export const deleteDoes = 'removes the part that is taken up, and what sits on it'

export const renameDoes = 'goes to its name'

export const keepDoes = 'keeps all its sizes when the card is mended, or lets go of them'

export const hideDoes = 'hides the part that is taken up, or shows it again'

export const lockDoes = 'locks it, or unlocks it'

export const mendDoes = 'shows what is to mend'

export const wishDoes = 'makes a wish'

export const spaceKey = 'Space'

export const spaceDoes = 'opens and shuts the card'

export const keysDo = 'shows these keys'

/** Over the list. */
export const title = 'Keys'
