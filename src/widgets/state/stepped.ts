/** So near to a whole step a number stands on it, steps: it is shown so, and what follows from sizes is not exact. */
const NEAR = 0.05

/** The number by one step, on a whole step, so that a few presses give a round number. */
export const stepped = (value: number, step: number, way: 1 | -1): number => {
  const steps = value / step
  return (way > 0 ? Math.floor(steps + 1 + NEAR) : Math.ceil(steps - 1 - NEAR)) * step
}
