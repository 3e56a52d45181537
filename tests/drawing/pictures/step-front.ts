import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { beak } from '../garden.ts'

export const stepFront = (): Drawing => stepFigure(beak, 'front', { width: 300, height: 220 })
