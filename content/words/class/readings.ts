/** What of a table of readings cannot be read; `what`: a sentence. */
export const at = (line: number, column: number, what: string): string =>
  `Line ${line}, column ${column}: ${what}`

export const openQuote = 'a quotation mark begins here and has no end.'

export const afterQuote = (letter: string): string =>
  `after a closing quotation mark comes “${letter}” instead of the next column.`

export const noSheet = (given: string, first: string | undefined, last: string | undefined): string =>
  `there is no sheet “${given}”; this class has ${first} to ${last}.`

export const readBefore = (sheet: string): string =>
  `sheet ${sheet} was read before in this table; the first reading counts.`

export const empty = 'There is nothing in it: a row is a sheet’s code and a reading, as in A1, 31.5.'

/** Numbers are mm. */
export const noReading = (given: string, most: number): string =>
  `“${given}” is no reading; it must be a number from 0 to ${most} mm.`

export const outOfRange = (given: string, most: number): string =>
  `${given} mm is out of range; a reading of this card is from 0 to ${most} mm.`
