import type { Frame } from '../../plane/frame.ts'
import type { Flat, Lay } from '../../plane/lay.ts'
import type { CreasePart, PanelPart } from '../build.ts'
import { stripCreases } from './strip.ts'

/**
 * The shape shared by every symmetric mechanism cut from the sheet: two fold lines, one on each
 * panel of the host, mirror images of each other. The loose strip is the host mirrored in the plane
 * of the two fold lines, so its ridge is the host crease mirrored.
 *
 *      across
 *        ^        E            fold line from (cut0, 0) to (cut1, length * cos)
 *        |      / .            `toward` = 1 or -1: which way "outward" runs on the host
 *   cut0 |---- .  .
 *        +-----+--+----> outward along the host crease, from `from`
 */
export interface MirroredShape {
  /** Where outward is measured from, along the host crease, mm. */
  readonly from: number
  readonly toward: 1 | -1
  /** Distance of the fold lines from the host crease at `from`, mm. */
  readonly cut0: number
  /** Cosine and sine of the angle from the host crease to the fold line. */
  readonly cos: number
  readonly sin: number
}

/** Below this a cosine's square is no longer a full float: the fold is square to its host. */
const SQUARE = 1e-150

export function mirroredShape(
  from: number,
  toward: 1 | -1,
  cut0: number,
  outward: number,
  across: number,
): MirroredShape {
  // Divided by the larger part first: the smallest floats have too few digits for a unit direction.
  const size = Math.max(Math.abs(outward), Math.abs(across))
  const [along, off] = size === 0 ? [1, 0] : [outward / size, across / size]
  const long = Math.hypot(along, off)
  const cos = along / long
  return Math.abs(cos) < SQUARE
    ? { from, toward, cut0, cos: 0, sin: 1 }
    : { from, toward, cut0, cos, sin: off / long }
}

/**
 * Writes the frames of ridge, left and right fold.
 *
 * In the mirror plane (d, n) of the host the fold plane is seen as a line through (0, cut0 C) with
 * direction u ~ (cos, sin C); its length R = hypot(cos, sin C) also gives the folds' half angle:
 * sine cos S / R, cosine C / R, which is tan(w/2) = cos a tan(t/2) without the digits lost near 180.
 * Source: mirror geometry; the rule for w is the degree-4 vertex multiplier (tests/sources).
 */
export function placeMirrored(shape: MirroredShape, host: Frame, out: readonly Frame[]): boolean {
  const { from, toward, cut0, cos, sin } = shape
  const ridge = out[0] as Frame
  const left = out[1] as Frame
  const right = out[2] as Frame
  const S = host[12] as number
  const C = host[13] as number
  const sinC = sin * C
  const R = Math.sqrt(cos * cos + sinC * sinC)
  const uy = R === 0 ? 0 : cos / R
  const un = R === 0 ? 1 : sinC / R
  const foldS = R === 0 ? 0 : (cos * S) / R
  const foldC = R === 0 ? 1 : C / R
  const sinS = sin * S
  // The host crease's direction and inside normal, mirrored: (cos, sin) of twice u's angle.
  const py = uy * uy - un * un
  const pn = 2 * uy * un
  // The host point at `from`, mirrored.
  const t = -2 * cut0 * C * un
  const oy = t * uy
  const on = t * un + 2 * cut0 * C
  const fx = cut0 * S
  const fn = cut0 * C
  for (let k = 0; k < 3; k++) {
    const X = host[3 + k] as number
    const D = (host[6 + k] as number) * toward
    const N = host[9 + k] as number
    const O = (host[k] as number) + (host[6 + k] as number) * from
    const along = D * uy + N * un
    const across = sinS * X
    const normal = N * uy - D * un
    ridge[k] = O + oy * D + on * N
    ridge[3 + k] = X
    ridge[6 + k] = py * D + pn * N
    ridge[9 + k] = pn * D - py * N
    right[k] = O + fx * X + fn * N
    right[3 + k] = R * X - sinS * along
    right[6 + k] = across + R * along
    right[9 + k] = normal
    left[k] = O - fx * X + fn * N
    left[3 + k] = R * X + sinS * along
    left[6 + k] = R * along - across
    left[9 + k] = normal
  }
  ridge[12] = S
  ridge[13] = C
  left[12] = right[12] = foldS
  left[13] = right[13] = foldC
  return true
}

/** The three creases as they lie in the flat panels. */
export function mirroredCreases(
  shape: MirroredShape,
  ridgeLength: number,
  foldLength: number,
): readonly CreasePart[] {
  const { from, toward, cut0, cos, sin } = shape
  const inHost: Lay = { origin: [cut0, from], run: [sin, toward * cos], off: [cos, -toward * sin] }
  const inFacet: Lay = { origin: [cut0, 0], run: [sin, cos], off: [-cos, sin] }
  const lays = { host: inHost, facet: inFacet }
  return stripCreases(ridgeLength, foldLength, { left: lays, right: lays })
}

/** The two facets: one outline in ridge coordinates, lying in the sheet where they were before the cut. */
export function mirroredPanels(shape: MirroredShape, outline: readonly Flat[]): readonly PanelPart[] {
  const lay: Lay = { origin: [0, shape.from], run: [0, shape.toward], off: [1, 0] }
  return (['left', 'right'] as const).map((side) => ({
    part: side,
    crease: 'ridge',
    side,
    outline,
    flat: { panel: `host-${side}`, lay },
  }))
}
