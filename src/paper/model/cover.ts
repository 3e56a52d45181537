/** The cover: a second folded card behind the first, glued to it by its rim and not behind what moves. */
import type { Card, Design } from '../design/design.ts'
import { COVER_RIM } from '../design/design.ts'
import { common, convexParts } from '../plane/convex.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import { laid, sameLay } from '../plane/lay.ts'
import type { Model } from './model.ts'

/** How wide the rim is that is glued, mm; of a small page a quarter. Common practice, no source. */
const RIM = 8

/** From the rim to what moves, and from the rim to the gutter: both fold there on their own; mm. */
const CLEAR = 3

const FROM_GUTTER = 10

/** Shorter stretches of the rim are left out, mm. */
const LEAST = 8

/** How wide the rim of a card is that is glued to its cover, mm. */
export const rimOf = ({ width, height }: Card): number => Math.min(RIM, width / 4, height / 4)

/** One half of the cover, in the flat coordinates of the page that it lies behind. */
export interface CoverHalf {
  readonly name: 'cover/left' | 'cover/right'
  readonly outline: readonly Flat[]
  readonly onPiece: Lay
}

const LEFT: Lay = { ...sameLay, off: [-1, 0] }

/** The halves of the cover; none without one. On its piece it lies as the card does, the gutter on x = 0. */
export function coverHalves({ card }: Design): readonly CoverHalf[] {
  if (!card.cover) return []
  const [width, low, high] = [card.width + COVER_RIM, -COVER_RIM, card.height + COVER_RIM]
  const outline: readonly Flat[] = [
    [0, low],
    [0, high],
    [width, high],
    [width, low],
  ]
  return [
    { name: 'cover/left', outline, onPiece: LEFT },
    { name: 'cover/right', outline, onPiece: sameLay },
  ]
}

/** Layers of card that a cover adds everywhere in the shut card. */
export const coverLayers = ({ card }: Design): number => (card.cover ? 2 : 0)

/** A strip along an edge of a page: its low and high corner. */
type Strip = readonly [low: Flat, high: Flat]

const corners = ([[x0, y0], [x1, y1]]: Strip): readonly Flat[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

/** The strips along the edges of one page, the outer one from end to end. */
function stripsOf(card: Card): readonly { readonly strip: Strip; readonly axis: 0 | 1 }[] {
  const { width, height } = card
  const rim = rimOf(card)
  const from = Math.min(FROM_GUTTER, width / 3)
  return [
    {
      axis: 1,
      strip: [
        [width - rim, 0],
        [width, height],
      ],
    },
    {
      axis: 0,
      strip: [
        [from, 0],
        [width - rim, rim],
      ],
    },
    {
      axis: 0,
      strip: [
        [from, height - rim],
        [width - rim, height],
      ],
    },
  ]
}

/** What is left of a strip beside what moves, some paper between; cut across, so that each part is a rectangle. */
function clearOf(strip: Strip, axis: 0 | 1, moving: readonly (readonly Flat[])[]): readonly Strip[] {
  const [low, high] = strip
  const wide = corners([
    [low[0] - CLEAR, low[1] - CLEAR],
    [high[0] + CLEAR, high[1] + CLEAR],
  ])
  const taken = moving.flatMap((outline) =>
    convexParts(outline).flatMap(({ points }) => {
      const at = common(points, wide).map((p) => p[axis])
      return at.length < 3 ? [] : [[Math.min(...at) - CLEAR, Math.max(...at) + CLEAR] as const]
    }),
  )
  const left: Strip[] = []
  const part = (from: number, to: number): void => {
    if (to - from < LEAST) return
    left.push(
      axis === 0
        ? [
            [from, low[1]],
            [to, high[1]],
          ]
        : [
            [low[0], from],
            [high[0], to],
          ],
    )
  }
  let from = low[axis]
  for (const [a, b] of taken.sort((p, q) => p[0] - q[0])) {
    part(from, Math.min(a, high[axis]))
    from = Math.max(from, b)
  }
  part(from, high[axis])
  return left
}

/** A stretch of the rim that is glued; card and cover lie alike, so these are coordinates of both pieces, mm. */
export interface RimPart {
  readonly half: CoverHalf['name']
  readonly points: readonly Flat[]
}

/**
 * Where the cover is glued to the back of the card: along the edges of both pages, free of all that is cut loose
 * from them and moves, and of what is stuck on their backs.
 * @param behind what is glued on the card's back, in the card's coordinates
 */
export function coverRim(
  model: Pick<Model, 'design' | 'panels'>,
  behind: readonly (readonly Flat[])[],
): readonly RimPart[] {
  const { card } = model.design
  return coverHalves(model.design).flatMap(({ name, onPiece }) => {
    const page = model.panels.find((panel) => panel.name === name.replace('cover', 'page'))
    const moving = [
      ...(page?.notches ?? []).map(({ outline }) => outline),
      ...behind.map((outline) => outline.map(([x, y]): Flat => [x * onPiece.off[0], y])),
    ]
    return stripsOf(card).flatMap(({ strip, axis }) =>
      clearOf(strip, axis, moving).map(
        (part): RimPart => ({ half: name, points: corners(part).map((p) => laid(onPiece, p)) }),
      ),
    )
  })
}

/** The outer edge of the cover's piece, mm: it lies as the card does. Empty without a cover. */
export function coverOutline({ card }: Design): readonly Flat[] {
  if (!card.cover) return []
  const [side, low, high] = [card.width + COVER_RIM, -COVER_RIM, card.height + COVER_RIM]
  return [
    [-side, low],
    [side, low],
    [side, high],
    [-side, high],
  ]
}
