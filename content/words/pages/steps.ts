/** The page that shows how a card is made: what others show beside a link to it. */

export const title = 'Step by step'

export const description =
  'How a pop-up card is made, one step at a time: what to cut, fold, push through and glue, each with a picture.'
