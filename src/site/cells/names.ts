/** What the cells of a chapter are called on its page, by their words in its file. Their places have these names too. */
export const CELL_NAMES = {
  TryIt: 'Try it',
  Predict: 'Predict',
  Why: 'Why',
  MakeIt: 'Make it',
  MeasureYours: 'Measure yours',
  Challenge: 'Challenge',
  GoesWrong: 'When it goes wrong',
  Recall: 'Do you remember',
  ForTeachers: 'For teachers',
} as const

export type CellWord = keyof typeof CELL_NAMES
