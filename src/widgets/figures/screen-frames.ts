import type { Frames } from '../model/frames.ts'
import { NO_FRAMES } from '../model/frames.ts'
import { brushes } from './quick.ts'

/** The screen's frames; where a brush paints, those of its own: all figures of a bench keep step with its card. */
export const screenFrames: Frames =
  typeof requestAnimationFrame === 'undefined'
    ? NO_FRAMES
    : {
        ask: (run) => brushes.frames?.ask(run) ?? requestAnimationFrame(run),
        drop: (ticket) => (brushes.frames?.drop ?? cancelAnimationFrame)(ticket),
      }
