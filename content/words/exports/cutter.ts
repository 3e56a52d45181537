/** What is said when pieces for a cutting machine are saved. `shares`: how full each sheet is, in hundredths. */
export const saved = (file: string, shares: readonly number[]): string =>
  `${file} is saved, ${shares.join(', ')} % full.`

export const savedSheets = (file: string, count: number, shares: readonly number[]): string =>
  `${file} is saved: ${count} sheets, ${shares.join(', ')} % full.`

/** Why it could not be made, at the end of a sentence. */
export const nothingToCut = 'there is nothing to cut'
