/** The card itself. */
export const title = 'The card'

export const pages = 'Pages'

/** Formats of a page. What stands in front of the comma is said of the card. */
export const a6Upright = 'A6, gutter upright'

export const a6Lying = 'A6, gutter lying'

export const a5Upright = 'A5, gutter upright'

export const a5Lying = 'A5, gutter lying'

export const a4Upright = 'A4, gutter upright'

export const halfLetter = 'Half a Letter, gutter upright'

export const quarterLetter = 'Quarter of a Letter, gutter upright'

export const square = 'Square, 140 mm'

/** No format or weight that is usual. */
export const ofMyOwn = 'of my own'

export const width = 'Gutter to edge'

export const height = 'Along the gutter'

export const card = 'Card'

/** g/m². */
export const aboutWeight = (weight: number): string => `about ${weight} g/m²`

export const thickness = 'Thickness'

/** mm. */
export const goesFrom = (label: string, min: string, max: string): string =>
  `${label} goes from ${min} to ${max} mm.`

export const cover = 'With a cover behind it, which closes the holes of cuts'

/**
 * `Two pages, each A6, 105 × 148 mm, card of about 200 g, with a cover.` The format by its name above; lengths in mm, the
 * weight in g/m².
 */
export function cardIs(
  format: string | undefined,
  width: string,
  height: string,
  thick: { readonly weight: number } | { readonly caliper: string },
  hasCover: boolean,
): string {
  const pages = format === undefined ? 'Two pages' : `Two pages, each ${format.split(',')[0]}`
  const card = 'weight' in thick ? `card of about ${thick.weight} g` : `${thick.caliper} mm thick`
  return `${pages}, ${width} × ${height} mm, ${card}${hasCover ? ', with a cover' : ''}.`
}
