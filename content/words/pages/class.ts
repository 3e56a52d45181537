/** The page for a lesson with paper: what stands over its widget. */

export const title = 'A lesson with paper'

export const description =
  'A class pack from any card: sheets that all differ, worksheets, an answer key, a lesson for the wall, and the class’s readings against the model.'

/** What a clicker goes to next. */
export const stop = 'part'

export const lead =
  'One pack to print, one lesson for the wall. Every pupil measures another card, and the class finds the curve.'
