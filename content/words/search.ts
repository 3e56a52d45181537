/** Looking through the whole book. */

export const whatAreYouLookingFor = 'What are you looking for?'

export const whatSearchLooksThrough = 'What the search looks through'

export const lookedForHere = 'Looked for on your own device, in all chapters, words, troubles and plans.'

export const looking = 'Looking …'

export const nothingFits = 'Nothing fits those words. Try fewer of them, or others.'

export const placesFound = (count: number): string =>
  count === 1 ? '1 place found.' : `${count} places found, likeliest first.`
