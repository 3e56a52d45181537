import type { Drawing } from '../../../src/drawing/marks.ts'
import { section } from '../../../src/drawing/section.ts'
import { lantern } from '../garden.ts'

export const sectionLayer = (): Drawing => section(lantern, 90, 'body', { width: 600, height: 440 })
