/** How a cover is scored that goes round much paper; `apart`: mm. */
export const scoreTwice = (apart: number): string =>
  `Score two lines along the cover, ${apart}\u00a0mm apart, its middle between them: room for the shut card.`
