/** Rise against opening, or the gap between two points. */

/** The upright axis: what it measures, and in which unit. */
export const riseAxis = (unit: string): string => `rise, ${unit}`
export const gapAxis = (unit: string): string => `gap, ${unit}`

/** The level axis. */
export const opening = 'opening'

/** Where the card goes no farther. */
export const stopsAt = (to: string): string => `stops at ${to}`

/** The highest point of a curve. */
export const highest = (rise: string, at: string): string => `highest ${rise} at ${at}`
export const widest = (gap: string, at: string): string => `widest ${gap} at ${at}`

/** The same of the parts that share a curve, where there are several. */
export const highestOf = (parts: readonly string[], what: string): string => `${parts.join(', ')}: ${what}`

/** At the dot that can be dragged. */
export const now = (rise: string, at: string): string => `${rise} at ${at}`

/** In the middle of a chart with nothing to see. */
export const noRise = 'No rise at any opening.'
export const noGap = 'No gap at any opening.'

/** What the chart shows. */
export const riseStill = 'Rise against opening: no rise at any opening.'
export const gapStill = 'Gap against opening: no gap at any opening.'

/** `rise`: how far a part rises, `most`: where it is highest, both clauses; `stops`: sentences. */
export const riseChart = (at: string, rise: string, most: string, stops: readonly string[]): string =>
  [`Rise against opening. At ${at} ${rise}; ${most}.`, ...stops].join(' ')

export const gapChart = (at: string, gap: string, most: string, stops: readonly string[]): string =>
  [`Gap against opening. At ${at} the gap is ${gap}; ${most}.`, ...stops].join(' ')

export const fitsNowhere = (part: string): string =>
  `Rise against opening: ${part} fits together at no opening.`

export const nothingRises = 'Rise against opening: nothing rises yet.'
