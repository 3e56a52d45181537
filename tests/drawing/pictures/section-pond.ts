import type { Drawing } from '../../../src/drawing/marks.ts'
import { section } from '../../../src/drawing/section.ts'
import { pond } from '../garden.ts'

export const sectionPond = (): Drawing => section(pond, 100, 'pond', { width: 340, height: 280 })
