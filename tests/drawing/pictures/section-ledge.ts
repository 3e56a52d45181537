import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { lantern } from '../garden.ts'

export const sectionLedge = (): Drawing =>
  section(lantern, 60, 30, { width: 340, height: 280 }, { of: 'ledge' })
