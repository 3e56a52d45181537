/** The sizes that can be set. */

export const sizes = 'Sizes'

export const allSizes = 'All sizes'

export const unitOfLength = 'Unit of length'

export const mm = 'mm'

export const inch = 'inch'

export const less = (size: string): string => `${size}: less`

export const more = (size: string): string => `${size}: more`

export const goesFromTo = (size: string, least: string, most: string): string =>
  `${size} goes from ${least} to ${most}.`

/* The point of a bare card. */

export const toGutter = 'Distance to the gutter'

export const toGutterHelp = 'How far the point lies from the gutter.'

export const toLowerEdge = 'Distance to the lower edge'

export const toLowerEdgeHelp = 'How far the point lies from your end of the gutter.'
