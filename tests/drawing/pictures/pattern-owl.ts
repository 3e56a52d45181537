import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { owl } from '../garden.ts'

export const patternOwl = (): Drawing => pattern(owl, { width: 340, height: 420 }, { handles: ['left-wing'] })
