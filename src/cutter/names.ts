/** What the pieces of a sheet are called, and where in each there is most room for that. */
import * as says from '../../content/words/cutter.ts'
import type { Flat } from '../paper/index.ts'
import { nameOf } from '../paper/index.ts'
import { nearestEdge } from '../paper/plane/outline.ts'
import { edgesOf, isWithin } from '../paper/plane/segment.ts'

/** What a piece is called. */
export function titleOf(id: string): string {
  const [owner = id, part = 'piece'] = id.split('/')
  return part === 'piece' ? nameOf(owner) : says.piece(nameOf(owner), nameOf(part))
}

/** So many places are tried in a row and in a column. */
const GRID = 24

/** The place in an outline that is farthest from its edge, of some that are tried, and how far it is. */
export function roomiest(outline: readonly Flat[]): { readonly at: Flat; readonly room: number } {
  const edges = edgesOf(outline)
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)]
  const along = (all: readonly number[], k: number): number => {
    const least = Math.min(...all)
    return least + ((k + 0.5) / GRID) * (Math.max(...all) - least)
  }
  let best = { at: outline[0] ?? ([0, 0] as Flat), room: 0 }
  for (let i = 0; i < GRID; i++)
    for (let k = 0; k < GRID; k++) {
      const at: Flat = [along(xs, i), along(ys, k)]
      const { distance } = nearestEdge(edges, at)
      if (distance > best.room && isWithin(edges, at)) best = { at, room: distance }
    }
  return best
}
