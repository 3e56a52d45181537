import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { check } from '../../../src/paper/index.ts'
import { clumsy } from '../garden.ts'

export const patternFaults = (): Drawing =>
  pattern(clumsy, { width: 600, height: 440 }, { faults: check(clumsy) })
