/**
 * The picture that another site shows beside a link to a page of ours: the page's card on its table, and its title on a
 * leaf of the exercise book. Any program can paint it: it has plain colours, and letters as outlines.
 */

import { book } from '../../../content/words/site/book.ts'
import type { Drawing, Mark, PathMark, WordMark } from '../../drawing/pen/marks.ts'
import { wordInk } from '../../drawing/pen/printed.ts'
import { escaped } from '../../drawing/pen/svg.ts'
import { cut } from '../../drawing/pen/svg-values.ts'
import type { Size } from '../../drawing/view/camera.ts'
import { pictureSvg } from '../../sheet/files/svg-picture.ts'
import { moved, paragraph } from '../../sheet/marks/setting.ts'
import type { Outliner } from './outlines.ts'

export interface Poster {
  readonly title: string
  /** In red over the title: what part of the book it is. */
  readonly over: string
  /** The card, drawn in a box of `CARD`. */
  readonly drawing: Drawing
}

/** Pixels: nearly twice as wide as high, as links are shown most. */
export const POSTER = { width: 1200, height: 630 } as const satisfies Size

/** How wide the leaf is, and how far a card may come over it, px. */
const LEAF = 430
const OVER_LEAF = 26

const LEFT = LEAF - OVER_LEAF

/** The box that a card is drawn in, px. */
export const CARD: Size = { width: POSTER.width - LEFT, height: POSTER.height }

/** Height of the type in it, px. */
export const CARD_TEXT = 26

/** The site's tokens by day: see tokens.css. */
const [GROUND, INK, RED, SQUARE, MARGIN_LINE] = ['#fdfdfa', '#1a1d33', '#c8102e', '#dfe6f5', '#e58a96']
const [TABLE, TABLE_FAR, TABLE_SHADE] = ['#ead9bb', '#cfb68d', '#2a1c33']

/** Of the leaf, px: its red line, from that to the words, from them to its edge, the side of a square. */
const [MARGIN, INSET, EDGE, SIDE] = [60, 26, 30, 30]

/** Where words stand on it, px from the top; the name of the book from the bottom. */
const [TOP, TITLE_BELOW, NAME] = [120, 20, 66]

const TITLE = { size: 58, leading: 63 } as const
const SMALL = { size: 27, leading: 33 } as const

/** As the style sheet has the table: light in its middle, darker to its rim. */
function table({ width, height }: Size): string {
  const [x, y] = [LEFT + 0.46 * CARD.width, 0.44 * CARD.height]
  return (
    `<radialGradient id="table" gradientUnits="userSpaceOnUse" cx="${x}" cy="${y}" r="${cut(0.7 * CARD.width)}">` +
    `<stop offset="0" stop-color="${TABLE}"/><stop offset="1" stop-color="${TABLE_FAR}"/></radialGradient>` +
    `<path fill="url(#table)" d="M0 0h${width}v${height}H0Z"/>`
  )
}

/** Squared paper along the left edge, and its shadow on the table. */
function leaf({ height }: Size): string {
  const every = (length: number, line: (at: number) => string) =>
    Array.from({ length: Math.floor(length / SIDE) }, (_, k) => line((k + 0.5) * SIDE)).join('')
  const squares =
    every(LEAF, (x) => `M${cut(LEAF - x)} 0v${height}`) + every(height, (y) => `M0 ${cut(y)}h${LEAF}`)
  const strip = (wide: number, look: string) => `<path ${look} d="M0 0h${wide}v${height}H0Z"/>`
  return (
    [14, 9, 5, 2]
      .map((beyond) => strip(LEAF + beyond, `fill="${TABLE_SHADE}" fill-opacity="0.06"`))
      .join('') +
    strip(LEAF, `fill="${GROUND}"`) +
    `<path fill="none" stroke="${SQUARE}" stroke-width="1.5" d="${squares}"/>` +
    `<path fill="none" stroke="${MARGIN_LINE}" stroke-width="3" d="M${MARGIN} 0v${height}"/>`
  )
}

/** The book's mark, as on its icon: a beak in an open card. */
const MARK =
  '<path fill="#39437f" d="M1 7l15 8v15L1 20z"/><path fill="#5e6ab8" d="M31 7l-15 8v15l15-10z"/>' +
  '<path fill="#f4b942" d="M16 4l7 14-7 6z"/><path fill="#c98f1f" d="M16 4L9 18l7 6z"/>'

const wordsIn = (marks: readonly Mark[]): readonly WordMark[] => marks.filter((one) => one.mark === 'word')

/** What stands on the leaf. */
function words({ title, over }: Pick<Poster, 'title' | 'over'>, outlined: Outliner): string {
  const left = MARGIN + INSET
  const room = LEAF - left - EDGE
  const label = paragraph([{ text: over, bold: true }], SMALL, room)
  const head = paragraph([{ text: title, bold: true }], TITLE, room)
  const name = paragraph([{ text: book, bold: true }], SMALL, room)
  const set = (marks: readonly Mark[], x: number, y: number, colour: string): string =>
    `<path fill="${colour}" d="${wordsIn(marks)
      .map((word) => outlined(moved(word, x, y)))
      .join('')}"/>`
  return (
    set(label.marks, left, TOP, RED) +
    set(head.marks, left, TOP + label.height + TITLE_BELOW, INK) +
    set(name.marks, left + 50, POSTER.height - NAME, INK) +
    `<g transform="translate(${left - 2} ${POSTER.height - NAME - 12}) scale(1.3)">${MARK}</g>`
  )
}

const FRAME: PathMark = {
  ...{ mark: 'path', closed: true, role: 'picture' },
  runs: [
    [
      [0, 0],
      [POSTER.width, POSTER.height],
    ],
  ],
}

/** Words in the picture of the card, with a rim that keeps them legible on whatever is behind them. */
const labels = (marks: readonly Mark[], outlined: Outliner): string =>
  wordsIn(marks)
    .map((word) => {
      const d = outlined({ ...word, at: [word.at[0] + LEFT, word.at[1]] })
      const rim = 'stroke="#ffffff" stroke-width="6" stroke-linejoin="round"'
      return `<path fill="none" ${rim} d="${d}"/><path fill="${wordInk(word.role)}" d="${d}"/>`
    })
    .join('')

/** A poster as SVG, its size in pixels. */
export function posterSvg({ title, over, drawing }: Poster, outlined: Outliner): string {
  const { width, height } = POSTER
  // All of the table, so that a shadow goes on beside the card's own box.
  const onAll: Drawing = {
    ...drawing,
    box: [-LEFT, 0, width, height],
    marks: drawing.marks.filter(({ mark }) => mark !== 'word'),
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(title)}">`,
    table(POSTER),
    leaf(POSTER),
    words({ title, over }, outlined),
    pictureSvg(FRAME, onAll, 'card'),
    labels(drawing.marks, outlined),
    '</svg>',
  ].join('')
}
