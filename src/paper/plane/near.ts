import type { Flat } from './lay.ts'

/** A box in any number of dimensions: least and greatest along each axis in turn. */
export type Extent = ArrayLike<number>

/** The box round flat points. */
export function extentOf(points: readonly Flat[]): readonly [number, number, number, number] {
  let [left, low] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  let [right, high] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const [a, l] of points) {
    left = Math.min(left, a)
    right = Math.max(right, a)
    low = Math.min(low, l)
    high = Math.max(high, l)
  }
  return [left, right, low, high]
}

/** Whether two boxes come within `reach` of each other along every axis. */
export function areNear(one: Extent, two: Extent, reach: number): boolean {
  for (let k = 0; k < one.length; k += 2) {
    if ((one[k] as number) - (two[k + 1] as number) > reach) return false
    if ((two[k] as number) - (one[k + 1] as number) > reach) return false
  }
  return true
}

/** The axis along which the middles of the boxes are spread most. */
function widest(boxes: readonly Extent[]): number {
  let best = { axis: 0, spread: Number.NEGATIVE_INFINITY }
  for (let axis = 0; 2 * axis < (boxes[0]?.length ?? 0); axis++) {
    let [sum, squares] = [0, 0]
    for (const box of boxes) {
      const middle = (box[2 * axis] as number) + (box[2 * axis + 1] as number)
      if (!Number.isFinite(middle)) continue
      sum += middle
      squares += middle * middle
    }
    const spread = squares - (sum * sum) / boxes.length
    if (spread > best.spread) best = { axis, spread }
  }
  return best.axis
}

/**
 * Every two boxes (by index, in order) that come within `reach` of each other along every axis, touching
 * included. Sweep and prune: sorted along one axis, each is held only against those that begin before it ends.
 */
export function nearPairs(boxes: readonly Extent[], reach = 0): readonly (readonly [number, number])[] {
  const k = 2 * widest(boxes)
  // Where nothing is known of a box it may be anywhere.
  const end = (index: number, at: number, unknown: number): number => {
    const value = (boxes[index] as Extent)[at] as number
    return Number.isNaN(value) ? unknown : value
  }
  const low = (index: number): number => end(index, k, Number.NEGATIVE_INFINITY)
  const order = boxes.map((_, index) => index).sort((a, b) => low(a) - low(b) || 0)
  const count = boxes.length
  const found: number[] = []
  order.forEach((index, at) => {
    const box = boxes[index] as Extent
    const high = end(index, k + 1, Number.POSITIVE_INFINITY) + reach
    for (let next = at + 1; next < count; next++) {
      const other = order[next] as number
      if (low(other) > high) break
      if (areNear(box, boxes[other] as Extent, reach))
        found.push(index < other ? index * count + other : other * count + index)
    }
  })
  return Array.from(Float64Array.from(found).sort(), (pair) => [Math.floor(pair / count), pair % count])
}
