import type { Drawing } from '../../../src/drawing/marks.ts'
import { stepFigure } from '../../../src/drawing/steps.ts'
import { owl } from '../garden.ts'

export const stepPieceOwl = (): Drawing =>
  stepFigure(owl, 'piece', { width: 300, height: 220 }, { of: ['body'] })
