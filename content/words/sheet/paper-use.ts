/** How many sheets a print takes, and how much of them becomes pieces. */
export const taken = (sheets: number, percent: number): string =>
  `${sheets} ${sheets === 1 ? 'sheet' : 'sheets'}, ${percent}\u00a0% full`
