export const usage =
  '--out PACK.pdf [--table READINGS.csv] [--pupils N] [--groups N] [--ages AGES] [--minutes N] [--paper PAPER] [--size ID.FIELD|none] [--chapter SLUG] [--large] [--picture] [--certificate]'

/** `pupils`, `groups`: how many there are where nothing is said. */
export const help = (
  mostPupils: number,
  pupils: number,
  groups: number,
  ages: string,
  papers: readonly string[],
): string =>
  `Write a class pack: the teacher's pages, a sheet for each pupil, worksheets, recall slips and the answer key; and an empty table for what the rulers read. Up to ${mostPupils} pupils (${pupils}) in groups (${groups}). AGES: ${ages}. Minutes: 20, 45, 90. PAPER: ${papers.join(', ')}. SIZE differs from sheet to sheet; none: all sheets are alike. The words come from the chapter that the card is from, or from SLUG. Large print, a picture to colour in, and certificates where wanted.`

export const sizesDone = (done: number, of: number): string => `Sizes: ${done} of ${of}`

export const sheetsDone = (done: number, of: number): string => `Sheets: ${done} of ${of}`

export const pack = (file: string, pages: number, pupils: number): string =>
  `${file}: ${pages} pages for ${pupils} pupils.`

export const differs = (size: string): string => `From sheet to sheet differs: the ${size}.`

export const table = (file: string): string => `${file}: a line for each reading.`

export const notSize = (sizes: readonly string[], title: string, got: string): string =>
  `--size must be one of ${sizes.join(', ')} for “${title}”, not ${got}.`

export const noChapter = 'There is no chapter whose words a pack could have.'
