/** What is asked and said around readings, once a reader has come to the field. */

/** `slit 46.0 mm`. */
export const size = (label: string, value: string): string => `${label} ${value}`

export const printedCard = 'the template you made'

export const chapterCard = 'the chapter’s own template'

export const benchCard = 'the card on the bench'

/** `the template you made with slit 46.0 mm and lean 5.0 mm, and more`: a card by the sizes that set it apart, if any. */
export function cardWith(card: string, sizes: readonly string[]): string {
  const [first, second, ...more] = sizes
  if (first === undefined) return card
  return `${card} with ${first}${second === undefined ? '' : ` and ${second}`}${more.length > 0 ? ', and more' : ''}`
}

export const severalTellMore = 'Two readings tell more than one. Leave empty what you did not measure.'

export const typeNumber = (most: string): string => `Type a number from 0 to ${most}.`

export const typeNumberFor = (label: string, most: string): string =>
  `${label}: type a number from 0 to ${most}.`

/** In front of a choice of cards. */
export const compareWith = 'Compare with'

/** The one card that there is. */
export const comparedWith = (card: string): string => `Compared with ${card}.`

/** Around a length in bold. */
export const modelSaysBefore = (opening: number): string => `At ${opening}° the model says`

export const modelSaysAfter = '.'
