/** Where the flat pieces lie in the drawing, and the way from one to the other. */
import type { SheetHandle } from '../../paper/index.ts'
import type { Rect } from '../pen/lettering.ts'
import { gripRadius, textWidth } from '../pen/lettering.ts'
import type { Point } from '../pen/marks.ts'
import type { Size } from '../view/camera.ts'
import type { Extent, Layout } from './layout.ts'
import { layOut, roomFor } from './layout.ts'
import type { Shown } from './shown.ts'
import { pieceName } from './shown.ts'

/**
 * A place on a flat piece, mm. On the card: gutter on x = 0, right page at x > 0, the reader's end at y = 0,
 * seen from inside. On a glued piece: in its own frame, seen from its front.
 */
export type SheetPoint = readonly [x: number, y: number]

/** Where things lie in the drawing. */
export interface Ground {
  readonly layout: Layout
  /** What the squares fill and words keep to: the box without the legend, px. */
  readonly drawable: Rect
  /** How far the name of a piece is lifted off what can be dragged on it, px. */
  liftOf(piece: string): number
  /** From a flat piece (the card if left out), mm, to a point of the drawing, and back. */
  fromSheet(p: SheetPoint, piece?: string): Point
  toSheet(p: Point, piece?: string): SheetPoint
}

export interface Wanted {
  readonly size: Size
  /** Height of the legend, px. */
  readonly foot: number
  /** -1 from the outside, where left and right change places. */
  readonly hand: 1 | -1
  readonly text: number
  /** What can be dragged. */
  readonly handles: readonly SheetHandle[]
  /** Where the pieces lay before: so they stay, if there is room for all. */
  readonly stay: Layout | undefined
}

/** Free space round the pieces, px. */
const PADDING = 16

/** Puts the pieces in place: the card alone in the middle, or all of them side by side. */
export function groundFor(
  card: { readonly width: number; readonly height: number },
  shown: Shown,
  { size, foot, hand, text, handles, stay }: Wanted,
): Ground {
  const room = { width: size.width - 2 * PADDING, height: size.height - foot - 2 * PADDING }
  const drawnOf = (piece: string): string => shown.twins.get(piece) ?? piece
  const dragged = new Set(handles.map(({ piece }) => drawnOf(piece)))
  const lift = shown.parts.some(({ id }) => id !== 'card' && dragged.has(id)) ? gripRadius(text) : 0
  const alone = (): Layout => ({
    scale: Math.max(0.05, Math.min(room.width / (2 * card.width), room.height / card.height)),
    shifts: new Map(),
    middle: [0, card.height / 2],
  })
  const layout = shown.parts.length > 1 ? sideBySide(shown, room, hand, { text, lift }, stay) : alone()
  const { scale, shifts, middle } = layout
  const centre: Point = [size.width / 2, PADDING + room.height / 2]
  const shiftOf = (piece: string): SheetPoint => shifts.get(drawnOf(piece)) ?? [0, 0]
  return {
    layout,
    drawable: [0, 0, size.width, size.height - foot],
    liftOf: (piece) => (dragged.has(piece) ? lift : 0),
    fromSheet: ([x, y], piece = 'card') => {
      const [dx, dy] = shiftOf(piece)
      return [centre[0] + scale * (hand * x + dx - middle[0]), centre[1] - scale * (y + dy - middle[1])]
    },
    toSheet: ([x, y], piece = 'card') => {
      const [dx, dy] = shiftOf(piece)
      return [hand * ((x - centre[0]) / scale + middle[0] - dx), middle[1] - dy - (y - centre[1]) / scale]
    },
  }
}

/** Room above the pieces for their names, px. */
interface NameRoom {
  readonly text: number
  /** Above those that can be dragged: their dots must not cover the name. */
  readonly lift: number
}

/** The pieces side by side, as they are seen. */
function sideBySide(
  shown: Shown,
  room: Size,
  hand: 1 | -1,
  { text, lift }: NameRoom,
  stay: Layout | undefined,
): Layout {
  const extents = shown.parts.map(({ id, outline }): Extent => {
    const [xs, ys] = [outline.map(([x]) => hand * x), outline.map(([, y]) => y)]
    return {
      id,
      x: [Math.min(...xs), Math.max(...xs)],
      y: [Math.min(...ys), Math.max(...ys)],
      name: id === 'card' ? 0 : textWidth(pieceName(id, shown), text),
    }
  })
  const name = text * 1.35 + lift
  return stay && roomFor(extents, stay, room, name) ? stay : layOut(extents, room, name)
}
