import * as says from '../../../content/words/sheet/paper-use.ts'
import type { Design } from '../../paper/index.ts'
import { pieces } from '../../paper/index.ts'
import { signedArea } from '../../paper/plane/convex.ts'
import type { SheetOptions, SheetPage } from './layout.ts'

/** How much paper a print takes. */
export interface PaperUse {
  readonly sheets: number
  /** How much of all of it becomes pieces, 0 to 1. */
  readonly full: number
}

/** How much paper these pages of a design take: what is left to cut from other card does not count. */
export function paperUse(
  design: Design,
  pages: readonly SheetPage[],
  { copies = 1 }: Pick<SheetOptions, 'copies'>,
): PaperUse {
  // A piece that is larger than the paper lies on several sheets: it is counted by its name.
  const printed = new Set(pages.flatMap(({ placed }) => placed.map(({ piece }) => piece)))
  const area = pieces(design)
    .filter(({ id }) => printed.has(id))
    .reduce((sum, { outline }) => sum + Math.abs(signedArea(outline)), 0)
  const paper = pages.reduce(
    (sum, { box: [left, top, right, bottom] }) => sum + (right - left) * (bottom - top),
    0,
  )
  return { sheets: pages.length, full: (copies * area) / paper }
}

/** `2 sheets, 58 % full` */
export const useSays = ({ sheets, full }: PaperUse): string => says.taken(sheets, Math.round(100 * full))
