import type { Mark, Point } from '../../drawing/pen/marks.ts'
import type { Bench } from '../model/bench-model.ts'
import { covering } from '../model/page.ts'

/** Whether the measure in the picture answers the guess, and is covered. */
export const veils = ({ config }: Bench): boolean =>
  covering.value && (config.covers?.includes('dimension') ?? false)

/** A picture whose measured number is covered by the page: a question at the foot of its line stands for it, off the face above. */
export function veiled(marks: readonly Mark[]): readonly Mark[] {
  const word = marks.find((mark) => mark.mark === 'word' && mark.role === 'dimension')
  if (word?.mark !== 'word') return marks
  const foot = marks.find((mark) => mark.mark === 'dot' && mark.of?.endsWith('/rise'))
  const { at, size } = word
  const beside: Point = foot?.mark === 'dot' ? [foot.at[0] + 0.7 * size, foot.at[1] + 0.7 * size] : at
  return [...marks, { ...word, at: beside, anchor: 'start', text: '?', of: 'veil' }]
}
