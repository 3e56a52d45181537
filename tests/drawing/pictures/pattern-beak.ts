import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { beak } from '../garden.ts'

export const patternBeak = (): Drawing => pattern(beak, { width: 340, height: 280 }, { handles: true })
