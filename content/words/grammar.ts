/** What sentences of several rooms are put together by. */

/** `one, two and three`. */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

/** A clause as a sentence by itself: with a large letter and a full stop. */
export const asSentence = (clause: string): string => `${clause.charAt(0).toUpperCase()}${clause.slice(1)}.`
