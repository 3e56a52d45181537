import * as says from '../../../../content/words/dummy/wish.ts'
import type { Design, Mark, Origin, Vec3, Wish } from '../../../paper/index.ts'
import { riseOf } from '../../../paper/index.ts'
import { RADIANS } from '../../../paper/plane/vector.ts'

/** What a maker says of a tip: how high over its page, how far from their end, how far aside of the gutter; mm. */
export interface WishedPlace {
  readonly rise: number
  readonly along: number
  readonly aside: number
}

/** The place of a wish in a maker's words. */
export const placeOfWish = ({ at, opening }: Mark): WishedPlace => ({
  rise: riseOf(at, opening),
  along: at[1],
  aside: at[0],
})

/**
 * A point over its page: on the right page for a point on the gutter's own plane. The page leans away by half the
 * opening: rise = z sin(θ/2) - |x| cos(θ/2).
 */
export function pointOver({ rise, along, aside }: WishedPlace, opening: number): Vec3 {
  const half = (opening / 2) * RADIANS
  return [aside, along, (rise + Math.abs(aside) * Math.cos(half)) / Math.sin(half)]
}

/** The same wish with its tip elsewhere, or at another opening, at which it is as high as it was. */
export function wishAt(wish: Wish, place: Partial<WishedPlace>, opening = wish.opening): Wish {
  return { ...wish, opening, at: pointOver({ ...placeOfWish(wish), ...place }, opening) }
}

/** So many marks may lie on the way of a tip, beside its own place. */
export const MOST_MARKS = 3

/** As near to its marks a tip goes where nothing is said, mm: as the kernel has it. */
export const NEAR_PATH = 5

const tenth = (value: number): number => Math.round(value * 10) / 10

/** The same wish with these marks on the way of its tip; none: it may go as it likes. */
function withPath(wish: Wish, path: readonly Mark[]): Wish {
  const { path: _gone, ...rest } = wish
  return path.length === 0 ? rest : { ...rest, path }
}

/** One mark of the way elsewhere, or at another opening, at which it is as high as it was. */
export function markAt(wish: Wish, k: number, place: Partial<WishedPlace>, opening?: number): Wish {
  const path = wish.path ?? []
  const mark = path[k]
  if (!mark) return wish
  const when = opening ?? mark.opening
  const at = pointOver({ ...placeOfWish(mark), ...place }, when)
  return withPath(
    wish,
    path.map((one, n) => (n === k ? { opening: when, at } : one)),
  )
}

export const withoutMark = (wish: Wish, k: number): Wish =>
  withPath(
    wish,
    (wish.path ?? []).filter((_, n) => n !== k),
  )

/** One mark more: half way between shut and the first there is, half as high over its page, as tips mostly go. */
export function withMark(wish: Wish): Wish {
  const path = wish.path ?? []
  if (path.length >= MOST_MARKS) return wish
  const first = [wish, ...path].reduce((low, one) => (one.opening < low.opening ? one : low))
  const opening = Math.max(MARK_OPENING.min, Math.round(first.opening / 2))
  const { rise, along, aside } = placeOfWish(first)
  const place = { rise: tenth(rise / 2), along, aside }
  return withPath(wish, [...path, { opening, at: pointOver(place, opening) }])
}

/** Where a line is after a share of its length, 0 to 1. */
function alongLine(points: readonly Vec3[], share: number): Vec3 {
  const steps = points.slice(1).map((to, k) => {
    const from = points[k] as Vec3
    return { from, to, long: Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) }
  })
  let left = share * steps.reduce((sum, { long }) => sum + long, 0)
  for (const { from, to, long } of steps) {
    if (left <= long && long > 0) {
      const t = left / long
      return [0, 1, 2].map((i) => (from[i] as number) + t * ((to[i] as number) - (from[i] as number))) as Vec3
    }
    left -= long
  }
  return points.at(-1) ?? [0, 0, 0]
}

/**
 * The wish with a way as a hand drew it, world frame: it ends where the tip is to be, and is gone through evenly as the
 * card opens. A line of less than two points is none.
 */
export function alongDrawn(wish: Wish, points: readonly Vec3[]): Wish {
  const end = points.at(-1)
  if (!end || points.length < 2) return wish
  const marks = Array.from({ length: MOST_MARKS }, (_, k): Mark => {
    const share = (k + 1) / (MOST_MARKS + 1)
    const opening = Math.max(MARK_OPENING.min, Math.round(wish.opening * share))
    const place = placeOfWish({ opening, at: alongLine(points, share) })
    return {
      opening,
      at: pointOver(
        { rise: Math.max(0, tenth(place.rise)), along: tenth(place.along), aside: place.aside },
        opening,
      ),
    }
  })
  const { rise, along } = placeOfWish({ ...wish, at: end })
  return withPath(wishAt(wish, { rise: Math.max(1, tenth(rise)), along: tenth(along) }), marks)
}

/** Openings at which a mark may lie, degrees. */
export const MARK_OPENING = { min: 5, max: 175 } as const

/** Openings at which a wish can be made, degrees: below the least a page hardly rises. */
export const WISH_OPENING = { min: 20, max: 170 } as const

/** A tip in the middle of the card, a third of its page high. */
export function firstWish({ width, height }: Design['card']): Wish {
  const place = { rise: Math.round(width * 0.3), along: Math.round(height / 2), aside: 0 }
  return { opening: 90, at: pointOver(place, 90) }
}

export const ORIGINS: readonly { readonly value: Origin | ''; readonly says: string }[] = [
  { value: '', says: says.fromAnywhere },
  { value: 'gutter', says: says.fromGutter },
  { value: 'near', says: says.fromNear },
  { value: 'far', says: says.fromFar },
  { value: 'edge', says: says.fromEdge },
]

export const MADE: readonly { readonly value: 'card' | 'own' | ''; readonly says: string }[] = [
  { value: '', says: says.madeAnyhow },
  { value: 'card', says: says.madeOfCard },
  { value: 'own', says: says.madeOfOwn },
]

export const SHUT: readonly { readonly value: string; readonly says: string }[] = [
  { value: 'hidden', says: says.shutHidden },
  { value: 'free', says: says.shutFree },
]
