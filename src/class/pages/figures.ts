/** The drawings of a lesson: the card with what is measured on it, and the class's curve. */
import type { ReadingAt } from '../../drawing/chart/readings-chart.ts'
import { axisFor, readingsChart } from '../../drawing/chart/readings-chart.ts'
import { pointInView } from '../../drawing/page-point/page-point.ts'
import type { Drawing } from '../../drawing/pen/marks.ts'
import type { Size } from '../../drawing/view/camera.ts'
import { view } from '../../drawing/view/view.ts'
import type { Design } from '../../paper/index.ts'
import type { Seen } from '../seen.ts'
import type { Copy, Measured } from '../spread.ts'
import { readingOf, sized } from '../spread.ts'

/** The card at the opening at which it is read, with the measure on it. */
export function cardFigure(design: Design, measured: Measured | null, seen: Seen, size: Size): Drawing {
  const opening = measured?.opening ?? 100
  const text = size.width / 18
  const isGap = measured?.what === 'gap'
  const drawn = view(design, opening, { far: 1.7, ...seen.camera }, size, {
    ...{ frame: [opening], stand: seen.stand, text },
    ...(measured === null || isGap ? {} : { rise: [measured.id] }),
  })
  if (!isGap) return drawn
  const point = [design.card.width * POINT_AT, measured?.along ?? 0] as const
  return pointInView(drawn, point, opening, { text, unit: 'mm' })
}

/** Where a point of a bare card is shown in a figure, as a share of its page. */
const POINT_AT = 0.55

/** Points of the model's curve. */
const STEPS = 40

/** What the model reads from the smallest size to the largest. */
export function curveOf(design: Design, measured: Measured, copies: readonly Copy[]): readonly ReadingAt[] {
  const sizes = copies.flatMap(({ size }) => (size === null ? [] : [size]))
  if (sizes.length < 2) return []
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)]
  return Array.from({ length: STEPS + 1 }, (_, k): ReadingAt => {
    const size = least + (k / STEPS) * (most - least)
    return { size, value: readingOf(sized(design, measured, size), measured, size) }
  })
}

export interface ChartOf {
  readonly measured: Measured
  readonly copies: readonly Copy[]
  readonly curve?: readonly ReadingAt[]
  readonly readings?: readonly ReadingAt[]
  /** Words at the axes. */
  readonly across: string
  readonly up: string
  readonly text: number
  readonly unit: 'px' | 'mm'
}

/** Readings of a class against its sizes. The axes hold every right reading whether it is drawn or not. */
export function classChart(size: Size, { measured, copies, curve, readings, ...rest }: ChartOf): Drawing {
  const known = copies.flatMap((copy) => (copy.size === null ? [] : [copy.size]))
  const values = [...copies.map(({ reads }) => reads), ...(readings ?? []).map(({ value }) => value)]
  const high = Math.max(...values.filter(Number.isFinite))
  return readingsChart(size, {
    ...rest,
    ...(curve ? { curve } : {}),
    ...(readings ? { readings } : {}),
    sizes: axisFor(known, false),
    values: axisFor([...values, 1.1 * high], true),
    sign: measured.unit === 'mm' ? 'mm' : '°',
  })
}
