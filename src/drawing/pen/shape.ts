import type { Point } from './marks.ts'

/** A shape of d3 that can draw on a canvas. */
interface Shape<Datum> {
  context(on: CanvasRenderingContext2D | null): (data: Iterable<Datum>) => void
}

/**
 * What a straight shape of d3 draws, as runs of points, of which marks are made: one picture for every pen.
 * A gap in what is defined begins a new run.
 */
export function runsOf<Datum>(shape: Shape<Datum>, data: Iterable<Datum>): readonly (readonly Point[])[] {
  const runs: Point[][] = []
  const canvas: Pick<CanvasRenderingContext2D, 'moveTo' | 'lineTo' | 'closePath'> = {
    moveTo: (x, y) => void runs.push([[x, y]]),
    lineTo: (x, y) => void runs.at(-1)?.push([x, y]),
    closePath() {},
  }
  shape.context(canvas as CanvasRenderingContext2D)(data)
  return runs
}
