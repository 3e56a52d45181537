import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { pond } from '../garden.ts'

export const stepPiecePond = (): Drawing =>
  stepFigure(pond, 'piece', { width: 300, height: 220 }, { of: ['pond'] })
