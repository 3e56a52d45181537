import { line, scaleLinear } from 'd3'
import * as says from '../../../content/words/drawing/chart.ts'
import type { Design, Flat } from '../../paper/index.ts'
import {
  broughtIn,
  compile,
  highest,
  isRead,
  nameOf,
  openingRange,
  openingStops,
  pagePoint,
  riseOf,
  swing,
  tipAt,
} from '../../paper/index.ts'
import { gridMark } from '../pen/grid.ts'
import { hatch } from '../pen/hatch.ts'
import type { Rect, Wish } from '../pen/lettering.ts'
import { gripRadius, placeWords, textWidth, wordRect } from '../pen/lettering.ts'
import type { Drawing, Mark, Point, WordMark } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { angleText, lengthText, riseSaid, riseText } from '../pen/numbers.ts'
import { runsOf } from '../pen/shape.ts'
import type { Size } from '../view/camera.ts'

export interface ChartOptions {
  /** Ids whose rise is drawn; default the first mechanism. */
  readonly of?: readonly string[]
  /** Instead: the gap between a point of the right page, `[across, along]` in mm, and its twin on the left one. */
  readonly point?: Flat
  /** The present state is a dot that can be dragged; default true. */
  readonly handle?: boolean
  /** Height of the type, px; default 15. */
  readonly text?: number
  readonly unit?: LengthUnit
  /** In small: no words but numbers on the axes and the present state, for more would lie over each other. */
  readonly brief?: boolean
}

export interface Chart extends Drawing {
  /** The opening, degrees, under a point of the screen. */
  toOpening(p: Point): number
}

/** Curves nearer than this everywhere are drawn as one, mm. */
const ONE_CURVE = 0.05

/** Between the lines of the hatch where the card does not go, in heights of the type. */
const HATCH = 0.8

/** The axis ends at a multiple of this, so that it stands still while a slit is dragged. */
const AXIS_STEP = { mm: 20, in: 0.5 } as const

/** Degrees and mm. */
interface Sample {
  readonly opening: number
  readonly rise: number
}

interface Curve {
  readonly ids: readonly string[]
  readonly path: readonly Sample[]
  readonly peak: Sample
  /** At an opening, degrees. */
  at(opening: number): number
}

const curvesOf = new WeakMap<Design, Map<string, readonly Curve[]>>()

/**
 * The rises of mechanisms; those that are the same everywhere are one curve. They hang on the design alone: while
 * the card opens they are what they were.
 */
function riseCurves(design: Design, ids: readonly string[]): readonly Curve[] {
  const known = curvesOf.get(design) ?? new Map<string, readonly Curve[]>()
  curvesOf.set(design, known)
  const key = ids.join(' ')
  const curves = known.get(key) ?? risesIn(design, ids)
  known.set(key, curves)
  return curves
}

function risesIn(design: Design, ids: readonly string[]): readonly Curve[] {
  const poser = compile(design)
  const curves: (Curve & { ids: string[] })[] = []
  // Pulled tight, a tip goes faster and faster: there the path takes more points to look round.
  const [least, most] = openingRange(design)
  const steps = least > 0 || most < 180 ? 180 : 60
  for (const id of ids) {
    const path = swing(design, id, steps)
    const twin = curves.find((other) =>
      other.path.every(({ rise }, k) => Math.abs(rise - (path[k]?.rise ?? 0)) < ONE_CURVE),
    )
    const index = design.mechanisms.findIndex((m) => m.id === id)
    const at = (opening: number): number => {
      poser(opening)
      return riseOf(tipAt(poser, index), opening)
    }
    if (twin) twin.ids.push(id)
    else curves.push({ ids: [id], path, peak: highest(design, id), at })
  }
  return curves
}

/** The gap between a point and its twin. It is widest when the card lies flat. */
function gapCurve(point: Flat): Curve {
  const at = (opening: number): number => pagePoint(point, opening).gape
  const path = Array.from({ length: 61 }, (_, k) => ({ opening: 3 * k, rise: at(3 * k) }))
  return { ids: ['point'], path, peak: { opening: 180, rise: at(180) }, at }
}

