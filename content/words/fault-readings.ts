/** Finding what is wrong with a card by what a ruler reads. */

/* One sentence: the card, the part, the opening. */

export const cardBefore = 'My card is'

export const partBefore = ', the part is'

export const openBefore = ', and it is open to'

export const openAfter = '°.'

export const fromTheChapter = 'From the chapter'

export const openingIs = (most: number): string =>
  `The opening is 1 to ${most} degrees; 90 is a book’s corner.`

export const nothingRises = 'Nothing on this card rises, so a ruler reads nothing of it.'

/* What is read: a number stands after each. */

export const tipAbovePage = 'its tip stands above the page'

export const edgeToTip = 'from the near edge to under its tip'

export const opensNoFarther = 'the card opens no farther than'

export const numberUpTo = (most: number): string => `A number from 0 to ${most}.`

export const modelSays = (opening: number, length: string): string =>
  `At ${opening}° the model says ${length}.`

export const typeAReading = 'Type one reading or more. What most likely went wrong is told here.'
