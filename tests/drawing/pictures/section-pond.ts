import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { pond } from '../garden.ts'

export const sectionPond = (): Drawing => section(pond, 100, 'pond', { width: 340, height: 280 })