/**
 * Rise against opening for mechanisms of a design, in a box of `size` px, over the openings that the card
 * reaches: where it stops the curve ends, and the rest is hatched. Throws a RangeError for an unknown id.
 */
export function chart(design: Design, asked: number, size: Size, options: ChartOptions = {}): Chart {
  const opening = broughtIn(design, asked)
  const [least, most] = openingRange(design)
  const { text = 15, unit = 'mm', handle = true, brief = false } = options
  const ids = options.of ?? design.mechanisms.slice(0, 1).map(({ id }) => id)
  const { point } = options
  const told = ids.filter((id) =>
    isRead(
      design,
      design.mechanisms.findIndex((m) => m.id === id),
    ),
  )
  const curves = point ? [gapCurve(point)] : riseCurves(design, told)
  const low = Math.min(0, ...curves.flatMap(({ path }) => path.map(({ rise }) => rise)))
  const top = Math.max(0, ...curves.map(({ peak }) => peak.rise))
  const perUnit = unit === 'mm' ? 1 : 25.4
  const far = AXIS_STEP[unit] * perUnit
  // A hair below nothing, as the arithmetic leaves it when the card lies flat, is nothing.
  const floor = Math.floor(low / far + 1e-6) * far
  const ceiling = Math.max(1, Math.ceil((top * 1.12) / far)) * far

  const [bottom, roof] = [size.height - text * 2.5, text * 2.1]
  const rises = scaleLinear([floor / perUnit, ceiling / perUnit], [bottom, roof])
  const ticks = rises.ticks(Math.max(2, Math.min(4, size.height / 70)))
  const left = 8 + 0.5 * text + Math.max(...ticks.map((tick) => textWidth(`${tick}`, text)))
  const degrees = size.width - textWidth('180°', text) / 2 - 0.5 * text
  const openings = scaleLinear([0, 180], [left, degrees])
  const spot = (o: number, mm: number): Point => [openings(o), rises(mm / perUnit)]

  const curve = line<Sample>(
    ({ opening }) => openings(opening),
    ({ rise }) => rises(rise / perUnit),
  )

  const marks: Mark[] = []
  const words: WordMark[] = []
  const steps = degrees - left < 260 ? [0, 90, 180] : [0, 45, 90, 135, 180]
  for (const tick of ticks) {
    words.push({
      mark: 'word',
      at: [left - 8, rises(tick) + text * 0.33],
      text: `${tick}`.replace('-', '−'),
      role: 'axis',
      anchor: 'end',
      size: text,
    })
  }
  for (const step of steps) {
    words.push({
      mark: 'word',
      at: [openings(step), bottom + text * 1.4],
      text: angleText(step, 0),
      role: 'axis',
      anchor: 'middle',
      size: text,
    })
  }
  const titles = [
    { at: [0.4 * text, text * 1.1], text: point ? says.gapAxis(unit) : says.riseAxis(unit), anchor: 'start' },
    { at: [size.width - 0.4 * text, text * 1.1], text: says.opening, anchor: 'end' },
  ] as const
  for (const title of brief ? [] : titles) words.push({ mark: 'word', role: 'axis', size: text, ...title })
  marks.push(
    gridMark(
      steps.map((step) => openings(step)),
      ticks.map((tick) => rises(tick)),
      [left, roof, degrees - left, bottom - roof],
    ),
  )
  marks.push({
    mark: 'path',
    runs: [
      [
        [left, roof],
        [left, rises(0)],
        [degrees, rises(0)],
      ],
    ],
    closed: false,
    role: 'axis',
  })

  const stops = openingStops(design)
  const ends: Wish[] = []
  const beyond: Rect[] = []
  for (const { end, far, to } of [
    { end: stops.least, far: 0, to: least },
    { end: stops.most, far: 180, to: most },
  ]) {
    if (!end) continue
    const [a, b] = [openings(far), openings(to)]
    const area: Point[] = [
      [a, roof],
      [b, roof],
      [b, bottom],
      [a, bottom],
    ]
    beyond.push([Math.min(a, b), roof, Math.abs(b - a), bottom - roof])
    marks.push({ mark: 'path', runs: hatch(area, HATCH * text), closed: false, role: 'guide', of: 'stop' })
    marks.push({
      mark: 'path',
      runs: [
        [
          [b, roof],
          [b, bottom],
        ],
      ],
      closed: false,
      role: 'axis',
      of: 'stop',
    })
    ends.push({
      text: says.stopsAt(angleText(to, 0)),
      role: 'note',
      size: text,
      of: 'stop',
      // Low, where a curve that ends there is seldom, for the words at the dot are placed first.
      at: [b, bottom - text],
      gap: 7,
      sides: far === 0 ? ['right', 'above-right'] : ['left', 'above-left'],
    })
  }

  const mostOf = ({ rise, opening }: Sample): string =>
    (point ? says.widest : says.highest)(riseText(rise, unit), angleText(opening, 0))
  const grip = gripRadius(text)
  // What is highest stays where it is while the dot goes by: it is placed first.
  const peaks: Wish[] = []
  const states: Wish[] = []
  const lines: [Point, Point][] = []
  const rects: Rect[] = [...words.map(wordRect), ...beyond]
  const still = low > -ONE_CURVE && top < ONE_CURVE
  curves.forEach(({ ids, path, peak, at }, series) => {
    const now = at(opening)
    const runs = runsOf(curve, path)
    marks.push({ mark: 'path', runs, closed: false, role: 'curve', series, of: ids.join(' ') })
    for (const run of runs) lines.push(...run.slice(1).map((to, k): [Point, Point] => [run[k] as Point, to]))
    if (!still) {
      const p = spot(peak.opening, peak.rise)
      marks.push({ mark: 'dot', at: p, radius: 3, role: 'curve', of: `${ids[0]}/highest` })
      const most = mostOf(peak)
      peaks.push({
        text: curves.length > 1 ? says.highestOf(ids, most) : most,
        role: 'note',
        size: text,
        of: `${ids[0]}/highest`,
        at: p,
        // The dot that can be dragged has room to pass.
        gap: handle ? grip + 2 : 7,
        sides: ['above', 'above-left', 'below', 'above-right'],
      })
    }
    if (!handle) return
    const dot = spot(opening, now)
    marks.push({ mark: 'dot', at: dot, radius: series === 0 ? 8 : 5, role: 'handle', of: 'opening' })
    rects.push([dot[0] - grip, dot[1] - grip, 2 * grip, 2 * grip])
    states.push({
      text: series === 0 ? says.now(riseText(now, unit), angleText(opening, 0)) : riseText(now, unit),
      role: 'handle',
      size: text,
      bold: true,
      optional: brief,
      of: 'opening',
      at: dot,
      gap: grip + 2,
      // Beside the curve, on its outer side first.
      sides:
        opening < peak.opening
          ? ['below-right', 'left', 'above-left', 'right']
          : ['right', 'above-right', 'below-left', 'below', 'left'],
    })
  })
  if (still && curves.length > 0)
    words.push({
      mark: 'word',
      at: [(left + degrees) / 2, (roof + bottom) / 2],
      text: point ? says.noGap : says.noRise,
      role: 'note',
      anchor: 'middle',
      size: text,
      of: 'still',
    })
  const drawable = [left, 2, size.width - left, bottom - 4] as const
  const [first] = curves
  const said = (): string => {
    const [id] = ids
    if (!first) return id === undefined ? says.nothingRises : says.fitsNowhere(nameOf(id))
    if (still) return point ? says.gapStill : says.riseStill
    const [at, now, most] = [angleText(opening, 0), first.at(opening), mostOf(first.peak)]
    const stopped = [stops.least, stops.most].flatMap((end) => (end ? [end.sentence] : []))
    return point
      ? says.gapChart(at, lengthText(now, unit), most, stopped)
      : says.riseChart(at, riseSaid(nameOf(first.ids[0] ?? ''), now, unit), most, stopped)
  }
  return {
    box: [0, 0, size.width, size.height],
    unit: 'px',
    marks: [
      ...marks,
      ...words,
      ...placeWords([...(brief ? [] : peaks), ...states, ...ends], drawable, { rects, lines }),
    ],
    says: said(),
    toOpening: ([x]) => broughtIn(design, openings.invert(x)),
  }
}
