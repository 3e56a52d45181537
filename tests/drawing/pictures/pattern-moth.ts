import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { moth } from '../garden.ts'

export const patternMoth = (): Drawing => pattern(moth, { width: 424, height: 352 }, { handles: true })
