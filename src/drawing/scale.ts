/** A straight scale from one range to another, and back. */
export interface Scale {
  (value: number): number
  back(value: number): number
}

type Range = readonly [from: number, to: number]

const map = ([a, b]: Range, [c, d]: Range, value: number): number =>
  c + ((value - a) / (b - a || 1)) * (d - c)

/**
 * The straight scale that brings one range onto another. A library's scale also knows colours, dates and
 * formats, and all of them would travel to every reader.
 */
export const linear = (from: Range, to: Range): Scale =>
  Object.assign((value: number) => map(from, to, value), { back: (value: number) => map(to, from, value) })

/**
 * Round numbers from one to another, both included if they are round, about `count` of them: steps of 1, 2 or 5
 * times a power of ten, whichever comes nearest by ratio.
 */
export function roundSteps(from: number, to: number, count: number): readonly number[] {
  const wanted = (to - from) / count
  const power = 10 ** Math.floor(Math.log10(wanted))
  const ratio = wanted / power
  const step =
    power * (ratio >= Math.sqrt(50) ? 10 : ratio >= Math.sqrt(10) ? 5 : ratio >= Math.SQRT2 ? 2 : 1)
  const first = Math.ceil(from / step - 1e-9)
  const last = Math.floor(to / step + 1e-9)
  // Rounded: a tick says 0.3, not 0.30000000000000004.
  return Array.from({ length: last - first + 1 }, (_, k) => Number(((first + k) * step).toPrecision(12)))
}
