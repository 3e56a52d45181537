/** What sentences of several rooms are put together by. */

/** `one, two and three`. */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

/** With a large letter, as a sentence begins. */
export const large = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`

/** A clause as a sentence by itself: with a large letter and a full stop. */
export const asSentence = (clause: string): string => `${large(clause)}.`
