import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { owl } from '../garden.ts'

export const stepClosingOwl = (): Drawing =>
  stepFigure(owl, 'closing', { width: 300, height: 220 }, { of: ['body'] })
