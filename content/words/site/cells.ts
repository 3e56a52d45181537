/** The cells of a chapter, and what each says besides the chapter's own text. */

/** What they are called on the page, by their words in a chapter's file. */
export const names = {
  TryIt: 'Try it',
  Predict: 'Predict',
  Why: 'Why',
  MakeIt: 'Make it',
  MeasureYours: 'Measure yours',
  Challenge: 'Challenge',
  GoesWrong: 'When it goes wrong',
  Recall: 'Do you remember',
  ForTeachers: 'For teachers',
}

/** The only cell of a plan. */
export const followPlan = 'Follow the plan'

/* Notes in the margin. */

export const squaresAre = '1 square = 10 mm'

export const guessFirst = 'Guess before you look'

export const cardAndRuler = 'Your card and a ruler'

export const onTheBench = 'On the bench above'

export const withoutLooking = 'Without looking back'

/* A guess. */

export const showMe = 'Show me'

/* A question that an earlier chapter has taught: `From chapter 3.` */

export const fromBefore = 'From'

export const fromChapter = (number: number): string => `chapter ${number}`

export const fromAfter = '.'

/* A caution. */

export const takeCare = 'Take care.'

/* A challenge that has no name of its own. */

export const aChallenge = 'a challenge'

/* Notes for teachers. */

export const getPack = 'Get a class pack for this chapter'

export const getPackAfter = ': a sheet for each pupil, worksheets, an answer key and a lesson for the wall.'

/* Making it. */

export const printTemplate = 'Print the template at true size:'

export const printTemplateOf = (card: string): string => `Print the template of the ${card} at true size:`

export const templateOn = (paper: string): string => `Template on ${paper}`

export const templateOfOn = (card: string, paper: string): string => `Template of the ${card} on ${paper}`

export const alsoHaveIt = 'It has a picture to colour in. You can also have it'

export const orElse = 'or'

export const inColour = 'in colour:'

export const withoutPicture = 'without a picture:'

export const templateInColourOn = (paper: string): string => `Template in colour on ${paper}`

export const templateWithoutPictureOn = (paper: string): string => `Template without a picture on ${paper}`

/** `hasHoles`: something is cut from the card. */
export const lastPageIsCover = (hasHoles: boolean): string =>
  `The last page of the template is a cover. It goes behind the card${
    hasHoles ? ' and shows dark through every hole' : ''
  }. You glue it on just before the last step. You can also leave it out.`

export const glueOnCover = 'Glue on the cover.'

/** `twice`: it is scored along two lines, and has no fold that the gutter could lie on. */
export const howToGlueCover = (twice: boolean): string =>
  `Fold the cover. Put glue on its hatched rim only: nothing that moves may stick. Hold the card over it, ${
    twice ? 'gutter midway between the two lines' : 'gutter over gutter'
  }. Press the edges down. Shut both and let them dry.`

export const everyStepBefore = 'On a wall, or one step to a sheet:'

export const everyStep = 'every step of this card, large'

export const everyStepAfter = '.'
