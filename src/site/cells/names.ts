import { names } from '../../../content/words/site/cells.ts'

/** What the cells of a chapter are called on its page, by their words in its file. Their places have these names too. */
export const CELL_NAMES = names

export type CellWord = keyof typeof CELL_NAMES
