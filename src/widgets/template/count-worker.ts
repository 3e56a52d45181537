/** Run beside the dialog: to count sheets is to lay out all of them, and what fails takes a while to find. */
import type { Design } from '../../paper/index.ts'
import type { TemplateChoice } from './choice.ts'
import { saidOf } from './choice.ts'

export interface CountAsk {
  readonly design: Design
  readonly choice: TemplateChoice
}

addEventListener('message', ({ data: { design, choice } }: MessageEvent<CountAsk>) => {
  postMessage(saidOf(design, choice))
})
