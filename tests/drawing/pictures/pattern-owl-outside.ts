import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { owl } from '../garden.ts'

export const patternOwlOutside = (): Drawing => pattern(owl, { width: 600, height: 360 }, { face: 'outside' })
