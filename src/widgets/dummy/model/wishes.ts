import type { Design, Origin, Vec3, Wish } from '../../../paper/index.ts'
import { riseOf } from '../../../paper/index.ts'

const RADIANS = Math.PI / 180

/** What a maker says of a tip: how high over its page, how far from their end, how far aside of the gutter; mm. */
export interface WishedPlace {
  readonly rise: number
  readonly along: number
  readonly aside: number
}

/** The place of a wish in a maker's words. */
export const placeOfWish = ({ at, opening }: Wish): WishedPlace => ({
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

/** Openings at which a wish can be made, degrees: below the least a page hardly rises. */
export const WISH_OPENING = { min: 20, max: 170 } as const

/** A tip in the middle of the card, a third of its page high. */
export function firstWish({ width, height }: Design['card']): Wish {
  const place = { rise: Math.round(width * 0.3), along: Math.round(height / 2), aside: 0 }
  return { opening: 90, at: pointOver(place, 90) }
}

export const ORIGINS: readonly { readonly value: Origin | ''; readonly says: string }[] = [
  { value: '', says: 'from anywhere' },
  { value: 'gutter', says: 'up from the gutter' },
  { value: 'near', says: 'from my end' },
  { value: 'far', says: 'from the far end' },
  { value: 'edge', says: 'in from the edge' },
]

export const MADE: readonly { readonly value: 'card' | 'own' | ''; readonly says: string }[] = [
  { value: '', says: 'however it goes' },
  { value: 'card', says: 'from the card itself' },
  { value: 'own', says: 'from card of its own' },
]

export const SHUT: readonly { readonly value: string; readonly says: string }[] = [
  { value: 'hidden', says: 'is hidden' },
  { value: 'free', says: 'may stick out' },
]
