/** How a page is walked on a projector, from one stop to the next. */
import * as keys from '../../content/words/key-names.ts'
import * as says from '../../content/words/site/wall-way.ts'
import type { KeyTold } from '../widgets/wall/at-wall.ts'

export interface WallWay {
  /** What a stop is, as a selector: all that stands below it until the next is seen before the clicker goes on. */
  readonly stops: string
  /** What a stop is called, as in 'card'. */
  readonly stop: string
  /** What opens and shuts the cards of the page, as a selector of its button; left out where nothing moves. */
  readonly plays?: string
}

/** The keys of such a page. */
export const keysOf = ({ stop, plays }: WallWay): readonly KeyTold[] => [
  { key: keys.pageDown, says: says.pageDownDoes(stop) },
  { key: keys.pageUp, says: says.pageUpDoes(stop) },
  ...(plays === undefined ? [] : [{ key: keys.space, says: says.spaceDoes }]),
  { key: keys.escapeKey, says: says.escapeDoes },
]

/** Of a screen, how much is new when a stop is longer than it. */
const NEW = 0.85

/**
 * Where a page is scrolled to next, px: to the next stop, or by less than a screen if that is farther. `tops` says where
 * each stop begins, `at` where the page stands, `seen` how much of it is seen.
 */
export function scrolledTo(tops: readonly number[], at: number, seen: number, by: 1 | -1): number {
  // A hair beside its place is at its place.
  const there = tops.filter((top) => (top - at) * by > 4)
  const far = at + by * NEW * seen
  return by > 0 ? Math.min(far, ...there) : Math.max(far, 0, ...there)
}
