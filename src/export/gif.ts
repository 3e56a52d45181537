import { encode } from 'modern-gif'

/** A still picture of an animation: red, green, blue and opacity of each pixel, row by row. */
export type Pixels = Uint8ClampedArray<ArrayBuffer>

/**
 * Pictures as an animated GIF (GIF89a) that goes round and round: the one moving picture that letters, slides, messages
 * and old programs show alike, without a player.
 * @param wait from one picture to the next, ms
 */
export async function gifBytes(
  frames: readonly Pixels[],
  { width, height, wait }: { readonly width: number; readonly height: number; readonly wait: number },
): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await encode({
    width,
    height,
    looped: true,
    loopCount: 0,
    maxColors: 255,
    frames: frames.map((data) => ({ data, delay: wait })),
  })
  return new Uint8Array(bytes)
}
