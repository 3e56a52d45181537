/** Pictures made of dots, as a design file carries them: a PNG or JPEG as a `data:` address. */
import * as says from '../words/picture.ts'
import { DesignError, shown } from './read.ts'

/** How large a picture says it is, dots. */
export interface Dots {
  readonly width: number
  readonly height: number
}

/** So many dots at most are decoded: what unpacks to more could take all memory. */
export const MOST_DOTS = 50e6

const MILLIONS = MOST_DOTS / 1e6

/** Letters of one picture, and of all pictures of a design: a file stays well below its bound. */
export const MOST_LETTERS = 240_000
export const MOST_LETTERS_IN_ALL = 700_000

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] as const

/** PNG (ISO/IEC 15948): eight bytes, then the header chunk, whose sizes stand at byte 16. */
const pngDots = (bytes: DataView): Dots | null =>
  bytes.byteLength >= 24 && PNG.every((byte, k) => bytes.getUint8(k) === byte)
    ? { width: bytes.getUint32(16), height: bytes.getUint32(20) }
    : null

/** JPEG (ITU-T T.81, B.1): segments of a marker and a length; a frame's begins with precision, height and width. */
function jpegDots(bytes: DataView): Dots | null {
  if (bytes.byteLength < 4 || bytes.getUint16(0) !== 0xffd8) return null
  let at = 2
  while (at + 9 <= bytes.byteLength) {
    if (bytes.getUint8(at) !== 0xff) return null
    const marker = bytes.getUint8(at + 1)
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (isFrame) return { width: bytes.getUint16(at + 7), height: bytes.getUint16(at + 5) }
    at += marker === 0xff ? 1 : 2 + bytes.getUint16(at + 2)
  }
  return null
}

/** How large a PNG or JPEG says it is, read off its first bytes; or in a sentence why it is none that can be used. */
export function dotsOf(file: ArrayBuffer): Dots | string {
  const bytes = new DataView(file)
  const dots = pngDots(bytes) ?? jpegDots(bytes)
  if (!dots) return says.noPicture
  const { width, height } = dots
  if (width < 1 || height < 1) return says.noDots
  if (width * height > MOST_DOTS) return says.tooLarge(width, height, MILLIONS)
  return dots
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Base 64 (RFC 4648, section 4) to bytes; null where a letter is none of it. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  const letters = text.replace(/={1,2}$/, '')
  if (text.length % 4 !== 0 || letters.length % 4 === 1) return null
  const bytes = new Uint8Array(Math.floor((letters.length * 3) / 4))
  let [bits, held, at] = [0, 0, 0]
  for (const letter of letters) {
    const value = LETTERS.indexOf(letter)
    if (value < 0) return null
    bits = ((bits << 6) | value) & 0xffff
    held += 6
    if (held < 8) continue
    held -= 8
    bytes[at++] = (bits >> held) & 255
  }
  return bytes
}

const ADDRESS = /^data:image\/(png|jpeg);base64,/

/** The file that a picture's address holds; null where it holds none. */
export function bytesOf(
  picture: string,
): { readonly type: 'png' | 'jpeg'; readonly bytes: Uint8Array<ArrayBuffer> } | null {
  const head = ADDRESS.exec(picture)
  const bytes = head && fromBase64(picture.slice(head[0].length))
  return bytes ? { type: head[1] as 'png' | 'jpeg', bytes } : null
}

/** A picture of a design file. Throws a `DesignError`. */
export function checkPicture(value: unknown, path: string): string {
  if (typeof value !== 'string' || !ADDRESS.test(value))
    throw new DesignError(path, says.notAddress(shown(value)))
  if (value.length > MOST_LETTERS)
    throw new DesignError(path, says.tooManyLetters(MOST_LETTERS, value.length))
  const file = bytesOf(value)
  if (!file) throw new DesignError(path, says.notBase64)
  const dots = dotsOf(file.bytes.buffer)
  const isPng = file.bytes[0] === PNG[0]
  if (typeof dots === 'string' || isPng !== (file.type === 'png'))
    throw new DesignError(path, says.wrongPicture(file.type, MILLIONS))
  return value
}
