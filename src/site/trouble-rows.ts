import type { StepState } from '../drawing/steps/steps.ts'

/** A trouble row as a chapter's file has it. */
export interface TroubleRow {
  readonly sign: string
  readonly fault: string
  readonly shows: StepState
  readonly at: number | undefined
  readonly only: string | undefined
  readonly cure: string
}

/** The trouble rows of a chapter's text, in its order. The grammar of cells has been checked when the chapter was built. */
export function rowsOf(body: string): readonly TroubleRow[] {
  return [...body.matchAll(/<Slip\s+([^>]*)>([\s\S]*?)<\/Slip>/g)].map(([, head = '', text = '']) => {
    const given = new Map(
      [...head.matchAll(/(\w+)=(?:"([^"]*)"|\{([^}]*)\})/g)].map(([, name = '', words, value]) => [
        name,
        words ?? value ?? '',
      ]),
    )
    const at = given.get('at')
    return {
      sign: given.get('sign') ?? '',
      fault: given.get('fault') ?? '',
      shows: given.get('shows') as StepState,
      at: at === undefined ? undefined : Number(at),
      only: given.get('only'),
      cure: text.replace(/\s+/g, ' ').trim(),
    }
  })
}
