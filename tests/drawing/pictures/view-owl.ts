import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { view } from '../../../src/drawing/view/view.ts'
import { owl } from '../garden.ts'

export const viewOwl = (): Drawing =>
  view(owl, 120, { turn: -24, tilt: 42 }, { width: 600, height: 440 }, { rise: ['body'], handle: true })
