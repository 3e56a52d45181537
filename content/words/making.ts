/** How a cover is scored that goes round much paper; `apart`: mm. */
export const scoreTwice = (apart: number): string =>
  `Find the middle of the cover. Score a line on each side of it, so that the two are ${apart}\u00a0mm apart. The shut card needs that room.`
