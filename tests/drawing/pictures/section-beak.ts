import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { beak } from '../garden.ts'

export const sectionBeak = (): Drawing => section(beak, 96, 'beak', { width: 340, height: 280 })
