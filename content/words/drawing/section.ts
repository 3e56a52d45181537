/** Beneath the picture: where the card is cut. */
export const along = (station: string): string => `${station} along the gutter`

/** What a section shows; `rise`: a clause without its end, or nothing. */
export const section = (title: string, station: string, opening: string, rise: string): string =>
  `A section of “${title}” ${station} along the gutter, open ${opening}.${rise && ` ${rise}.`}`
