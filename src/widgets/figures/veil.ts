import type { Mark } from '../../drawing/pen/marks.ts'
import type { Bench } from '../model/bench-model.ts'
import { covering } from '../model/page.ts'

/** Whether the measure in the picture answers the guess, and is covered. */
export const veils = ({ config }: Bench): boolean =>
  covering.value && (config.covers?.includes('dimension') ?? false)

/** A picture whose measured numbers are not told: each is a question. */
export const veiled = (marks: readonly Mark[]): readonly Mark[] =>
  marks.map((mark) =>
    mark.mark === 'word' && mark.role === 'dimension' ? { ...mark, text: '?', of: 'veil' } : mark,
  )
