/** A class's readings against the size that differs. `across` and `up`: what its axes measure. */
export const crosses = (up: string, across: string, count: number): string =>
  `${up} against ${across}: ${count === 0 ? 'no crosses yet' : count === 1 ? 'one cross' : `${count} crosses`}.`

/** A point of the model's curve. */
interface Spot {
  readonly value: string
  readonly size: number
}

export const model = (first: Spot, last: Spot): string =>
  `The model goes from ${first.value} at ${first.size} to ${last.value} at ${last.size}.`
