import type { Drawing } from '../../../src/drawing/marks.ts'
import { stepFigure } from '../../../src/drawing/steps.ts'
import { beak } from '../garden.ts'

export const stepCutting = (): Drawing => stepFigure(beak, 'cutting', { width: 300, height: 220 })
