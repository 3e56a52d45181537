import { brushes } from './quick.ts'

let asked = false

/** Brings the brush for what moves, once. Nothing is lost if it does not come. */
export async function fetchBrush(): Promise<void> {
  if (asked) return
  asked = true
  const loaded = await import('./brush.ts').catch(() => null)
  try {
    loaded?.callPainter((brush) => {
      brushes.quick = brush
      if (brush) brushes.frames = brush.frames
    })
  } catch {
    // No workers where the page comes from a folder of a disk.
  }
}
