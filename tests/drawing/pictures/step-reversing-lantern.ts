import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stepFigure } from '../../../src/drawing/steps/steps.ts'
import { lantern } from '../garden.ts'

export const stepReversingLantern = (): Drawing =>
  stepFigure(lantern, 'reversing', { width: 300, height: 220 }, { of: ['body'] })
