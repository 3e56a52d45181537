import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { heron } from '../garden.ts'

export const viewHeron = (): Drawing =>
  view(heron, 96, DEFAULT_CAMERA, { width: 600, height: 440 }, { rise: ['beak'], handle: true })
