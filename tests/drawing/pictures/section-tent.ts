import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { pond } from '../garden.ts'

export const sectionTent = (): Drawing => section(pond, 130, 30, { width: 340, height: 280 }, { of: 'back' })
