/** What one looks up: formulas, sizes and weights of paper. */

export const title = 'Formulas, sizes and weights'

export const description =
  'Every formula of the book with where it comes from, sizes of paper, and weights in g/m² and in US pounds.'

/** What a clicker goes to next. */
export const stop = 'formula'

export const leadBefore = 'What you look up with a pencil in your hand. The words of the trade stand under'

export const words = 'Words'

export const leadAfter = '.'

export const formulas = 'Formulas'

export const sizes = 'Sizes of paper'

export const weights = 'Weights of paper'

export const ofChapter = (number: number, title: string): string => `${number}. ${title}`

/* Sizes of paper. */

export const sheet = 'Sheet'

export const mm = 'mm'

export const inches = 'inches'

export const cardFolded = 'A card folded from it, shut, mm'

export const sourceOfSizes =
  'Source: ISO 216 for A sizes. US Letter, Legal and Tabloid by their inches; an inch is 25.4 mm, exactly.'

/* Weights of paper. */

export const massAndPounds =
  'Most of the world tells paper by the mass of one square metre. US shops tell it by the pounds that 500 large sheets weigh, and each grade has a large sheet of its own. So the same card has several numbers.'

export const usPaper = 'US paper'

export const largeSheet = 'Its large sheet, inches'

export const onePoundIs = '1 pound is, g/m²'

export const inShops = 'In shops'

export const poundsAre = (pounds: number, grams: number): string => `${pounds} lb, ${grams} g/m²`

export const sourceOfWeights =
  'Source: grammage as ISO 536 has it; a pound is 453.59237 g, exactly. What shops have: common practice, no source.'

/* By its thickness. */

export const soThick = 'A card so thick, mm'

export const soHeavy = 'is about so heavy'

export const nearestInUs = 'nearest in the US'

export const over = (from: number | null | undefined): string => `over ${from}`

export const upTo = (most: number): string => `up to ${most}`

export const fromTo = (from: number | undefined, most: number): string => `${from} to ${most}`

export const gramsAre = (grams: number): string => `${grams} g/m²`

export const poundsOf = (pounds: number, grade: string): string => `${pounds} lb ${grade}`

export const sourceOfThickness =
  'Common practice, no source. Makers differ. Lay ten sheets on one another, measure the heap, and divide by ten.'
