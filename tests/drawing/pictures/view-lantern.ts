import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { lantern } from '../garden.ts'

export const viewLantern = (): Drawing =>
  view(lantern, 90, DEFAULT_CAMERA, { width: 600, height: 440 }, { rise: ['body'] })
