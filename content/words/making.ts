/** How a cover is scored that goes round much paper; `apart`: mm. */
export const scoreTwice = (apart: number): string =>
  `Score the cover twice, ${apart}\u00a0mm apart, its middle between the two: the shut card needs room.`
