import type { Flat } from '../plane/lay.ts'
import type { Art } from './art.ts'
import { ownerOf } from './name.ts'

/** What is drawn on a mechanism's panels moved on them; on the others that carry the same drawing it stays. */
export const artCarried = (art: readonly Art[], id: string, way: (drawn: Flat) => Flat): readonly Art[] =>
  art.flatMap((one): Art[] => {
    const panels = [one.on, ...one.also]
    const own = panels.filter((panel) => ownerOf(panel) === id)
    if (own.length === 0) return [one]
    const on = (some: readonly string[], shape: readonly Flat[]): Art[] => {
      const [first, ...also] = some
      return first === undefined ? [] : [{ ...one, on: first, also, shape }]
    }
    const others = panels.filter((panel) => ownerOf(panel) !== id)
    return [...on(others, one.shape), ...on(own, one.shape.map(way))]
  })
