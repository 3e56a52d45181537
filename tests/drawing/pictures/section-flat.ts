import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { lantern } from '../garden.ts'

export const sectionFlat = (): Drawing =>
  section(lantern, 180, 70, { width: 340, height: 280 }, { of: 'body' })
