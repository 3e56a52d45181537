export const throughLay = (lay: Lay, points: readonly Flat[]): Flat[] =>
  points.map(([across, along]) => [
    lay.origin[0] + along * lay.run[0] + across * lay.off[0],
    lay.origin[1] + along * lay.run[1] + across * lay.off[1],
  ])

/** Left and right changed. */
export const MIRROR: Lay = { origin: [0, 0], run: [0, 1], off: [-1, 0] }

/** Whether a lay turns the plane over. */
export const isMirroring = ({ run, off }: Lay): boolean => off[0] * run[1] - off[1] * run[0] < 0

/** A point of a flat panel, mm: distance from the crease it hangs on, and distance along that crease. */
export type Flat = readonly [across: number, along: number]

/**
 * A rigid motion of the plane (a mirroring allowed) that takes the flat coordinates of one
 * crease's side into the flat coordinates of a panel: point = origin + along * run + across * off.
 */
export interface Lay {
  readonly origin: Flat
  /** Unit direction of "along". */
  readonly run: Flat
  /** Unit direction of "across". */
  readonly off: Flat
}

/** The lay that changes nothing. */
export const sameLay: Lay = { origin: [0, 0], run: [0, 1], off: [1, 0] }

/** A point `[across, along]` of the inner frame, in the outer one. */
export function laid(lay: Lay, [across, along]: Flat): Flat {
  return [
    lay.origin[0] + along * lay.run[0] + across * lay.off[0],
    lay.origin[1] + along * lay.run[1] + across * lay.off[1],
  ]
}

/** The inverse of `laid`: the outer point in the inner frame. */
export function unlaid(lay: Lay, [across, along]: Flat): Flat {
  const a = across - lay.origin[0]
  const b = along - lay.origin[1]
  return [a * lay.off[0] + b * lay.off[1], a * lay.run[0] + b * lay.run[1]]
}

/** `inner` read through `outer`. */
export function compose(outer: Lay, inner: Lay): Lay {
  const turn = ([across, along]: Flat): Flat => [
    along * outer.run[0] + across * outer.off[0],
    along * outer.run[1] + across * outer.off[1],
  ]
  return { origin: laid(outer, inner.origin), run: turn(inner.run), off: turn(inner.off) }
}
