/** The heads of a sheet’s parts, and what stands under them. */
export const makeIt = 'Make it'
export const moreSteps = 'More steps'
/** On the card's page, where the steps found no room, or the list of joints. */
export const stepsOn = (page: number): string => `Make it: page ${page}`
export const jointsOn = (page: number): string => `Joints: page ${page}`

export const lines = 'Lines'

export const joints = 'Joints'
export const moreJoints = 'More joints'

export const sizes = 'Sizes in mm'
export const sizesFromInside = 'Sizes in mm, from inside'
export const moreSizes = 'More sizes'

/** Over what found no room beside the card. */
export const card = 'The card'
/** And under it, which side of the card is on its own page. */
export const cardPage = {
  front: 'Page 1 is the inside of the card. All lines are on it: a sheet to practise with.',
  ticks: 'Page 1 is the inside of the card. Folds have ticks at their ends only: a sheet for a good copy.',
  back: 'Page 1 is the outside of the card: left and right are swapped, and mountain and valley too. The inside stays clean.',
}

export const takeCare = 'Take care'
export const care =
  'Your school’s own rules come first. A craft knife is a job for an adult. Turn the paper, not your hand, and pass scissors with the handles first.'

export const checkSize = 'Check the size'
export const print = 'Print at 100\u00a0%, “actual size”. Lay a ruler on both lines before you cut.'

/** Where this sheet makes up for a printer; `came`: how long 100 mm came out on it, mm. */
export const drawnLarger = (percent: string, came: string): string =>
  `This sheet is drawn ${percent}\u00a0% larger, for a printer that made 100\u00a0mm come out as ${came}\u00a0mm. For another printer make it anew.`
export const drawnSmaller = (percent: string, came: string): string =>
  `This sheet is drawn ${percent}\u00a0% smaller, for a printer that made 100\u00a0mm come out as ${came}\u00a0mm. For another printer make it anew.`

/** At the two check lines. */
export const hundredMm = '100 mm'
export const fourInches = '4 in'

/** Before a line for a name. */
export const madeBy = 'Made by'
