import { large } from '../grammar.ts'

/** Beside a piece: which of its faces this is, which of its ends is the reader’s, and how it lies. */
const FACES = { front: 'front', back: 'back', inside: 'inside', outside: 'outside' }

const ENDS = {
  below: ', reader’s end below',
  above: ', reader’s end above',
  left: ', reader’s end at the left',
  right: ', reader’s end at the right',
}

export const face = (
  side: keyof typeof FACES,
  end: keyof typeof ENDS | undefined,
  isAcross: boolean,
): string => `${FACES[side]}${end ? ENDS[end] : ''}${isAcross ? ', across the grain of most paper' : ''}`

/** A piece by its mechanism and its part. */
export const part = (mechanism: string, name: string): string => `${mechanism} ${name}`

/** For those who do not see a page: what it shows. */
export const page = (title: string, number: number, all: number, paper: string, shows: string): string =>
  `${title}, page ${number} of ${all} on ${paper}: ${shows}.`

/** At the rim of a page that is one of several. */
export const numbered = (title: string, number: number, all: number): string =>
  `${title}, page ${number} of ${all}`
export const number = (number: number, all: number): string => `Page ${number} of ${all}`

export const words = 'words'

/** From where its pieces are seen: the card’s sides, and those of others. */
const SIDES = { inside: 'inside', outside: 'outside', front: 'the front', back: 'the back' }

export const pieces = (names: readonly string[], side: keyof typeof SIDES): string =>
  `${names.join(', ')} at true size with cut and fold lines, seen from ${SIDES[side]}`

export const copies = (most: number): string =>
  `The number of copies must be a whole number from 1 to ${most}.`

/** A piece on several sheets: which this is. */
export const tile = (piece: string, number: number, all: number): string =>
  `${large(piece)}, sheet ${number} of ${all}.`

/** What to do with the first of them. */
export const joinAll = (count: number): string =>
  `Larger than the paper: join its ${count} sheets in the order of their numbers, as the plan shows. Then lay them on one large card and prick the corners of all lines through with a pin, or glue them on.`

/** And with others: on which they lie at the left, and above. */
export const joinLeft = (left: number): string =>
  `Cut along the left dotted line. Lay it on sheet ${left}, cross on cross, and tape it.`
export const joinUpper = (upper: number): string =>
  `Cut along the upper dotted line. Lay it on sheet ${upper}, cross on cross, and tape it.`
export const joinBoth = (left: number, upper: number): string =>
  `Cut along the left and upper dotted line. Lay it on sheets ${left} and ${upper}, cross on cross, and tape it.`

/** In a line that runs up beside the card from the reader’s end: right however the sheet is held. */
export const alongCard = {
  inside:
    'Inside of the card. The reader’s end is the edge where this line begins: lengths along the gutter start there.',
  outside:
    'Outside of the card. The reader’s end is the edge where this line begins: lengths along the gutter start there.',
}
export const alongCover = 'Inside of the cover. The reader’s end is the edge where this line begins.'

/** The same of what is trimmed off; no `mm`: the edges of the sheet are those of the piece. */
export const trimAlong = (isLong: boolean, mm: string | null): string => {
  const edges = `${isLong ? 'long' : 'short'} edges of this sheet`
  return mm === null ? `Leave the two ${edges} as they are.` : `Trim ${mm}\u00a0mm off the two ${edges}.`
}
