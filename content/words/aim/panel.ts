/** A wanted place for the tip, and what brings it there. `top` is what a ruler is held to: `tip`, `ridge`. */

/** What may be wished for, in the middle of a sentence. */
export const wishes = { rise: 'rise', reach: 'reach' } as const

export const typeWhere = (opening: string, top: string): string =>
  `The card is open to ${opening}. Type where the ${top} should be then. You may leave one field empty.`

export const goesFrom = (label: string, min: string, max: string): string =>
  `${label} goes from ${min} to ${max}.`

export const nothingTyped = 'Type a rise, a reach, or both.'

export const workOut = 'Work it out'

export const working = 'Working it out …'

export const useThis = 'Use this'

/** To those who hear the button. */
export const useThisWay = (way: string): string => `Use this: ${way}`

export const moreWays = (count: number): string => `${count} more`

/** A size by its label, with its part where there are several. */
export const sizeOf = (label: string, owner: string | null): string =>
  owner === null ? label : `${label} of the ${owner}`

export const slitPlace = (owner: string | null): string => sizeOf('Place of the slit', owner)

/** `Eye: place of the slit`; whose it is ends with colon and space. */
export const slitPlaceWhose = (whose: string): string => `${whose}place of the slit`

export const size = (label: string, to: string, from: string): string => `${label} ${to} instead of ${from}`

export const sizeAlong = (label: string, to: string, from: string): string =>
  `${label} ${to} along the fold instead of ${from}`

/** One way: all sizes that it changes. */
export const way = (sizes: readonly string[]): string =>
  `${sizes.slice(0, -1).join(', ')}${sizes.length > 1 ? ', and ' : ''}${sizes.at(-1) ?? ''}.`

/** `36.0 mm high`, `80.0 mm along the gutter`. */
export const places = {
  rise: (much: string): string => `${much} high`,
  reach: (much: string): string => `${much} along the gutter`,
} as const

/** `36.0 mm high and 80.0 mm along the gutter`. */
export const atOnce = (some: readonly string[]): string => some.join(' and ')

export const thereAlready = (top: string): string => `The ${top} is there already.`

export const ways = (count: number): string =>
  count === 1 ? 'There is one way.' : `There are ${count} ways. The least change comes first.`

export const nearest = (top: string, place: string): string =>
  `That is out of reach. The nearest that still works as paper: the ${top} stands ${place}.`

export const outOfReach = (top: string): string =>
  `That is out of reach, and nothing brings the ${top} nearer to it that still works as paper.`

export const taken = (top: string, place: string): string => `Done. The ${top} stands ${place} now.`
