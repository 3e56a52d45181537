/** Why a text is no JSON. What tells of the file goes before each of them. */

export const empty = 'line 1 is empty, and so is the rest of the file.'

export const tooDeep = (line: number, column: number, most: number): string =>
  `line ${line} nests brackets more than ${most} deep from character ${column} on: no design does.`

export const endsTooEarly = (line: number, column: number): string =>
  `line ${line} is not JSON from character ${column} on: the text ends too early`

/** `there`: the line itself. */
export const notJson = (line: number, column: number, there: string): string =>
  `line ${line} is not JSON from character ${column} on: ${there}`
