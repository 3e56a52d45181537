import type { Vec3 } from '../../paper/index.ts'
import { dot, RADIANS } from '../../paper/plane/vector.ts'
import type { Point } from '../pen/marks.ts'

/**
 * Where the reader's eye is, degrees. `turn` 0 looks along the gutter from the reader's end, above 0 from
 * further right; `tilt` 0 is level with the table, 90 straight down.
 */
export interface Camera {
  readonly turn: number
  readonly tilt: number
  /** The eye's distance in diagonals of the open card; default 2.3. */
  readonly far?: number
}

/** How the card rests on the table: on its gutter, with one page flat on it, or upright on its lower edge, open to the reader. */
export type Stand = 'gutter' | 'left' | 'right' | 'edge'

export interface Size {
  /** Pixels. */
  readonly width: number
  readonly height: number
}

/** A pin-hole picture of the table: its points on the screen, and the eye in the table's frame. */
export interface Lens {
  readonly eye: Vec3
  /** Unit vectors in the table's frame: to the right of the picture, up it, and from the table to the eye. */
  readonly right: Vec3
  readonly up: Vec3
  readonly toEye: Vec3
  /** Pixels per mm at the target. */
  readonly scale: number
  /** Of the open card, mm. */
  readonly diagonal: number
  /** A rectangle round the picture, and round all that a crop may show of it. */
  readonly all: readonly Point[]
  toScreen(p: Vec3): Point
  /** The same for the points `origin + a u + b v` of a plane. */
  onPlane(origin: Vec3, u: Vec3, v: Vec3): (a: number, b: number) => Point
}

/** Near enough to feel depth, far enough not to bend the card. */
const FAR = 2.3

/** A function from the card's frame to the table's at an opening: a turn about the gutter. */
export function standing(stand: Stand, opening: number): (p: Vec3) => Vec3 {
  if (stand === 'gutter') return (p) => p
  if (stand === 'edge') return ([x, y, z]) => [x, -z, y]
  const angle = (stand === 'left' ? 1 : -1) * (90 - opening / 2) * RADIANS
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return ([x, y, z]) => [x * c - z * s, y, x * s + z * c]
}

/** The way back: a point of the table's frame in the card's. */
export function unplaced(stand: Stand, opening: number): (p: Vec3) => Vec3 {
  if (stand === 'gutter') return (p) => p
  if (stand === 'edge') return ([x, y, z]) => [x, z, -y]
  return standing(stand === 'left' ? 'right' : 'left', opening)
}

export interface Framing {
  readonly card: { readonly width: number; readonly height: number }
  readonly stand?: Stand
  readonly camera: Camera
  readonly size: Size
  /** What must be in the picture, in the table's frame, mm. */
  readonly points: readonly Vec3[]
  /** Pixels kept free round it. */
  readonly padding: number
  /** Pixels per mm; left out, the picture is filled. */
  readonly scale?: number
}

/** The lens that puts the points in the middle of the picture, as large as they go. */
export function lensFor({ card, camera, size, points, padding, scale, stand }: Framing): Lens {
  const [turn, tilt] = [camera.turn * RADIANS, camera.tilt * RADIANS]
  const right: Vec3 = [Math.cos(turn), Math.sin(turn), 0]
  const toEye: Vec3 = [Math.sin(turn) * Math.cos(tilt), -Math.cos(turn) * Math.cos(tilt), Math.sin(tilt)]
  const up: Vec3 = [-Math.sin(turn) * Math.sin(tilt), Math.cos(turn) * Math.sin(tilt), Math.cos(tilt)]
  const diagonal = Math.hypot(2 * card.width, card.height)
  const far = (camera.far ?? FAR) * diagonal
  const target: Vec3 =
    stand === 'edge' ? [0, -card.width / 3, card.height / 2] : [0, card.height / 2, card.width / 3]
  const eye = target.map((t, k) => t + far * (toEye[k] as number)) as Vec3
  const plain = (p: Vec3): Point => {
    const v: Vec3 = [p[0] - target[0], p[1] - target[1], p[2] - target[2]]
    const k = far / Math.max(far / 20, far - dot(v, toEye))
    return [k * dot(v, right), -k * dot(v, up)]
  }
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const point of points) {
    const [x, y] = plain(point)
    x0 = Math.min(x0, x)
    x1 = Math.max(x1, x)
    y0 = Math.min(y0, y)
    y1 = Math.max(y1, y)
  }
  const room = [Math.max(1, size.width - 2 * padding), Math.max(1, size.height - 2 * padding)] as const
  const fitted = scale ?? Math.min(room[0] / Math.max(1e-6, x1 - x0), room[1] / Math.max(1e-6, y1 - y0))
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2]
  /** From how far a point is to the right of the target, above it and nearer to the eye, mm. */
  const onScreen = (across: number, above: number, near: number): Point => {
    const k = far / Math.max(far / 20, far - near)
    return [size.width / 2 + fitted * (k * across - cx), size.height / 2 - fitted * (k * above + cy)]
  }
  return {
    eye,
    right,
    up,
    toEye,
    scale: fitted,
    diagonal,
    all: [
      [-size.width, -size.height],
      [2 * size.width, -size.height],
      [2 * size.width, 2 * size.height],
      [-size.width, 2 * size.height],
    ],
    toScreen: (p) => {
      const off: Vec3 = [p[0] - target[0], p[1] - target[1], p[2] - target[2]]
      return onScreen(dot(off, right), dot(off, up), dot(off, toEye))
    },
    onPlane: (origin, u, v) => {
      const off: Vec3 = [origin[0] - target[0], origin[1] - target[1], origin[2] - target[2]]
      const [right0, rightU, rightV] = [dot(off, right), dot(u, right), dot(v, right)]
      const [up0, upU, upV] = [dot(off, up), dot(u, up), dot(v, up)]
      const [near0, nearU, nearV] = [dot(off, toEye), dot(u, toEye), dot(v, toEye)]
      return (a, b) =>
        onScreen(right0 + a * rightU + b * rightV, up0 + a * upU + b * upV, near0 + a * nearU + b * nearV)
    },
  }
}

/** The corners of the card's pages through the whole motion (or at the openings given), in the table's frame: the card stands on its gutter if not placed otherwise. */
export function motionPoints(
  card: { readonly width: number; readonly height: number },
  placedAt: (opening: number) => (p: Vec3) => Vec3 = () => (p) => p,
  openings: readonly number[] = [0, 20, 40, 60, 80, 100, 120, 140, 160, 180],
): readonly Vec3[] {
  return openings.flatMap((opening) => {
    const half = (opening / 2) * RADIANS
    const place = placedAt(opening)
    return [0, card.height].flatMap((y): Vec3[] => [
      place([0, y, 0]),
      place([card.width * Math.sin(half), y, card.width * Math.cos(half)]),
      place([-card.width * Math.sin(half), y, card.width * Math.cos(half)]),
    ])
  })
}

/** How far a card may be opened or shut before the picture draws back to keep it in, degrees. */
const NEAR = 14

/**
 * The openings that a tight picture has room for: those near where the card is at home, and the present one.
 * It follows from the opening alone and changes with it little by little: nothing jumps under a hand.
 */
export function openingsNear(home: number, opening: number): readonly number[] {
  const least = Math.max(0, Math.min(home - NEAR, opening))
  const most = Math.min(180, Math.max(home + NEAR, opening))
  return [0, 0.25, 0.5, 0.75, 1].map((part) => least + part * (most - least))
}
