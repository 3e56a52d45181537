import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { heron } from '../garden.ts'

export const sectionHeronNearlyShut = (): Drawing => section(heron, 30, 'beak', { width: 600, height: 440 })
