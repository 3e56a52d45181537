import type { Design, Poser } from '../../paper/index.ts'
import type { Drawing } from '../pen/marks.ts'
import { view } from './view.ts'

/** The opening at which cards stand first that are shown side by side, and those between which they swing; degrees. */
export const SIDE_BY_SIDE = { from: 100, least: 20, most: 170 } as const

const CAMERA = { turn: -24, tilt: 34, far: 1.7 }

const SIZE = { width: 520, height: 350 }

/** What stands up, and little of the pages. */
const MIDDLE: Drawing['box'] = [86, 26, 348, 232]

const { from, least, most } = SIDE_BY_SIDE

/** A card in small, framed for all of its swing, so that nothing jumps while it moves; opening in degrees. */
export const sideBySide = (design: Design | Poser, opening: number, moving = false): Drawing => ({
  ...view(design, opening, CAMERA, SIZE, { frame: [least, from, most], moving }),
  box: MIDDLE,
})
