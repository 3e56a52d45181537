import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { heron } from '../garden.ts'

export const stepReversingEyes = (): Drawing =>
  stepFigure(heron, 'reversing', { width: 300, height: 220 }, { of: ['left-eye', 'right-eye'] })
