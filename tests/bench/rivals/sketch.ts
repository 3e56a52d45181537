// What one would write first: arrays of arrays, a fresh one for every vector, nothing prepared. V-folds only.
import type { Mechanism, Vec3 } from '../../../src/paper/index.ts'

type V = number[]

const add = (a: V, b: V): V => a.map((x, k) => x + (b[k] as number))

const minus = (a: V, b: V): V => a.map((x, k) => x - (b[k] as number))

const times = (a: V, k: number): V => a.map((x) => x * k)

const dot = (a: V, b: V): number => a.reduce((sum, x, k) => sum + x * (b[k] as number), 0)

const cross = ([a, b, c]: V, [d, e, f]: V): V => {
  const [x, y, z, u, v, w] = [a, b, c, d, e, f] as [number, number, number, number, number, number]
  return [y * w - z * v, z * u - x * w, x * v - y * u]
}

const unit = (a: V): V => times(a, 1 / Math.sqrt(dot(a, a)))

interface Crease {
  origin: V
  along: V
  left: V
  right: V
}

/** Every panel and crease of a card at an opening (degrees): facets are host panels mirrored in the plane of the folds. */
export function sketch(
  card: { width: number; height: number },
  mechanisms: readonly Mechanism[],
  opening: number,
) {
  const half = (opening * Math.PI) / 360
  const creases: Record<string, Crease> = {
    gutter: {
      origin: [0, 0, 0],
      along: [0, 1, 0],
      left: [-Math.sin(half), 0, Math.cos(half)],
      right: [Math.sin(half), 0, Math.cos(half)],
    },
  }
  const pageOf = (across: V): V[] =>
    [
      [0, 0],
      [0, card.height],
      [card.width, card.height],
      [card.width, 0],
    ].map(([a, b]) => add(times(across, a as number), [0, b as number, 0]))
  const gutter = creases.gutter as Crease
  const panels: Record<string, V[]> = { 'page/left': pageOf(gutter.left), 'page/right': pageOf(gutter.right) }
  for (const m of mechanisms) {
    const host = creases[m.on]
    if (!host || m.kind !== 'cut-v-fold') throw new RangeError('V-folds only')
    const at = (across: V, [a, b]: readonly [number, number]): V =>
      add(add(host.origin, times(host.along, b)), times(across, a))
    const end: [number, number] = [m.cut, m.apex + m.run + (m.lean ?? 0)]
    const apex = at(host.left, [0, m.apex])
    const foot = at(host.left, [0, m.apex + m.run])
    const [l, r] = [at(host.left, end), at(host.right, end)]
    const square = unit(cross(minus(l, apex), minus(r, apex)))
    const mirror = (p: V): V => minus(p, times(square, 2 * dot(minus(p, apex), square)))
    const tip = mirror(foot)
    panels[`${m.id}/left`] = [apex, tip, l]
    panels[`${m.id}/right`] = [apex, tip, r]
    const ridge = unit(minus(tip, apex))
    const acrossFrom = (line: V, p: V): V => {
      const off = minus(p, apex)
      return unit(minus(off, times(line, dot(off, line))))
    }
    const [lineL, lineR] = [unit(minus(l, apex)), unit(minus(r, apex))]
    creases[`${m.id}/ridge`] = {
      origin: apex,
      along: ridge,
      left: acrossFrom(ridge, l),
      right: acrossFrom(ridge, r),
    }
    creases[`${m.id}/left`] = {
      origin: apex,
      along: lineL,
      left: times(acrossFrom(lineL, foot), -1),
      right: acrossFrom(lineL, tip),
    }
    creases[`${m.id}/right`] = {
      origin: apex,
      along: lineR,
      left: acrossFrom(lineR, tip),
      right: times(acrossFrom(lineR, foot), -1),
    }
  }
  return { panels: panels as unknown as Record<string, Vec3[]>, creases }
}
