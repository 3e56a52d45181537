import type { Drawing } from '../../../src/drawing/marks.ts'
import { stepFigure } from '../../../src/drawing/steps.ts'
import { beak } from '../garden.ts'

export const stepFolding = (): Drawing => stepFigure(beak, 'folding', { width: 300, height: 220 })
