/** The first page. */

export const description =
  'Learn how pop-up cards work: drag a slit, watch the paper rise, print it at true size and make it.'

/* The heading, in three lines. */

export const makeCut = 'Make a cut.'

export const pushThrough = 'Push it through.'

export const standsUp = 'It stands up.'

export const lead =
  'Hingebook shows how pop-up paper works, one fold at a time. Move a card on the screen, print it at true size, fold it, and put your ruler on it.'

export const start = 'Start with chapter 1'

export const wholeGarden = 'The whole garden'

export const planYourOwn = 'Plan your own'

/** What the slider opens. */
export const nightGarden = 'night garden'

export const path = 'The path'

export const notHow = 'Do you know what you want your part to do, but not how?'

export const choose = 'Choose a mechanism'

/* What is in a chapter, cell by cell. */

export const inChapter = 'What is in a chapter'

export const tryIt = 'A card on a bench. Drag a cut, open the card, and read how high it stands.'

export const predict = 'A guess first, then the answer.'

export const why = 'How the paper knows where to go, in plain words. The maths is folded away.'

export const makeIt = 'Steps with pictures, and a template at true size to print, cut and fold.'

export const measureYours = 'Put a ruler on your own card. The book says how near you came, and what slipped.'

export const challenge = 'A card to design. The book checks that it folds.'

export const oneModelBefore =
  'Every number comes from one exact model of the card, so what you read here is what your ruler reads. The words are for readers from about ten. Each chapter ends with notes for whoever leads the lesson, and any card becomes a'

export const lessonWithPaper = 'lesson with paper'

export const oneModelAfter = ': sheets that all differ, worksheets and an answer key.'
