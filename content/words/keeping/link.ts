/** Why a link gives no design. */
export const damaged =
  'The link is damaged: a part of it is missing or changed. Copy it again, from its first letter to its last.'

export const tooLong = 'The link is longer than any design makes it.'

export const noDesign = 'The link carries no design.'

export const otherKind = (kind: number, read: string): string =>
  `The link is of kind ${kind}, and this page reads kind ${read}. Load the page again, or ask for the file in place of the link.`

export const unpacksToMore = (most: number): string =>
  `The link unpacks to more than ${most} kB: no design is so large.`

/** The reason is a sentence. */
export const cannotRead = (reason: string): string => `The link holds a design that cannot be read. ${reason}`
