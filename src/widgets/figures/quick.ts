import type { Brush } from './brush.ts'

/** What paints surfaces in motion, once it has come; without it the picture's own elements are kept up to date. */
export const brushes: { quick?: Brush | undefined } = {}
