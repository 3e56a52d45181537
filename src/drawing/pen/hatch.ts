import type { Point } from './marks.ts'

/** Between the lines of a hatch, and the length of its strokes on a line to be taped, mm. */
const STEP = 2

const STROKE = 1.6

const SIXTY = Math.sin(Math.PI / 3)

/** Edges within this of a hatch would be taken for one of its lines: the sine of 15 degrees. */
const ALIKE = Math.sin(Math.PI / 12)

/** How much of an outline runs as the lines do along which x + slant * y is the same. */
function along(outline: readonly Point[], slant: 1 | -1): number {
  return outline.reduce((sum, [ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length] as Point
    const long = Math.hypot(bx - ax, by - ay)
    return Math.abs(bx - ax + slant * (by - ay)) * Math.SQRT1_2 <= ALIKE * long ? sum + long : sum
  }, 0)
}

/**
 * Slanting lines that fill an area: x + y is the same along each, or x - y where the area's own edges run as the
 * others would. An outline's own crossings in pairs, by the even-odd rule.
 */
export function hatch(outline: readonly Point[], step = STEP): Point[][] {
  const slant = along(outline, 1) > 1.5 * along(outline, -1) + step ? -1 : 1
  const level = ([x, y]: Point): number => x + slant * y
  const levels = outline.map(level)
  const runs: Point[][] = []
  const first = Math.floor(Math.min(...levels) / step) + 0.5
  for (let k = first; k * step < Math.max(...levels); k++) {
    const at = k * step
    const crossings = outline.flatMap((a, i): Point[] => {
      const b = outline[(i + 1) % outline.length] as Point
      // An end counts as below when it lies on the line, so that a corner is crossed once or twice, never three times.
      if (level(a) > at === level(b) > at) return []
      const t = (at - level(a)) / (level(b) - level(a))
      return [[a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]]
    })
    crossings.sort((a, b) => a[0] - b[0])
    for (let i = 0; i + 1 < crossings.length; i += 2)
      runs.push([crossings[i] as Point, crossings[i + 1] as Point])
  }
  return runs
}

/** Short slanting strokes across a line that is to be taped. */
export function strokes(line: readonly Point[], step = STEP, stroke = STROKE): Point[][] {
  return line.slice(1).flatMap((b, k) => {
    const a = line[k] as Point
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    const count = Math.max(1, Math.round(long / step))
    return Array.from({ length: count }, (_, i): Point[] => {
      const t = (i + 0.5) / count
      const [x, y] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
      const [sx, sy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
      // Turned from the line itself by 60 degrees: strokes of one slant would vanish in a line that runs their way.
      const half = stroke / 2
      const [dx, dy] = [half * (0.5 * sx + SIXTY * sy), half * (0.5 * sy - SIXTY * sx)]
      return [
        [x - dx, y - dy],
        [x + dx, y + dy],
      ]
    })
  })
}
