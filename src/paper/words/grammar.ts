/** What sentences are put together by. */

/** `one, two and three`. */
export const listed = (all: readonly string[]): string =>
  all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`

/** As it stands at the beginning of a sentence. */
export const begun = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

/** As it stands within a sentence. */
export const within = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`
