// Whether a letter stands beside its piece: outlines by the even-odd rule of polyclip-ts, which shares no code with ours.
import { intersection } from 'polyclip-ts'
import { expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { jointsOf, pieces } from '../../src/paper/index.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { onPage } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { card, dummy, laid, moth } from './designs.ts'

const isOnPiece = (page: SheetPage, design: Design, [l, t, r, b]: ReturnType<typeof extent>): boolean =>
  page.placed.some(({ piece, place }) => {
    const outline = pieces(design).find(({ id }) => id === piece)?.outline ?? []
    const ring = outline.map((point): [number, number] => {
      const [x, y] = onPage(place, point)
      return [x, y]
    })
    const box: [number, number][] = [
      [l, t],
      [r, t],
      [r, b],
      [l, b],
    ]
    return intersection([ring], [box]).length > 0
  })

const besides = (design: Design, pages: readonly SheetPage[]): boolean => {
  const joints = new Set(jointsOf(design).flatMap(({ of, host }) => (host.piece === 'cover' ? [] : [of])))
  return pages.some((page) =>
    page.marks.some(
      (mark) =>
        mark.mark === 'word' &&
        mark.bold &&
        joints.has(mark.of ?? '') &&
        !isOnPiece(page, design, extent(mark)),
    ),
  )
}

const told = (pages: readonly SheetPage[]): boolean =>
  pages
    .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])))
    .join(' ')
    .includes('Pencil each letter beside a piece')

const ways: readonly (readonly [SheetLines, boolean, boolean])[] = [
  ['front', false, false],
  ['ticks', true, true],
  ['back', false, false],
]

test.each(ways)(
  'printed as %s, the steps speak of letters beside their pieces where there are some',
  (lines, ...has) => {
    const found = [moth(), dummy('pond')].map((design) => {
      const pages = laid(design, { paper: 'a4', lines, care: [] })
      expect(told(pages), design.title).toBe(besides(design, pages))
      return told(pages)
    })
    expect(found).toEqual(has)
  },
)

test('nobody is told so of a card that nothing is stuck on', () => {
  expect(told(laid(card(105, 148), { paper: 'a4', lines: 'ticks' }))).toBe(false)
})
