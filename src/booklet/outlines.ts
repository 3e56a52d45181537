/** How the card and its cover get their outlines from the sheet, on the papers that most printers hold. */
import type { Design, Piece } from '../paper/index.ts'
import { pieces } from '../paper/index.ts'
import { bestTurn, boxOf, fitOn, SAFE } from '../sheet/pages/fit.ts'
import { paperOf } from '../sheet/pages/paper-sizes.ts'

const USUAL = [paperOf('a4'), paperOf('letter')]

type Outlined = 'card' | 'cover'

const pieceOf = (design: Design, id: Outlined): Piece | undefined =>
  pieces(design).find((one) => one.id === id)

/** How large a piece is, laid open, mm. */
function sizeOf({ outline }: Piece): readonly [wide: number, high: number] {
  const { left, right, top, bottom } = boxOf(outline)
  return [right - left, bottom - top]
}

/** Whether a piece may fill its sheet, so that an edge of the paper is its own and the sheet says what to trim. */
export function mayBeTrimmed(design: Design, id: Outlined): boolean {
  const piece = pieceOf(design, id)
  if (!piece) return false
  const [wide, high] = sizeOf(piece)
  return USUAL.some((paper) => {
    const { width, height } = bestTurn(piece, paper).turn
    return wide > width - 2 * SAFE || high > height - 2 * SAFE
  })
}

/** How large the cover is where a sheet may have no room for it, so that it is cut from other card; else null. */
export function coverApart(design: Design): readonly [wide: number, high: number] | null {
  const cover = pieceOf(design, 'cover')
  const lacks = USUAL.some((paper) => {
    const { ok, leavesCover } = fitOn(design, paper)
    return !ok || leavesCover
  })
  return cover && lacks ? sizeOf(cover) : null
}
