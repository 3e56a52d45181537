/** The page on which one plans a card: what others show beside a link to it. */

export const title = 'My dummy'

export const description =
  'Plan a pop-up card of your own: build on its folds, see it move, have it mended, and print it at true size.'
