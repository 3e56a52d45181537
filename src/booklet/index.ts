/** The steps of any design, in order: words, a figure in the state that they describe, cautions, numbers to check. */
import type { Drawing } from '../drawing/pen/marks.ts'
import { only } from '../drawing/steps/scene.ts'
import type { StepOptions, StepState } from '../drawing/steps/steps.ts'
import { stepFigure } from '../drawing/steps/steps.ts'
import type { Size } from '../drawing/view/camera.ts'
import type { Design } from '../paper/index.ts'
import { openingRange, plainText } from '../paper/index.ts'
import type { Work } from './order.ts'
import { orderOf } from './order.ts'
import type { Words } from './words.ts'
import { wordsOf } from './words.ts'

export type { Work } from './order.ts'
export { orderOf } from './order.ts'
export type { Words } from './words.ts'
export { wordsOf } from './words.ts'

export interface BookStep extends Words {
  readonly work: Work
  readonly figure: Drawing
}

const FIGURES: Readonly<Record<Work['does'], StepState>> = {
  'cut-out': 'flat',
  colour: 'flat',
  cut: 'cutting',
  crease: 'creased',
  push: 'reversing',
  pieces: 'piece',
  lay: 'glued',
  close: 'closing',
  tape: 'taping',
  pop: 'popping',
  stand: 'glued',
  stick: 'glued',
  press: 'shut',
  open: 'open',
  cover: 'covering',
}

/** Openings at which steps are shown, degrees: as far as the card goes. */
const AT: Partial<Record<Work['does'], number>> = {
  lay: 150,
  stand: 180,
  stick: 120,
  tape: 120,
  pop: 110,
  push: 110,
  open: 110,
  cover: 150,
}

const FIGURE: Size = { width: 340, height: 250 }

/** The design as far as it is made when a piece of work is done. */
function madeSoFar(design: Design, { does, of, there }: Work): Design {
  if (does === 'cut-out' || does === 'colour' || does === 'cut' || does === 'crease' || does === 'pieces')
    return design
  return only(design, [...there, ...of])
}

/** What a piece of work looks like, in a box of `size`, px. */
export function figureOf(design: Design, work: Work, size: Size): Drawing {
  const part = madeSoFar(design, work)
  const wanted = AT[work.does]
  const [least, most] = openingRange(part)
  const opening = wanted === undefined ? undefined : Math.max(least, Math.min(most, wanted))
  const options: StepOptions = {
    ...(opening === undefined ? {} : { opening }),
    ...(work.of.length > 0 ? { of: work.of, there: work.there } : {}),
  }
  return stepFigure(part, FIGURES[work.does], size, options)
}

/** Every step of a design. Figures are drawn in a box of `size`, px. */
export function stepsOf(design: Design, size: Size = FIGURE): readonly BookStep[] {
  return orderOf(design).map((work) => ({
    work,
    ...wordsOf(design, work),
    figure: figureOf(design, work, size),
  }))
}

/** The steps as plain text, for who reads by ear or by wire. */
export function stepsText(design: Design): string {
  const steps = orderOf(design).map((work, k) => {
    const { title, text, tools, caution, check } = wordsOf(design, work)
    return [
      `${k + 1}. ${title}`,
      ...text.map((one) => `   ${one}`),
      `   You need: ${tools}.`,
      ...(caution === undefined ? [] : [`   Take care: ${caution}`]),
      ...(check === undefined ? [] : [`   Check: ${check}`]),
    ].join('\n')
  })
  return `${plainText(design.title)}\n\n${steps.join('\n\n')}\n`.replaceAll('\u00a0', ' ')
}
