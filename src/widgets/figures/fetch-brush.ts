import { brushes } from './quick.ts'

/** Brings the brush for what moves. Nothing is lost if it does not come. */
export async function fetchBrush(): Promise<void> {
  const loaded = await import('./brush.ts').catch(() => null)
  brushes.quick = loaded?.brush
}
