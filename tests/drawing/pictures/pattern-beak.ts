import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { beak } from '../garden.ts'

export const patternBeak = (): Drawing => pattern(beak, { width: 340, height: 280 }, { handles: true })
