import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { lantern } from '../garden.ts'

export const patternLantern = (): Drawing =>
  pattern(lantern, { width: 600, height: 440 }, { handles: ['body'] })
