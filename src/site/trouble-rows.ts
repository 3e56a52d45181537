import type { StepState } from '../drawing/steps/steps.ts'
import type { Reading } from './cells/chapter-tree.ts'
import { attribute, chapterTree, has, line, named } from './cells/chapter-tree.ts'

/** A trouble row as a chapter's file has it. */
export interface TroubleRow {
  readonly sign: string
  readonly fault: string
  readonly shows: StepState
  readonly at: number | undefined
  readonly only: string | undefined
  readonly dots: boolean
  readonly cure: string
}

/** The trouble rows of a chapter's text, in its order. The grammar of cells has been checked when the chapter was built. */
export const rowsOf = (body: string, reading: Reading): readonly TroubleRow[] =>
  named(chapterTree(body), 'Slip').map((slip) => ({
    sign: attribute(slip, 'sign') as string,
    fault: attribute(slip, 'fault') as string,
    shows: attribute(slip, 'shows') as StepState,
    at: attribute(slip, 'at') as number | undefined,
    only: attribute(slip, 'only') as string | undefined,
    dots: has(slip, 'dots'),
    cure: line(slip, reading),
  }))
