/** Why a design does not go on a paper, and which would do. Numbers are mm. */
export const theCard = 'The card'
export const theCover = 'The cover'
export const thePiece = (part: string): string => `The piece for ${part}`

/** `wide`, `high`: by how much; empty: not in that direction. */
export const tooLarge = (what: string, wide: string, high: string, paper: string): string =>
  `${what} is ${[...(wide ? [`${wide} mm too wide`] : []), ...(high ? [`${high} mm too high`] : [])].join(' and ')} for ${paper}.`

export const intoBorder = (what: string, paper: string, part: string, far: string): string =>
  `${what} fills ${paper}: the lines of ${part} run ${far} mm into the border that a printer cannot reach.`

export const noneLargeEnough =
  'No paper offered here is large enough: part it over several sheets that are joined.'

export const fitsOn = (papers: readonly string[]): string =>
  `It fits on ${papers.length > 1 ? `${papers.slice(0, -1).join(', ')} or ` : ''}${papers.at(-1)}.`

export const leavesCover = (paper: string): string =>
  `The sheet on ${paper} leaves it out and says how to cut it from other card.`
