/** The size that differs from sheet to sheet: by itself, and in a sentence. */
export const fromGutter = 'From the gutter to the dot'
export const wayFromGutter = 'way from the gutter to the dot'
export const sizeOf = (size: string, part: string): string => `${size} of the ${part}`

/** Why a size is not reached. */
export const noFurther = 'the size goes no further'

/** Why all sheets are alike. */
export const mendFirst = (why: string): string =>
  `All sheets are alike, for this card has something to mend first. ${why}`

export const noRoom = (least: string, most: string, count: number, size: string): string =>
  `All sheets are alike: between ${least} and ${most} there is no room for ${count} different sizes of the ${size}.`

/** Why they differ less than they should; `why`: clauses. */
export const narrowed = (
  size: string,
  from: string,
  to: string,
  wantedFrom: string,
  wantedTo: string,
  why: readonly string[],
): string =>
  `For the ${size} the sheets go from ${from} to ${to}. They would go from ${wantedFrom} to ${wantedTo}, but then: ${why.join('; ')}.`
