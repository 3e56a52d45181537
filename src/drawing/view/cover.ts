import type { Design, Flat, Surface, Vec3 } from '../../paper/index.ts'
import { COVER_RIM } from '../../paper/index.ts'

/** How far the cover lies behind the card, mm: its own thickness, the glue, and air. */
const BEHIND = 0.7

/** Below this sine of half the opening the cover closes up on the pages. */
const NEARLY_SHUT = 0.2

/** The cover's two halves at an opening, degrees: surfaces numbered from `leaf` on. Empty if there is no cover. */
export function coverSurfaces({ card }: Design, opening: number, leaf: number): readonly Surface[] {
  if (!card.cover) return []
  const half = (opening / 2) * (Math.PI / 180)
  const [sine, cosine] = [Math.sin(half), Math.cos(half)]
  const down = BEHIND / Math.max(NEARLY_SHUT, sine)
  const [width, low, high] = [card.width + COVER_RIM, -COVER_RIM, card.height + COVER_RIM]
  const flat: readonly Flat[] = [
    [0, low],
    [0, high],
    [width, high],
    [width, low],
  ]
  return ([-1, 1] as const).map(
    (side, k): Surface => ({
      panel: side < 0 ? 'cover/left' : 'cover/right',
      owner: -1,
      leaf: leaf + k,
      layer: 0,
      points: flat.map(([across, along]): Vec3 => [side * across * sine, along, across * cosine - down]),
      flat,
      drawn: [false, true, true, true],
      front: [-side * cosine, 0, sine],
    }),
  )
}
