import type { Drawing } from '../../../src/drawing/marks.ts'
import { view } from '../../../src/drawing/view.ts'
import { owl } from '../garden.ts'

export const viewOwl = (): Drawing =>
  view(owl, 120, { turn: -24, tilt: 42 }, { width: 600, height: 440 }, { rise: ['body'], handle: true })
