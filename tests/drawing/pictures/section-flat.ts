import type { Drawing } from '../../../src/drawing/marks.ts'
import { section } from '../../../src/drawing/section.ts'
import { lantern } from '../garden.ts'

export const sectionFlat = (): Drawing =>
  section(lantern, 180, 70, { width: 340, height: 280 }, { of: 'body' })
