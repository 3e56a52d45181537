import { line, scaleLinear } from 'd3'
import * as says from '../../../content/words/drawing/readings-chart.ts'
import { gridMark } from '../pen/grid.ts'
import { textWidth } from '../pen/lettering.ts'
import type { Drawing, Mark, Point, WordMark } from '../pen/marks.ts'
import { runsOf } from '../pen/shape.ts'
import type { Size } from '../view/camera.ts'

/** A size and what was read, or what is right, for it. */
export interface ReadingAt {
  readonly size: number
  readonly value: number
  /** What stands at it; nothing if left out. */
  readonly code?: string
}

export interface ReadingsChartOptions {
  /** The model, from end to end; left out, it is not drawn. */
  readonly curve?: readonly ReadingAt[]
  /** Crosses. */
  readonly readings?: readonly ReadingAt[]
  /** Words at the ends of the axes. */
  readonly across: string
  readonly up: string
  /** Ends of the axes. */
  readonly sizes: readonly [least: number, most: number]
  readonly values: readonly [least: number, most: number]
  /** Height of the type, in the unit. */
  readonly text: number
  readonly unit: 'px' | 'mm'
  /** How the sizes are measured. */
  readonly sign: 'mm' | '°'
}

/** Half of a cross, in heights of the type. */
const CROSS = 0.38

/** Finer lines between those with numbers. */
const PARTS = 5

/** Ends of an axis that holds all of these, at round numbers. */
export function axisFor(values: readonly number[], fromNought: boolean): readonly [number, number] {
  const known = values.filter(Number.isFinite)
  if (known.length === 0) return [0, 1]
  const [least, most] = [fromNought ? Math.min(0, ...known) : Math.min(...known), Math.max(...known)]
  const [low = least, high = most] = scaleLinear([least, most === least ? least + 1 : most], [0, 1])
    .nice(8)
    .domain()
  return [low, high]
}

/** Readings against the size that differs, each a cross, with the model's curve or without, in a box of `size`. */
export function readingsChart(size: Size, options: ReadingsChartOptions): Drawing {
  const { curve = [], readings = [], across, up, text, unit, sign } = options
  const [bottom, roof] = [size.height - 3.1 * text, 2 * text]
  const values = scaleLinear(options.values, [bottom, roof])
  const ticks = values.ticks(Math.max(2, Math.min(6, size.height / (4 * text))))
  const left = 0.8 * text + Math.max(...ticks.map((tick) => textWidth(`${tick}`, text)))
  const right = size.width - 1.4 * text
  const sizes = scaleLinear(options.sizes, [left, right])
  const steps = sizes.ticks(Math.max(3, Math.min(9, size.width / (5 * text))))
  const spot = ({ size: at, value }: ReadingAt): Point => [sizes(at), values(value)]
  const word = (at: Point, said: string, anchor: WordMark['anchor'], bold = false): WordMark => ({
    ...{ mark: 'word', at, text: said, role: 'axis', anchor, size: text },
    ...(bold ? { bold } : {}),
  })
  const fine = (of: readonly number[], scale: typeof values): readonly number[] => {
    const step = ((of[1] ?? 0) - (of[0] ?? 0)) / PARTS
    const [low = 0, high = 0] = scale.domain()
    if (step <= 0) return []
    const from = Math.ceil(low / step - 1e-9)
    return Array.from({ length: Math.floor(high / step + 1e-9) - from + 1 }, (_, k) =>
      scale((from + k) * step),
    )
  }
  const box = [left, roof, right - left, bottom - roof] as const
  const marks: Mark[] = [
    gridMark(fine(steps, sizes), fine(ticks, values), box),
    {
      ...{ mark: 'path', closed: false, role: 'axis' },
      runs: [
        [
          [left, roof],
          [left, bottom],
          [right, bottom],
        ],
      ],
    },
  ]
  const drawn = line<ReadingAt>(
    (one) => spot(one)[0],
    (one) => spot(one)[1],
  )
  if (curve.length > 1)
    marks.push({
      mark: 'path',
      runs: runsOf(drawn, curve),
      closed: false,
      role: 'curve',
      series: 0,
      of: 'model',
    })
  const half = CROSS * text
  for (const one of readings) {
    const [x, y] = spot(one)
    const runs: Point[][] = [
      [
        [x - half, y - half],
        [x + half, y + half],
      ],
      [
        [x - half, y + half],
        [x + half, y - half],
      ],
    ]
    marks.push({
      mark: 'path',
      runs,
      closed: false,
      role: 'dimension',
      ...(one.code ? { of: one.code } : {}),
    })
  }
  const words = [
    ...ticks.map((tick) => word([left - 0.45 * text, values(tick) + 0.33 * text], `${tick}`, 'end')),
    ...steps.map((step) =>
      word([sizes(step), bottom + 1.3 * text], `${step}${sign === '°' ? '°' : ''}`, 'middle'),
    ),
    word([0.2 * text, text], up, 'start'),
    word([right, bottom + 2.6 * text], across, 'end'),
  ]
  return {
    box: [0, 0, size.width, size.height],
    unit,
    marks: [...marks, ...words],
    says: saidOf(options, readings.length),
  }
}

function saidOf({ across, up, curve = [] }: ReadingsChartOptions, count: number): string {
  const [first, last] = [curve[0], curve.at(-1)]
  const spot = ({ size, value }: ReadingAt) => ({ size, value: value.toFixed(1) })
  return [
    says.crosses(up, across, count),
    ...(first && last ? [says.model(spot(first), spot(last))] : []),
  ].join(' ')
}
