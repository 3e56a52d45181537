import * as says from '../../../content/words/drawing/page-point.ts'
import type { Card, Flat, Vec3 } from '../../paper/index.ts'
import { pagePoint } from '../../paper/index.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Obstacles, Rect, Wish } from '../pen/lettering.ts'
import { placeWords } from '../pen/lettering.ts'
import type { Drawing, Mark, Point } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { lengthText } from '../pen/numbers.ts'
import type { Section } from '../section/section.ts'
import type { View } from '../view/view.ts'

/** How a point of a bare card is shown: its words, px high, and their unit. */
export interface PointLook {
  readonly text: number
  readonly unit: LengthUnit
  /** It is being dragged on the sheet: its number rides beside it and is not said twice. */
  readonly held?: boolean
}

/** It grows with the words, for a projector: it is what the task speaks of. */
const dot = (at: Point, of: string, { text }: PointLook): Mark => ({
  ...{ mark: 'dot', at, radius: Math.max(5.5, text / 4), role: 'dimension', of },
})

const path = (runs: readonly (readonly Point[])[], role: 'dimension' | 'swing' | 'guide'): Mark => ({
  mark: 'path',
  runs,
  closed: false,
  role,
  of: 'point',
})

const wish = (words: string, at: Point, { text }: PointLook, sides: Wish['sides']): Wish => ({
  text: words,
  role: 'dimension',
  size: text,
  bold: true,
  of: 'point',
  at,
  gap: 10,
  ...(sides ? { sides } : {}),
})

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

const isHandle = ({ mark, role }: Mark): boolean => mark === 'dot' && role === 'handle'

/** What the words keep clear of: the dots, and the line that is measured. */
function obstacles(marks: readonly Mark[]): Obstacles {
  const rects: Rect[] = []
  const lines: (readonly [Point, Point])[] = []
  for (const mark of marks)
    if (mark.mark === 'dot') {
      const { at, radius } = mark
      rects.push([at[0] - radius - 2, at[1] - radius - 2, 2 * radius + 4, 2 * radius + 4])
    } else if (mark.mark === 'path' && mark.role === 'dimension')
      for (const [a, b] of mark.runs) if (a && b) lines.push([a, b])
  return { rects, lines }
}

const together = <D extends Drawing>(
  drawing: D,
  marks: readonly Mark[],
  wishes: readonly Wish[],
  more: string,
): D => ({
  ...drawing,
  marks: [
    ...drawing.marks,
    ...marks,
    ...placeWords(wishes, drawing.box, obstacles([...drawing.marks.filter(isHandle), ...marks])),
  ],
  says: `${drawing.says} ${more}`,
})

/** The way of the point through the whole motion. */
const round = (point: Flat, toScreen: (p: Vec3) => Point, which: 'at' | 'twin'): readonly Point[] =>
  Array.from({ length: 46 }, (_, k) => toScreen(pagePoint(point, 4 * k)[which]))

/** The point, its twin and the gap between them, added to the standing card at an opening in degrees. */
export function pointInView(drawn: View, point: Flat, opening: number, look: PointLook): View {
  const { at, twin, gape } = pagePoint(point, opening)
  const [a, b] = [drawn.toScreen(at), drawn.toScreen(twin)]
  const gap = lengthText(gape, look.unit)
  const marks = [path([[b, a]], 'dimension'), dot(b, 'twin', look), dot(a, 'point', look)]
  return together(drawn, marks, [wish(gap, middle(a, b), look, ['above', 'below'])], says.apart(gap))
}

/** The same in the section: the two points go round the gutter on a circle. */
export function pointInSection(drawn: Section, point: Flat, opening: number, look: PointLook): Section {
  const { at, twin, gape, standOff } = pagePoint(point, opening)
  const toScreen = (p: Vec3): Point => drawn.toScreen([p[0], p[2]])
  const [a, b] = [toScreen(at), toScreen(twin)]
  const gap = lengthText(gape, look.unit)
  const marks = [
    path([round(point, toScreen, 'at'), round(point, toScreen, 'twin')], 'swing'),
    path([[b, a]], 'dimension'),
    dot(b, 'twin', look),
    dot(a, 'point', look),
  ]
  const said = says.onCircle(lengthText(standOff, look.unit), gap)
  return together(drawn, marks, [wish(gap, middle(a, b), look, ['above', 'below'])], said)
}

/** The same on the flat sheet: how far the point is from the gutter. */
export function pointOnSheet(sheet: Pattern, point: Flat, card: Card, look: PointLook): Pattern {
  const [across, along] = point
  const [a, b, foot] = [
    sheet.fromSheet([across, along]),
    sheet.fromSheet([-across, along]),
    sheet.fromSheet([0, along]),
  ]
  const far = lengthText(across, look.unit)
  const marks = [path([[foot, a]], 'dimension'), dot(b, 'twin', look), dot(a, 'point', look)]
  const sides: Wish['sides'] = along > card.height / 2 ? ['below', 'above'] : ['above', 'below']
  return together(
    sheet,
    marks,
    look.held ? [] : [wish(far, middle(a, foot), look, sides)],
    says.fromGutter(far),
  )
}
