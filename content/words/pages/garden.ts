/** The page of the night garden, and of the cards that work. */

export const title = 'The night garden'

export const description =
  'All the animals of the book on one pop-up card: open it, look at its sheet and print it at true size.'

export const lead =
  'Everything the chapters teach, on one card. Open it, turn it, and print it when you have made the small ones.'

/** For a class at the wall. */
export const task = 'Open the card slowly. What stands up first, and what lags behind?'

/* What can be dragged on its sheet. */

export const tipOfOwl = 'Tip of the owl'

export const tipOfHead = 'Tip of the hedgehog’s head'

/* Making it. */

/** `level` is how hard it is, in small letters: some care, patient hands. */
export const cardFor = (level: string, parts: number, cuts: number, folds: number, glued: number): string =>
  `It is a card for ${level}: ${parts} parts, ${cuts} cuts, ${folds} folds and ${glued} places to glue. Print it, or take it to your own dummy and change it there.`

export const takeIt = 'Take it'

export const takeGarden = 'Take it: the whole garden'

export const printInColour = (paper: string): string => `Print in colour, ${paper}`

export const toColourIn = (paper: string): string => `To colour in, ${paper}`

export const stepByStep = 'Step by step'

export const classPack = 'Class pack'

export const itsFile = 'Its file'

export const inThisOrder = 'Make its parts in this order. Each has a chapter that shows how.'

/* The cards that work, and which of them are shown: I can … It may be … */

export const iCan = 'I can'

export const cutAndGlue = 'cut and glue'

export const cutOnly = 'cut only'

export const itMayBe = 'It may be'

export const asItComes = 'as it comes'

export const someCare = 'some care'

export const easy = 'easy'

export const cardsThatWork = 'Cards that work'

export const takeOne =
  'Take one, change it, print it. It comes as a dummy of your own. The one here stays as it is.'

/** What the marks of work mean: up to how many cuts, folds and glue places one and two of them stand for. */
export const marksMean = (one: number | undefined, two: number | undefined): string =>
  `One mark: up to ${one} cuts, folds and glue places together. Two marks: up to ${two}. Three: more. The times are those of the chapters that tell how a card is made.`

export const plans = 'Plans, from a wish to a print'

export const stepByStepPlans = 'You make each on your own dummy, step by step.'

export const allPlans = 'All plans'
