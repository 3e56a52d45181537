import { polygonContains } from 'd3'
import type { Drawing, Mark, PathMark } from '../drawing/pen/marks.ts'

/** The outside of a page or of the cover. */
const isOutside = ({ of, paint }: PathMark): boolean =>
  paint?.face === 'back' && /^(page|cover)\//.test(of ?? '')

const isOver = (mark: Mark, [x, y]: readonly [number, number]): mark is PathMark =>
  mark.mark === 'path' &&
  mark.role === 'facet' &&
  mark.runs.some((run) => polygonContains(run as [number, number][], [x, y]))

/** By night the air shines round a flame, over all that is drawn; but not where the flame is behind a page. */
export function withoutHidden(drawing: Drawing): Drawing {
  const isHidden = (haze: Mark): boolean => {
    if (haze.mark !== 'path' || haze.role !== 'haze' || !haze.fade) return false
    const [, , , , x, y] = haze.fade.matrix
    const before = drawing.marks.findLast((mark) => isOver(mark, [x, y]))
    return before?.mark === 'path' && isOutside(before)
  }
  return { ...drawing, marks: drawing.marks.filter((mark) => !isHidden(mark)) }
}
