/** A point or direction in space, mm. World frame: see the README of the kernel in `index.ts`. */
export type Vec3 = [x: number, y: number, z: number]

/** `a` and `k` times `b`. */
export const add = (a: Vec3, b: Vec3, k = 1): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]]

export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k]

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2])

/** The unit vector of the same direction; of no length, nothing. */
export const unit = (a: Vec3): Vec3 => scale(a, 1 / (length(a) || 1))

export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

export const RADIANS = Math.PI / 180

export const DEGREES = 180 / Math.PI

/**
 * Sine and cosine of half an opening given in degrees. Exact at 0 and 180, and the cosine keeps its
 * relative precision near 180 (it is taken as the sine of what is missing to 180).
 */
export function halfAngle(opening: number): [sine: number, cosine: number] {
  const to = new Float64Array(2)
  halfAngleInto(to, 0, opening)
  return [to[0] as number, to[1] as number]
}

/** The same, written to a memory at a place and the next. */
export function halfAngleInto(to: Float64Array, at: number, opening: number): void {
  if (opening <= 90) {
    to[at] = Math.sin(opening * 0.5 * RADIANS)
    to[at + 1] = Math.cos(opening * 0.5 * RADIANS)
    return
  }
  const missing = (180 - opening) * 0.5 * RADIANS
  to[at] = Math.cos(missing)
  to[at + 1] = Math.sin(missing)
}
