import type { Flat } from '../paper/plane/lay.ts'

/** A point turned about the origin, radians, counter-clockwise where y runs up. Quarter turns are exact. */
export function turned([x, y]: Flat, turn: number): Flat {
  const quarter = turn / (Math.PI / 2)
  const near = Math.round(quarter)
  if (Math.abs(quarter - near) < 1e-12) {
    const [c, s] = (
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ] as const
    )[((near % 4) + 4) % 4] ?? [1, 0]
    return [c * x - s * y, s * x + c * y]
  }
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return [c * x - s * y, s * x + c * y]
}
