import { stationInk } from '../../../src/drawing/notes/notes.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { lantern } from '../garden.ts'

export const viewStation = (): Drawing =>
  view(
    lantern,
    80,
    DEFAULT_CAMERA,
    { width: 590, height: 352 },
    { ink: stationInk(70), rise: ['body'], handle: true },
  )
