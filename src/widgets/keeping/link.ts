/**
 * A whole design in the part of an address behind `#`: nothing is sent to a server. `d=1.` and then, in letters that
 * an address may hold (base64url, RFC 4648), four bytes CRC-32 of what follows, and the design’s JSON, packed with
 * raw DEFLATE (RFC 1951).
 */
import * as says from '../../../content/words/keeping/link.ts'
import { parseJson } from '../../file/json.ts'
import type { Design, Mechanism } from '../../paper/index.ts'
import { kindOf, parseDesign } from '../../paper/index.ts'
import { sentenceOf } from './words.ts'

export type LinkRead =
  | { readonly read: true; readonly design: Design }
  | { readonly read: false; readonly sentence: string }

/** A design this large, as JSON, goes into no link and is taken from none, bytes. */
export const MOST_UNPACKED = 1024 * 1024

/** Letters of a link that may be read at all. Longer ones pack nothing that is small enough. */
const MOST_LETTERS = 2 * MOST_UNPACKED

const KEY = 'd'

const VERSION = '1'

/** CRC-32 as in ISO 3309 and zip files. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let k = 0; k < 8; k++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0)
  }
  return (crc ^ 0xffffffff) >>> 0
}

/** All that a stream of bytes gives, or null when it gives more than `most`. The rest is not read. */
async function gathered(
  stream: ReadableStream<Uint8Array>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const parts: Uint8Array[] = []
  let size = 0
  const reader = stream.getReader()
  for (;;) {
    const { value, done } = await reader.read()
    if (done) break
    size += value.length
    if (size > most) {
      await reader.cancel().catch(() => {})
      return null
    }
    parts.push(value)
  }
  const whole = new Uint8Array(size)
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

/** Bytes in parts: what comes of one of them is seen before the next is asked for. */
function inParts(bytes: Uint8Array<ArrayBuffer>, part: number): ReadableStream<Uint8Array<ArrayBuffer>> {
  let at = 0
  return new ReadableStream({
    pull(controller) {
      if (at < bytes.length) controller.enqueue(bytes.slice(at, at + part))
      else controller.close()
      at += part
    },
  })
}

/** DEFLATE packs at most 1032 to one (its longest match, 258 bytes, in two bits): a part is no more than half a megabyte. */
const PACKED_PART = 512

/** What is packed here may go in larger parts. */
const PLAIN_PART = 65_536

const packedFrom = (plain: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer> | null> =>
  gathered(inParts(plain, PLAIN_PART).pipeThrough(new CompressionStream('deflate-raw')), 2 * MOST_UNPACKED)

/** Null where it is more than a design can be; rejects where it is no such stream. */
const unpackedFrom = (packed: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer> | null> =>
  gathered(inParts(packed, PACKED_PART).pipeThrough(new DecompressionStream('deflate-raw')), MOST_UNPACKED)

const CHUNK = 0x2000

function toBase64url(bytes: Uint8Array): string {
  let text = ''
  for (let k = 0; k < bytes.length; k += CHUNK) text += String.fromCharCode(...bytes.subarray(k, k + CHUNK))
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

/** Null where a letter is none of base64url, or the last bits are cut off. */
function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return null
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0))
}

/** A mechanism without the numbers and words that its kind fills in by itself. */
function brief(m: Mechanism): object {
  const kind = kindOf(m)
  const whole = JSON.stringify(m)
  const names = [...kind.fields, ...(kind.choices ?? [])].map(({ name }) => name).filter((name) => name in m)
  let short: Record<string, unknown> = { ...m }
  for (const name of names) {
    const { [name]: value, ...rest } = short
    if (value === undefined) continue
    try {
      const filled = kind.complete(rest as unknown as Mechanism)
      // In the order in which it was read, whatever the kind fills in first.
      if (sorted(filled) === sorted(m) && !kind.limits?.(rest as unknown as Mechanism)) short = rest
    } catch {
      // A kind that cannot do without it.
    }
  }
  return sorted(kind.complete(short as unknown as Mechanism)) === sorted(m)
    ? short
    : (JSON.parse(whole) as object)
}

const sorted = (m: object): string => JSON.stringify(Object.entries(m).sort(([a], [b]) => (a < b ? -1 : 1)))

/** A shape without what a reader of files fills in by itself. */
function briefArt(art: NonNullable<Design['art']>[number]): object {
  const { also, face, closed, curve, fill, line, lineColour, lineWidth, glows, ...rest } = art
  return {
    ...rest,
    ...(also.length > 0 ? { also } : {}),
    ...(face === 'front' ? {} : { face }),
    ...(closed ? {} : { closed }),
    ...(curve ? { curve } : {}),
    ...(fill === null ? {} : { fill }),
    ...(line === (fill === null) ? {} : { line }),
    ...(lineColour === 'ink' ? {} : { lineColour }),
    ...(lineWidth === 0.6 ? {} : { lineWidth }),
    ...(glows ? { glows } : {}),
  }
}

/** The design as short as JSON can say it. Reading it gives the very same design. */
export const briefJson = ({ mechanisms, art, ...rest }: Design): string =>
  JSON.stringify({ ...rest, mechanisms: mechanisms.map(brief), ...(art ? { art: art.map(briefArt) } : {}) })

/** The part of the address behind `#` that carries a design: `d=1.…`; null where it is too large for a link. */
export async function linkText(design: Design): Promise<string | null> {
  const json = new TextEncoder().encode(briefJson(design))
  if (json.length > MOST_UNPACKED) return null
  const packed = await packedFrom(json)
  if (!packed) return null
  const whole = new Uint8Array(4 + packed.length)
  new DataView(whole.buffer).setUint32(0, crc32(packed))
  whole.set(packed, 4)
  return `${KEY}=${VERSION}.${toBase64url(whole)}`
}

const unread = (sentence: string): LinkRead => ({ read: false, sentence })

/** Whether what stands behind `#` carries a design. */
export const carriesDesign = (hash: string): boolean =>
  hash.length <= MOST_LETTERS && new URLSearchParams(hash.replace(/^#/, '')).has(KEY)

/** The design that a link carries, or why there is none to be had. It never throws. */
export async function readLink(hash: string): Promise<LinkRead> {
  if (hash.length > MOST_LETTERS) return unread(says.tooLong)
  const text = new URLSearchParams(hash.replace(/^#/, '')).get(KEY)
  if (text === null) return unread(says.noDesign)
  const [, version, letters] = /^(\d{1,4})\.(.*)$/s.exec(text) ?? []
  if (version === undefined || letters === undefined) return unread(says.damaged)
  if (version !== VERSION) return unread(says.otherKind(Number(version), VERSION))
  const bytes = fromBase64url(letters)
  if (!bytes || bytes.length < 5) return unread(says.damaged)
  const packed = bytes.slice(4)
  if (new DataView(bytes.buffer).getUint32(0) !== crc32(packed)) return unread(says.damaged)
  let json: Uint8Array | null
  try {
    json = await unpackedFrom(packed)
  } catch {
    return unread(says.damaged)
  }
  if (!json) return unread(says.unpacksToMore(MOST_UNPACKED / 1024))
  const parsed = parseJson(new TextDecoder().decode(json))
  if (!parsed.ok) return unread(says.damaged)
  try {
    return { read: true, design: parseDesign(parsed.value) }
  } catch (error) {
    return unread(says.cannotRead(sentenceOf(error, parsed.value)))
  }
}

/**
 * Letters that a code of version 25 at error correction level L holds as bytes (ISO/IEC 18004, table 7): with more, its
 * modules are too small for a phone held at arm’s length (common practice, no source).
 */
export const MOST_QR_LETTERS = 1273

export const fitsQr = (link: string): boolean => new TextEncoder().encode(link).length <= MOST_QR_LETTERS
