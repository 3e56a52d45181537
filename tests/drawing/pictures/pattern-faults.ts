import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { check } from '../../../src/paper/index.ts'
import { clumsy } from '../garden.ts'

export const patternFaults = (): Drawing =>
  pattern(clumsy, { width: 600, height: 440 }, { faults: check(clumsy) })
