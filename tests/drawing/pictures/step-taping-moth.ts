import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { moth } from '../garden.ts'

export const stepTapingMoth = (): Drawing =>
  stepFigure(moth, 'taping', { width: 300, height: 220 }, { of: ['moth'] })
