/** How a cover is scored that goes round much paper; `apart`: mm. */
export const scoreTwice = (apart: number): string =>
  `Score the cover twice, ${apart}\u00a0mm apart, as far on each side of its middle. The shut card needs that room.`
