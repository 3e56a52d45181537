import type { StepState } from '../drawing/steps/steps.ts'
import type { Reading } from './cells/chapter-tree.ts'
import { attribute, chapterTree, has, line, named } from './cells/chapter-tree.ts'

/** What a trouble's small picture shows, as a chapter's file has it: a state of its making, or the card as it stands. */
export interface TroublePicture {
  readonly shows?: StepState | undefined
  readonly at?: number | undefined
  readonly only?: string | undefined
  readonly dots?: boolean | undefined
  readonly opening?: number | undefined
  readonly set?: unknown
  readonly marks?: string | undefined
  readonly where?: string | undefined
  readonly camera?: unknown
  readonly stand?: string | undefined
  readonly near?: number | undefined
  readonly crooked?: number | undefined
}

/** A trouble row as a chapter's file has it. */
export interface TroubleRow {
  readonly sign: string
  readonly fault: string
  readonly picture: TroublePicture
  readonly cure: string
}

/** The trouble rows of a chapter's text, in its order. The grammar of cells has been checked when the chapter was built. */
export const rowsOf = (body: string, reading: Reading): readonly TroubleRow[] =>
  named(chapterTree(body), 'Slip').map((slip) => ({
    sign: attribute(slip, 'sign') as string,
    fault: attribute(slip, 'fault') as string,
    picture: {
      shows: attribute(slip, 'shows') as StepState | undefined,
      at: attribute(slip, 'at') as number | undefined,
      only: attribute(slip, 'only') as string | undefined,
      dots: has(slip, 'dots'),
      opening: attribute(slip, 'opening') as number | undefined,
      set: attribute(slip, 'set'),
      marks: attribute(slip, 'marks') as string | undefined,
      where: attribute(slip, 'where') as string | undefined,
      camera: attribute(slip, 'camera'),
      stand: attribute(slip, 'stand') as string | undefined,
      near: attribute(slip, 'near') as number | undefined,
      crooked: attribute(slip, 'crooked') as number | undefined,
    },
    cure: line(slip, reading),
  }))
