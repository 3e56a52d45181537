// A maker cuts by names: each stands nearer to its own piece than to any other. Distances by points along the outlines,
// which the layout does not know.
import { expect, test } from 'vitest'
import { pieces } from '../../src/paper/index.ts'
import { pieceName } from '../../src/sheet/marks/instructions.ts'
import { onPage } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummies, dummy, laid } from './designs.ts'

type Point = readonly [number, number]
type Box = readonly [left: number, top: number, right: number, bottom: number]

/** Points so far from one another tell a distance near enough, mm. */
const STEP = 0.25

function along(outline: readonly Point[]): Point[] {
  return outline.flatMap((a, k): Point[] => {
    const b = outline[(k + 1) % outline.length] as Point
    const count = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP)
    return Array.from({ length: count }, (_, i) => [
      a[0] + (i / count) * (b[0] - a[0]),
      a[1] + (i / count) * (b[1] - a[1]),
    ])
  })
}

const toBox = ([l, t, r, b]: Box, [x, y]: Point): number =>
  Math.hypot(Math.max(l - x, 0, x - r), Math.max(t - y, 0, y - b))

/** By the even-odd rule. */
const isInside = ([x, y]: Point, outline: readonly Point[]): boolean =>
  outline.reduce((odd, [ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length] as Point
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !odd : odd
  }, false)

const between = (boxes: readonly Box[], outline: readonly Point[]): number =>
  Math.min(
    ...boxes.map((box) =>
      isInside([box[0], box[1]], outline) ? 0 : Math.min(...along(outline).map((at) => toBox(box, at))),
    ),
  )

const ways = (['owl-wings', 'garden', 'hedgehog', 'owl', 'night-garden'] as const).flatMap((name) =>
  (['front', 'ticks', 'back'] as const).map((lines) => [name, lines] as const),
)

test.each(ways)('%s, lines %s: each name is nearest to its own piece', (name, lines) => {
  const design = dummy(name)
  const all = pieces(design)
  let names = 0
  for (const { marks, placed } of laid(design, { paper: 'letter', lines, care: [] })) {
    const outlines = placed.map(({ piece, place }) => {
      const found = all.find(({ id }) => id === piece)
      if (!found) throw new Error(`there is no ${piece}`)
      return { piece, outline: found.outline.map((point): Point => onPage(place, point)) }
    })
    const words = marks.flatMap((mark) => (mark.mark === 'word' && mark.of === 'name' ? [mark] : []))
    // A name is bold, in one or more lines; the rest follows it: which face it is, and whose end.
    const starts = words.flatMap(({ bold }, k) => (bold && !words[k - 1]?.bold ? [k] : []))
    starts.forEach((start, k) => {
      const all = words.slice(start, starts[k + 1])
      const name = all.flatMap(({ bold, text }) => (bold ? [text] : [])).join(' ')
      const own = outlines.find(({ piece }) => pieceName(piece) === name)
      if (!own) return
      const boxes = all.map(extent)
      const far = between(boxes, own.outline)
      for (const other of outlines)
        if (other !== own)
          expect(
            between(boxes, other.outline),
            `${own.piece}: its name, ${far.toFixed(1)} mm off, is nearer to ${other.piece}`,
          ).toBeGreaterThan(far - 0.3)
      names++
    })
  }
  expect(names).toBeGreaterThan(1)
})

// Common practice, no source: a word on a sheet means one thing.
test.each(dummies)('%s: no part is called as a face of the paper is', (_, design) => {
  const faces = ['front', 'back', 'inside', 'outside', 'behind', 'face', 'side']
  expect(design.mechanisms.filter(({ id }) => faces.includes(id.replace(/-\d+$/, '')))).toEqual([])
})

test.each([
  ['hedgehog', 'letter', 'ticks'],
  ['pond', 'a4', 'ticks'],
  ['owl', 'a4', 'ticks'],
] as const)('%s, %s, lines %s: names keep 4 mm from letters beside pieces', (name, paper, lines) => {
  const design = dummy(name)
  const all = pieces(design)
  let met = 0
  for (const { marks, placed } of laid(design, { paper, lines, art: 'colour', care: [] })) {
    const outlines = placed.map(({ piece, place }) =>
      (all.find(({ id }) => id === piece)?.outline ?? []).map((point): Point => onPage(place, point)),
    )
    const words = marks.flatMap((mark) => (mark.mark === 'word' ? [mark] : []))
    const isBeside = ([x, y]: Point): boolean => !outlines.some((outline) => isInside([x, y], outline))
    const names = words.filter(({ of }) => of === 'name').map(extent)
    const letters = words.filter(({ text, bold, of }) => bold && of !== undefined && /^[A-Z]$/.test(text))
    for (const { text, at, ...letter } of letters) {
      if (!isBeside([at[0], at[1]])) continue
      const [l, t, r, b] = extent({ text, at, ...letter })
      for (const box of names) {
        const far = Math.min(
          ...along([
            [l, t],
            [r, t],
            [r, b],
            [l, b],
          ]).map((point) => toBox(box, point)),
        )
        expect(far, `${text} beside a name`).toBeGreaterThan(3.9)
        met++
      }
    }
  }
  expect(met).toBeGreaterThan(0)
})
