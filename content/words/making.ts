/** How a cover is scored that goes round much paper; `apart`: mm. */
export const scoreTwice = (apart: number): string =>
  `Score the cover twice, ${apart}\u00a0mm apart, half of that on each side of its fold: shut, that much lies in it.`
