/** What the page that helps to choose shows of each mechanism: words from the content, numbers from the kernel. */
import type { Drawing } from '../drawing/pen/marks.ts'
import { view } from '../drawing/view/view.ts'
import type { Design, Poser } from '../paper/index.ts'

/** What somebody may look for, in the order in which it is offered. */
export const WANTS = [
  { name: 'rises', label: 'rises' },
  { name: 'swings', label: 'swings to you or away' },
  { name: 'sweeps', label: 'sweeps' },
  { name: 'turns', label: 'nods and turns' },
  { name: 'mouth', label: 'opens like a mouth' },
  { name: 'platform', label: 'makes a platform' },
  { name: 'guest', label: 'sits on another part' },
  { name: 'uncut', label: 'needs no glue' },
] as const

/** The opening at which all cards stand first, and those between which they swing; degrees. */
export const CHOICES = { from: 100, least: 20, most: 170 } as const

const CAMERA = { turn: -24, tilt: 34, far: 1.7 }

const SIZE = { width: 520, height: 350 }

/** What stands up, and little of the pages. */
const MIDDLE: Drawing['box'] = [86, 26, 348, 232]

/** A card in small, framed for all of its swing, so that nothing jumps while it moves. */
export const choicePicture = (design: Design | Poser, opening: number, moving = false): Drawing => ({
  ...view(design, opening, CAMERA, SIZE, { frame: [CHOICES.least, CHOICES.from, CHOICES.most], moving }),
  box: MIDDLE,
})
