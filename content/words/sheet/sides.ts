/**
 * Which side is printed. By how much is printed on the face that will be seen: every line (`front`), ticks at the ends
 * of folds, or nothing (`back`: every line on the other face).
 */

/** Of the card. */
export const card = {
  front: 'This side is the inside of the card. All lines are on it: a sheet to practise with.',
  ticks: 'This side is the inside of the card. Folds have ticks at their ends only: a sheet for a good copy.',
  back: 'This side is the outside of the card: left and right are swapped, and mountain and valley too. The inside stays clean.',
}

/** Of pieces that are glued on. */
export const pieces = {
  front: 'This side is the front of each piece.',
  ticks: 'This side is the front of each piece. Folds have ticks at their ends only.',
  back: 'This side is the back of each piece: left and right are swapped, and mountain and valley too.',
}

/** The same where cards lie among them: the face of a card is never called as that of a piece. */
export const cardsToo = {
  front: 'This side is the inside of each card and the front of each other piece.',
  ticks:
    'This side is the inside of each card and the front of each other piece. Folds have ticks at their ends only.',
  back: 'This side is the outside of each card and the back of each other piece: left and right are swapped, and mountain and valley too.',
}

/** Its inside is printed, whatever of the card is: its outside is seen. */
export const cover = {
  front: 'The cover goes behind the card. This side is its inside.',
  ticks: 'The cover goes behind the card. This side is its inside. Its folds have ticks at their ends only.',
}

/** Where the card has a page without room for words. */
export const lowerEdge =
  'The lower edge of its page is the reader’s end: lengths along the gutter start there.'

/** Under the edge of the card that lies nearest the reader, by the side of the card. */
export const nearEdge = {
  inside: 'Inside of the card. Reader’s end: lengths along the gutter start here.',
  outside: 'Outside of the card. Reader’s end: lengths along the gutter start here.',
}

/** The same beside the card, or somewhere on it. */
export const besideCard = {
  inside: 'Inside of the card. The reader’s end is the lower edge: lengths along the gutter start there.',
  outside: 'Outside of the card. The reader’s end is the lower edge: lengths along the gutter start there.',
}

/** The same of the cover. */
export const coverEdge = 'Inside of the cover. Reader’s end below'

/** The same where there is little room. */
export const shortEdge = {
  inside: 'Inside. Reader’s end below',
  outside: 'Outside. Reader’s end below',
}
