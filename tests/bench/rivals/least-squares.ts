// The tip of one V-fold from its three distances, by ml-levenberg-marquardt (MIT).
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import type { Vec3 } from '../../../src/paper/index.ts'

/** From a start a little off, three distances to three points (mm). */
export function tipByLeastSquares(
  points: readonly [Vec3, Vec3, Vec3],
  far: readonly number[],
  start: Vec3,
): number[] {
  return levenbergMarquardt(
    { x: [0, 1, 2], y: far },
    ([x, y, z]) =>
      (k) => {
        const [a, b, c] = points[k] as Vec3
        return Math.hypot((x as number) - a, (y as number) - b, (z as number) - c)
      },
    {
      initialValues: start,
      centralDifference: true,
      gradientDifference: 1e-6,
      improvementThreshold: 1e-15,
      errorTolerance: 1e-16,
      maxIterations: 20,
    },
  ).parameterValues
}
