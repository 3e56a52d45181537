import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { heron } from '../garden.ts'

export const stepCuttingEyes = (): Drawing =>
  stepFigure(heron, 'cutting', { width: 300, height: 220 }, { of: ['left-eye', 'right-eye'] })
