import type { Point } from './marks.ts'

const area = (points: readonly Point[]): number =>
  points.reduce((sum, [x, y], k) => {
    const [u, v] = points[(k + 1) % points.length] as Point
    return sum + x * v - u * y
  }, 0) / 2

/**
 * An outline drawn in by so much: each edge moved inwards, neighbours met anew. For areas that bulge or nearly
 * do; where so much would turn it inside out it is drawn in half as far, and so on.
 */
export function inset(points: readonly Point[], by: number): readonly Point[] {
  const clean = points.filter((p, k) => {
    const [x, y] = points[(k + 1) % points.length] as Point
    return Math.hypot(p[0] - x, p[1] - y) > 1e-6
  })
  const whole = area(clean)
  if (clean.length < 3 || whole === 0 || by < 0.05) return points
  const side = whole > 0 ? 1 : -1
  const lines = clean.map((a, k) => {
    const b = clean[(k + 1) % clean.length] as Point
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    const way: Point = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
    return { at: [a[0] - side * way[1] * by, a[1] + side * way[0] * by] as Point, way }
  })
  const drawn = lines.map(({ at: [x, y], way: [u, v] }, k): Point => {
    const before = lines[(k + lines.length - 1) % lines.length] as (typeof lines)[number]
    const cross = before.way[0] * v - before.way[1] * u
    if (Math.abs(cross) < 1e-6) return [x, y]
    const t = ((x - before.at[0]) * v - (y - before.at[1]) * u) / cross
    return [before.at[0] + t * before.way[0], before.at[1] + t * before.way[1]]
  })
  const kept = drawn.every((point, k) => {
    const [p, q] = [drawn[(k + 1) % drawn.length] as Point, lines[k]?.way ?? [0, 0]]
    return (p[0] - point[0]) * q[0] + (p[1] - point[1]) * q[1] > 0
  })
  return kept && area(drawn) * side > 0 ? drawn : inset(points, by / 2)
}
