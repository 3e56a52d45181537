/** The steps of any design, in order: words, a figure in the state that they describe, cautions, numbers to check. */
import * as says from '../../content/words/booklet/steps.ts'
import { doNotCut } from '../../content/words/sheet.ts'
import type { Drawing } from '../drawing/pen/marks.ts'
import type { Size } from '../drawing/view/camera.ts'
import type { Design } from '../paper/index.ts'
import { plainText } from '../paper/index.ts'
import { figureOf } from './figure.ts'
import type { Work } from './order.ts'
import { orderOf } from './order.ts'
import type { Words } from './words.ts'
import { wordsOf } from './words.ts'

export type { StepMotion } from '../drawing/steps/motion.ts'
export { figureOf, motionOf } from './figure.ts'
export type { Work } from './order.ts'
export { orderOf } from './order.ts'
export type { Words } from './words.ts'
export { wordsOf } from './words.ts'

export interface BookStep extends Words {
  readonly work: Work
  readonly figure: Drawing
}

const FIGURE: Size = { width: 340, height: 250 }

/** Every step of a design. Figures are drawn in a box of `size`, px. */
export function stepsOf(design: Design, size: Size = FIGURE): readonly BookStep[] {
  return orderOf(design).map((work) => ({
    work,
    ...wordsOf(design, work),
    figure: figureOf(design, work, size),
  }))
}

/**
 * The steps as plain text, for who reads by ear or by wire.
 * @param fault what does not work yet, in a sentence (`faultSays`)
 */
export function stepsText(design: Design, fault = ''): string {
  const steps = orderOf(design).map((work, k) => {
    const { title, text, letters, tools, caution, check } = wordsOf(design, work)
    return [
      says.numbered(k + 1, title),
      ...[
        ...text,
        ...(letters === undefined ? [] : [says.withLetters(letters)]),
        says.youNeed(tools),
        ...(caution === undefined ? [] : [says.takeCare(caution)]),
        ...(check === undefined ? [] : [says.withCheck(check)]),
      ].map((line) => `   ${line}`),
    ].join('\n')
  })
  const warning = fault === '' ? '' : `${doNotCut} ${fault}\n\n`
  return `${plainText(design.title)}\n\n${warning}${steps.join('\n\n')}\n`.replaceAll('\u00a0', ' ')
}
