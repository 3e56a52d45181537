import type { SvgNode } from '../../drawing/pen/nodes.ts'
import { written } from '../../drawing/pen/svg.ts'

/** A picture as the server puts it into the page; in a browser it is drawn there, and this is nothing (left-out.mjs). */
export const firstPicture = (nodes: readonly SvgNode[]): string =>
  import.meta.env.SSR ? nodes.map(written).join('') : ''
