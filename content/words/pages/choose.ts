/** The page on which one chooses a mechanism: what stands round its widget. */

export const title = 'Choose a mechanism'

export const description =
  'Every pop-up mechanism of the book side by side: what it does, how high it rises, which way it goes and how strong it is.'

/** What a clicker goes to next. */
export const stop = 'card'

export const lead =
  'All of them side by side, on cards of one size. Open them together, say what you want your part to do, and go to its chapter.'

export const sizesBefore =
  'Each card is 105 mm wide and 148 mm high when it is shut. Heights are over the page, at an opening of 90°. You can scale most parts: height and room grow together. Then try it on'

export const ownDummy = 'your own dummy'

export const sizesBetween = ', or see whole cards in'

export const nightGarden = 'the night garden'

export const sizesAfter = '.'
