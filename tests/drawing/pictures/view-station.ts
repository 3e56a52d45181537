import type { Drawing } from '../../../src/drawing/marks.ts'
import { stationInk } from '../../../src/drawing/notes.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view.ts'
import { lantern } from '../garden.ts'

export const viewStation = (): Drawing =>
  view(
    lantern,
    80,
    DEFAULT_CAMERA,
    { width: 590, height: 352 },
    { ink: stationInk(70), rise: ['body'], handle: true },
  )
