import { notes } from '../../../src/drawing/notes/notes.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { bare } from '../garden.ts'

export const viewSpot = (): Drawing =>
  view(
    bare,
    90,
    DEFAULT_CAMERA,
    { width: 340, height: 280 },
    {
      notes: notes({
        labels: { 'page/left': 'left page', gutter: 'gutter' },
        spots: [{ panel: 'page/right', flat: [60, 74], text: '60.0 mm', handle: true, of: 'spot' }],
      }),
    },
  )
