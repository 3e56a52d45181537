/** The index. */

export const title = 'Index'

export const description =
  'What the book is about, from A to Z: words, mechanisms, materials, troubles and cards, and where each stands.'

export const lead = 'What the book is about, and where. A number is that of a chapter.'

export const letters = 'Letters'
