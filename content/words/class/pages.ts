/** The pages of a class pack, beside what lessons say (content/lessons/). */

/** Names of files. */
export const packTitle = (card: string, pupils: number): string => `${card}: class pack for ${pupils}`
export const sheetsTitle = (card: string, pupils: number): string => `${card}: sheets for ${pupils}`

/** What a lesson’s texts call what is measured, where nothing has a name of its own. */
export const size = 'size'
export const card = 'card'

/** The axis of a chart. */
export const inMm = (what: string): string => `${what}, mm`
export const inDegrees = (what: string): string => `${what}, degrees`

/** Pages of the file. */
export const onePage = (number: number): string => `page ${number}`
export const pages = (first: number, last: number): string => `pages ${first} to ${last}`
export const both = (spans: readonly string[]): string => spans.join(' and ')

/** Who is taught, by the name of the ages: `10 to 13`, `Adults`. */
export const agesOf = (label: string): string => (/\d/.test(label) ? `ages ${label}` : label.toLowerCase())

/** When a part of the lesson is. */
export const time = (from: number, to: number, minutes: string | undefined): string =>
  `${from} to ${to} ${minutes}`

/** One page of several. */
export const which = (page: string, number: number, all: number): string => `${page}, ${number} of ${all}`
export const slips = (card: string, what: string, number: number, all: number): string =>
  `${card}: ${what}, page ${number} of ${all}.`

/** For those who do not see it. */
export const making = 'How it is made, in large print'
