import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { lantern } from '../garden.ts'

export const sectionLayer = (): Drawing => section(lantern, 90, 'body', { width: 600, height: 440 })
