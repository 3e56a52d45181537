import type { Mark, Point } from '../../drawing/pen/marks.ts'
import type { Bench } from '../model/bench-model.ts'
import { covering } from '../model/page.ts'

/** Whether the measure in the picture answers the guess, and is covered. */
export const veils = ({ config }: Bench): boolean =>
  covering.value && (config.covers?.includes('dimension') ?? false)

/** A picture whose measured number is not told: a question beside the tip. */
export function veiled(marks: readonly Mark[]): readonly Mark[] {
  const tip = marks.find((mark) => mark.mark === 'dot' && mark.of?.endsWith('/tip'))
  return marks.map((mark) => {
    if (mark.mark !== 'word' || mark.role !== 'dimension') return mark
    const { at, size } = mark
    const beside: Point = tip?.mark === 'dot' ? [tip.at[0] + 0.55 * size, tip.at[1] - 0.3 * size] : at
    return { ...mark, at: beside, anchor: 'start', text: '?', of: 'veil' }
  })
}
