import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { check } from '../../../src/paper/index.ts'
import { clumsy } from '../garden.ts'

export const viewFaults = (): Drawing =>
  view(clumsy, 100, DEFAULT_CAMERA, { width: 600, height: 440 }, { faults: check(clumsy) })
