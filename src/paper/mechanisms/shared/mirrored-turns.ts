/**
 * Bounds on how ridge, left and right fold turn with the host, see `Build.turns`; `c` is the cosine of the wedge. The ridge turns as the
 * host does. A fold's angle w has tan(w/2) = c tan(t/2) so
 *   dw/dt = c / q,  d2w/dt2 = c (1 - c^2) sin(t/2) cos(t/2) / q^2,  q = cos^2(t/2) + c^2 sin^2(t/2).
 * q falls from 1 (shut) to c^2 (flat): the bounds take it at the wider end.
 */
export function mirroredTurns(c: number, from: number, to: number, out: Float64Array): void {
  const wide = Math.min(to, Math.PI) / 2
  const narrow = Math.max(from, 0) / 2
  // c = 0: the folds stand square to the host and never turn.
  const q = c === 0 ? 1 : Math.cos(wide) ** 2 + (c * Math.sin(wide)) ** 2
  const steep =
    narrow <= Math.PI / 4 && wide >= Math.PI / 4 ? 1 : Math.max(Math.sin(2 * narrow), Math.sin(2 * wide))
  out[0] = 1
  out[1] = 0
  out[2] = out[4] = Math.abs(c) / q
  out[3] = out[5] = (Math.abs(c) * (1 - c * c) * steep) / (2 * q * q)
}
