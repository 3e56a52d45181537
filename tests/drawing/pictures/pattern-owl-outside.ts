import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { owl } from '../garden.ts'

export const patternOwlOutside = (): Drawing => pattern(owl, { width: 600, height: 360 }, { face: 'outside' })
