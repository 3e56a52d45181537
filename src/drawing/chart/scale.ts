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
