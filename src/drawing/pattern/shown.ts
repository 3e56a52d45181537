/** Which pieces the flat drawing shows, and what it calls them. */
import * as says from '../../../content/words/drawing/pattern.ts'
import type { Design, Piece } from '../../paper/index.ts'
import { handlesOf, jointsOf, nameOf, ownerOf, pieces } from '../../paper/index.ts'

/** What is drawn of a design's pieces: equal ones of one mechanism once, with their number. */
export interface Shown {
  /** The card first. */
  readonly parts: readonly Piece[]
  /** A piece that is not drawn, and the equal one that is. */
  readonly twins: ReadonlyMap<string, string>
  readonly counts: ReadonlyMap<string, number>
}

type Points = Piece['lines'][number]['points']

/** Whether two runs go through the same points, to a millionth of a millimetre. */
export const samePoints = (a: Points, b: Points): boolean =>
  a.length === b.length &&
  a.every(([x, y], k) => Math.hypot(x - (b[k]?.[0] ?? 0), y - (b[k]?.[1] ?? 0)) < 1e-6)

const alike = (a: Piece, b: Piece): boolean =>
  ownerOf(a.id) === ownerOf(b.id) &&
  a.lines.length === b.lines.length &&
  a.lines.every(({ kind, points }, k) => {
    const other = b.lines[k]
    return kind === other?.kind && samePoints(points, other.points)
  })

/** How many pieces a sheet shows at once before it is crowded: the card, and what is stuck on it. */
const FEW = 3

/** Whether a design has so many different pieces that they are better looked at one mechanism at a time. */
export const isCrowded = (design: Design): boolean => shownPieces(pieces(design)).parts.length > FEW

/** Whether a piece belongs to a mechanism: its own, one that it is stuck on or dragged on, or the card. */
export function belongs(design: Design, mechanism: string): (piece: string) => boolean {
  const near = new Set([
    'card',
    ...handlesOf(design).flatMap(({ id, piece }) => (id === mechanism ? [piece] : [])),
    ...jointsOf(design).flatMap(({ host, own }) => (ownerOf(own.piece) === mechanism ? [host.piece] : [])),
  ])
  return (piece) => near.has(piece) || ownerOf(piece) === mechanism
}

/** The cover has nothing to drag: with it all else would be drawn half as large. It and its rim are on the sheet. */
const uncovered = (all: readonly Piece[]): readonly Piece[] =>
  all.flatMap((piece) =>
    piece.id === 'cover'
      ? []
      : [{ ...piece, lines: piece.lines.filter(({ of }) => !of.startsWith('cover/')) }],
  )

export function shownPieces(all: readonly Piece[]): Shown {
  const parts: Piece[] = []
  const twins = new Map<string, string>()
  const counts = new Map<string, number>()
  for (const piece of uncovered(all)) {
    const twin = parts.find((other) => other.id !== 'card' && alike(other, piece))
    if (twin) twins.set(piece.id, twin.id)
    else parts.push(piece)
    const of = twin?.id ?? piece.id
    counts.set(of, (counts.get(of) ?? 0) + 1)
  }
  return { parts, twins, counts }
}

/** A piece's name for the reader: `moth`, `pond platform`, `pond wall, 3 times`. */
export function pieceName(id: string, { counts }: Shown): string {
  const [owner = '', part = ''] = id.split('/')
  const count = counts.get(id) ?? 1
  const name = nameOf(part === 'piece' ? owner : `${owner} ${part.replace(/-\d+$/, '')}`)
  return count > 1 ? says.times(name, count) : name
}

/** The glued pieces that the drawing shows, by name. */
export const gluedOn = (shown: Shown): readonly string[] =>
  shown.parts.slice(1).map(({ id }) => pieceName(id, shown))
