import type { Model } from '../model/model.ts'
import { frontSign } from '../model/model.ts'
import { RADIANS } from '../plane/vector.ts'
import type { Stretch } from './motion.ts'

/*
 * Paper has two sides. A piece stuck on a panel lies on one of them, in front of all that shares the panel's
 * plane: what swings up through that plane meets it, what stays behind does not. In a model of leaves without
 * thickness it would lie in the plane itself and tell neither.
 *
 * So the checks hold it a hair off, on its own side: `layers` times THIN sin(q (t - t0)), with q = pi over the
 * whole motion from t0 to t1. At both ends of the motion, where leaves come to lie on one another, it is back in
 * the plane, and they close over it as over a leaf; in between it is off the plane, and what crosses it by more
 * than the hair is wide (and the rim of a cut, see KERF) is seen to.
 *
 * Seen from a frame that turns at a rate of at most `spin`, itself changing by at most `jerk`, the way of its
 * points bends by no more than A (q² + 2 q spin + spin² + jerk) more, A = layers THIN: the shift is A sin(q t)
 * times a unit direction e with |e'| <= spin, |e''| <= spin² + jerk.
 */

/** One layer, mm: a thousandth of a sheet; far more than rounding, far less than the width of a cut. */
export const THIN = 1e-4

/** How stuck-on paper is held off the panels of a model between two openings. */
export interface Lifts {
  /** How far a panel is off its own plane at an opening, mm: along C x - S n of its crease's frame (C x + S n of a left panel), below 0 to the other side. */
  at(panel: number, opening: number): number
  /** The farthest it gets, mm. */
  most(panel: number): number
  /** By how much more the way of a panel's points bends over a stretch, seen from another panel; mm per radian². */
  bend(stretch: Stretch, root: number, panel: number): number
}

/** The lifts of a model over a motion from `least` to `most` degrees. */
export function liftsOf(model: Model, [least, most]: readonly [number, number]): Lifts {
  const wide = most - least
  const q = Math.PI / (wide * RADIANS)
  // A lift is told towards the front that the panel would have were it not turned over.
  const signed = model.panels.map((panel) =>
    panel.lift === 0 ? 0 : panel.lift * THIN * frontSign(model, { ...panel, turned: false }),
  )
  const of = (panel: number): number => signed[panel] ?? 0
  return {
    at: (panel, opening) =>
      of(panel) === 0 || !(wide > 0) ? 0 : of(panel) * Math.sin((Math.PI * (opening - least)) / wide),
    most: (panel) => Math.abs(of(panel)),
    bend: (stretch, root, panel) => {
      const [own, other] = [Math.abs(of(panel)), Math.abs(of(root))]
      if (own === 0) return other * q * q
      const [spin, jerk] = stretch.turns(root, panel)
      return own * (q * q + 2 * q * spin + spin * spin + jerk) + other * q * q
    },
  }
}
