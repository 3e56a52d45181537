import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { pond } from '../garden.ts'

/** Cut where it is asked for, in a narrow place, measured in inches. */
export const sectionInches = (): Drawing =>
  section(pond, 70, 100, { width: 200, height: 240 }, { of: 'pond', unit: 'in', text: 12 })
