import type { Frames } from '../model/frames.ts'
import type { Brush } from './brush.ts'

/**
 * What paints surfaces in motion, once it has come; without it the picture's own elements are kept up to date. And the
 * frames that it keeps up with.
 */
export const brushes: { quick?: Brush | undefined; frames?: Frames } = {}
