/**
 * What no title may hold: control characters, marks that turn the way of writing, line and paragraph
 * separators, halves of letters that stand alone, and what is no character at all (Unicode 16, chapters 23
 * and 3.9). Most are forbidden in XML, and a terminal obeys some.
 */
const STRAY = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/u

const ALL_STRAY = new RegExp(STRAY, 'gu')

/** The first character of a text that cannot be shown, and its place, counted from 1; null if there is none. */
export function strayIn(text: string): { readonly name: string; readonly place: number } | null {
  const found = STRAY.exec(text)
  if (!found) return null
  const code = found[0].codePointAt(0) ?? 0
  const name = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`
  return { name, place: [...text.slice(0, found.index)].length + 1 }
}

/** A text without what cannot be shown. */
export const plainText = (text: string): string => text.replace(ALL_STRAY, '')

/** A text in which what cannot be shown can be read: `\u{7}`. */
export const visibleText = (text: string): string =>
  text.replace(ALL_STRAY, (one) => `\\u{${(one.codePointAt(0) ?? 0).toString(16)}}`)
