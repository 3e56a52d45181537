import type { Drawing } from '../../../src/drawing/marks.ts'
import { standOff } from '../../../src/drawing/notes.ts'
import { section } from '../../../src/drawing/section.ts'
import { heron } from '../garden.ts'

export const sectionHeronNearlyShut = (): Drawing =>
  section(heron, 30, 'beak', { width: 600, height: 440 }, { notes: standOff })
