import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { moth } from '../garden.ts'

export const patternMoth = (): Drawing => pattern(moth, { width: 424, height: 352 }, { handles: true })
