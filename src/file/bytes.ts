/** Byte order marks (Unicode 16, 23.8), and how a text is read that begins with one. */
const MARKS: readonly (readonly [encoding: string, mark: readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
]

/** A file's bytes as text. Some editors write a mark at its beginning that says how; it is no part of the text. */
export function textOf(bytes: Uint8Array): string {
  const [encoding] = MARKS.find(([, mark]) => mark.every((byte, k) => bytes[k] === byte)) ?? ['utf-8']
  return new TextDecoder(encoding).decode(bytes)
}
