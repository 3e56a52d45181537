import type { Design, Mechanism } from '../../paper/index.ts'

/** A mechanism by its id. Throws a RangeError if the design has none. */
export const mechanismOf = (design: Design, id: string): Mechanism => {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id} in ${design.title}`)
  return m
}
