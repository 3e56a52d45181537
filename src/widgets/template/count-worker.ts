/** Run beside the dialog: to count sheets is to lay out all of them, and what fails takes a while to find. */
import type { Design } from '../../paper/index.ts'
import type { TemplateChoice } from './choice.ts'
import { countSays } from './choice.ts'
import { faultsSay } from './faults-say.ts'

export interface CountAsk {
  readonly design: Design
  readonly choice: TemplateChoice
}

/** What is said of one choice, in the order in which it is known; the last thing ends the answer. */
export type CountAnswer = { readonly count: string } | { readonly faults: string }

const answer = (said: CountAnswer): void => postMessage(said)

addEventListener('message', ({ data: { design, choice } }: MessageEvent<CountAsk>) => {
  answer({ count: countSays(design, choice) })
  answer({ faults: faultsSay(design, choice) })
})
