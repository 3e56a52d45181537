/**
 * A picture file made ready for a face. It is decoded by the browser and painted anew, so nothing of the file but its
 * dots comes into the design: no scripts, no words beside it, no place where it was taken.
 */
import * as says from '../../../content/words/pieces.ts'
import { dotsOf, MOST_LETTERS } from '../../paper/design/picture.ts'

/** Larger files are not read, bytes. */
export const MOST_FILE = 20 * 1024 * 1024

/** The longer side of what is painted anew, dots: largest first, until it weighs little enough. */
const LONG = [1200, 900, 600, 400, 250] as const

const QUALITY = 0.8

/** An SVG begins like this, after what XML may have before it. */
const isVector = (start: string): boolean => /<svg[\s>]/.test(start)

/** A vector picture as the browser paints it: as an image it runs no script and fetches nothing. */
function vector(file: Blob): Promise<HTMLImageElement> {
  const address = URL.createObjectURL(new Blob([file], { type: 'image/svg+xml' }))
  const image = new Image()
  return new Promise<HTMLImageElement>((resolve, reject) => {
    image.onload = () => resolve(image)
    image.onerror = () => reject(new Error('no picture'))
    image.src = address
  }).finally(() => URL.revokeObjectURL(address))
}

type Source = ImageBitmap | HTMLImageElement

/** What may be seen through keeps that as a PNG, as long as it weighs little enough; all else is a JPEG on white. */
function paintedAnew(source: Source, size: number, type: 'png' | 'jpeg'): { href: string; ratio: number } {
  const canvas = document.createElement('canvas')
  const scale = size / Math.max(source.width, source.height)
  canvas.width = Math.max(1, Math.round(source.width * scale))
  canvas.height = Math.max(1, Math.round(source.height * scale))
  const pen = canvas.getContext('2d')
  if (pen && type === 'jpeg') {
    pen.fillStyle = '#ffffff'
    pen.fillRect(0, 0, canvas.width, canvas.height)
  }
  pen?.drawImage(source, 0, 0, canvas.width, canvas.height)
  return { href: canvas.toDataURL(`image/${type}`, QUALITY), ratio: canvas.height / canvas.width }
}

/** A picture file painted anew, so small that a design can hold it; or in a sentence why not. */
export async function brought(file: Blob): Promise<{ href: string; ratio: number } | string> {
  if (file.size > MOST_FILE) return says.pictureTooLarge
  const isDrawn = isVector(await file.slice(0, 4000).text())
  const bytes = await file.arrayBuffer()
  if (!isDrawn) {
    const dots = dotsOf(bytes)
    if (typeof dots === 'string') return dots
  }
  let source: Source
  try {
    source = isDrawn ? await vector(file) : await createImageBitmap(file)
  } catch {
    return says.pictureBroken
  }
  if (source.width < 1 || source.height < 1) return says.pictureWithoutDots
  const mayShowThrough = isDrawn || new Uint8Array(bytes)[0] === 0x89
  for (const type of mayShowThrough ? (['png', 'jpeg'] as const) : (['jpeg'] as const))
    for (const long of type === 'png' ? LONG.slice(0, 3) : LONG) {
      const most = Math.max(source.width, source.height)
      const picture = paintedAnew(source, isDrawn ? long : Math.min(long, most), type)
      if (picture.href.length <= MOST_LETTERS) return picture
    }
  return says.pictureBroken
}
