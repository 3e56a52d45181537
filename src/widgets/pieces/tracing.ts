/**
 * A picture under a face, to be traced: no part of the design, never printed, and gone when the page is left. It is
 * decoded by the browser and painted anew, so nothing of the file but its dots comes on the page.
 */
import { signal } from '@preact/signals'

/** A picture where it lies under a face, as a reader sees the face upright; mm. */
export interface Traced {
  /** The dots painted anew: a data address of a JPEG made here. */
  readonly href: string
  /** Height by width. */
  readonly ratio: number
  readonly width: number
  /** Its middle: to the right and up. */
  readonly at: readonly [right: number, up: number]
}

/** By the name of the face. */
export const traced = signal<ReadonlyMap<string, Traced>>(new Map())

/** Lays a picture under a face, or takes it away. */
export function trace(panel: string, picture: Traced | null): void {
  const next = new Map(traced.peek())
  if (picture) next.set(panel, picture)
  else next.delete(panel)
  traced.value = next
}

/** Larger files are not read, bytes. */
export const MOST_FILE = 20 * 1024 * 1024

/** So many dots at most are decoded: what unpacks to more could take all memory. */
const MOST_DOTS = 50e6

/** The longer side of what is painted anew, dots. */
const LONG = 1200

/** How large a picture says it is, dots. */
export interface Dots {
  readonly width: number
  readonly height: number
}

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
  if (!dots) return 'That is no picture: a PNG or a JPEG can be traced.'
  const { width, height } = dots
  if (width < 1 || height < 1) return 'That picture has no dots.'
  if (width * height > MOST_DOTS)
    return `That picture is too large: ${width} by ${height} dots. At most 50 million can be read.`
  return dots
}

/** A picture file painted anew, small; or in a sentence why not. */
export async function painted(file: Blob): Promise<{ href: string; ratio: number } | string> {
  if (file.size > MOST_FILE) return 'That file is too large: at most 20 MB can be read.'
  const dots = dotsOf(await file.arrayBuffer())
  if (typeof dots === 'string') return dots
  let picture: ImageBitmap
  try {
    picture = await createImageBitmap(file)
  } catch {
    return 'That picture cannot be read: its file is broken.'
  }
  const size = Math.min(1, LONG / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * size))
  canvas.height = Math.max(1, Math.round(picture.height * size))
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  return { href: canvas.toDataURL('image/jpeg', 0.85), ratio: canvas.height / canvas.width }
}
