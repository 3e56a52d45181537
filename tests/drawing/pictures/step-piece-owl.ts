import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { owl } from '../garden.ts'

export const stepPieceOwl = (): Drawing =>
  stepFigure(owl, 'piece', { width: 300, height: 220 }, { of: ['body'] })
