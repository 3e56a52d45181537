/** How a cover is scored that goes round much paper; `apart`: mm. */
export const scoreTwice = (apart: number): string =>
  `Score the cover along two lines, ${apart}\u00a0mm apart, with its middle between them: the shut card is about so thick.`
