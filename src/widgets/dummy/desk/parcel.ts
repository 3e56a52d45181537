import type { Design, Mechanism } from '../../../paper/index.ts'

/**
 * A design on its way to a worker: what has not changed since the last one is a number, the place where it stood. So
 * what has not changed stays the very same object there, and what is known of it need not be worked out anew.
 */
export interface Parcel {
  readonly card: Design['card'] | null
  readonly mechanisms: readonly (Mechanism | number)[]
  readonly rest: Omit<Design, 'card' | 'mechanisms'>
}

export const packed = (design: Design, last: Design | null): Parcel => {
  const { card, mechanisms, ...rest } = design
  const places = new Map(last?.mechanisms.map((m, k) => [m, k]))
  return {
    card: card === last?.card ? null : card,
    mechanisms: mechanisms.map((m) => places.get(m) ?? m),
    rest,
  }
}

/** Throws a RangeError if it was packed against another design than the last one. */
export function unpacked({ card, mechanisms, rest }: Parcel, last: Design | null): Design {
  const known = card ?? last?.card
  if (!known) throw new RangeError('the parcel has no card, and there is no design before it')
  return {
    ...rest,
    card: known,
    mechanisms: mechanisms.map((m) => {
      const one = typeof m === 'number' ? last?.mechanisms[m] : m
      if (!one) throw new RangeError(`the design before it has no mechanism ${m}`)
      return one
    }),
  }
}
