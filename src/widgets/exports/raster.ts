import * as says from '../../../content/words/exports/files.ts'
import type { Size } from '../../drawing/view/camera.ts'

/**
 * A picture painted in pixels.
 * @param times so many of them for each unit of the picture
 */
export async function painted(
  svg: string,
  { width, height }: Size,
  times: number,
): Promise<HTMLCanvasElement> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    const image = new Image()
    await new Promise((resolve, reject) => {
      image.onload = resolve
      image.onerror = () => reject(new Error(says.cannotPaint))
      image.src = address
    })
    const canvas = document.createElement('canvas')
    canvas.width = Math.round(width * times)
    canvas.height = Math.round(height * times)
    const pen = canvas.getContext('2d')
    if (!pen) throw new Error(says.noCanvas)
    pen.drawImage(image, 0, 0, canvas.width, canvas.height)
    return canvas
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** A canvas as a file's bytes. */
export async function bytesOf(
  canvas: HTMLCanvasElement,
  type: 'image/png' | 'image/jpeg',
): Promise<Uint8Array<ArrayBuffer>> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, type, 0.9))
  if (!blob) throw new Error(says.cannotWrite)
  return new Uint8Array(await blob.arrayBuffer())
}
