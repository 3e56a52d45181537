import type { Point } from './marks.ts'

/** The verbs that a d3 shape with straight lines uses. */
export interface RunPen {
  readonly runs: Point[][]
  moveTo(x: number, y: number): void
  lineTo(x: number, y: number): void
  closePath(): void
}

/** A pen that collects runs of points, so that a d3 shape becomes a mark. */
export function runPen(): RunPen {
  const runs: Point[][] = []
  return {
    runs,
    moveTo: (x, y) => void runs.push([[x, y]]),
    lineTo: (x, y) => void runs[runs.length - 1]?.push([x, y]),
    closePath: () => {
      const run = runs[runs.length - 1]
      if (run?.[0]) run.push(run[0])
    },
  }
}
