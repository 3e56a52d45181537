/** Mixing colours as CSS does, for media that have no style sheet. */
import type { Hex } from './papers.ts'

type Three = readonly [number, number, number]

const channels = (colour: Hex): Three => {
  const value = Number.parseInt(colour.slice(1), 16)
  return [(value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255]
}

const hex = (of: Three): Hex =>
  `#${of
    .map((n) =>
      Math.round(255 * Math.min(1, Math.max(0, n)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`

const between = (a: Three, b: Three, share: number): Three =>
  [0, 1, 2].map((k) => share * (a[k] as number) + (1 - share) * (b[k] as number)) as unknown as Three

/** `share` of one colour and the rest of another, by their sRGB channels: `color-mix(in srgb, a share, b)`. */
export const mixed = (a: Hex, share: number, b: Hex): Hex => hex(between(channels(a), channels(b), share))

/** The sRGB transfer function and its inverse: IEC 61966-2-1. */
const toLight = (n: number): number => (n <= 0.04045 ? n / 12.92 : ((n + 0.055) / 1.055) ** 2.4)

/** A colour as linear light, 0 to 1 each. */
export const linear = (colour: Hex): readonly [number, number, number] => each(channels(colour), toLight)

/** Relative luminance, 0 to 1: WCAG 2.2. */
export function luminance(colour: Hex): number {
  const [red, green, blue] = linear(colour)
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

const toChannel = (n: number): number => (n <= 0.0031308 ? 12.92 * n : 1.055 * n ** (1 / 2.4) - 0.055)

const times = (matrix: readonly Three[], [x, y, z]: Three): Three =>
  matrix.map(([a, b, c]) => a * x + b * y + c * z) as unknown as Three

const each = (of: Three, turn: (n: number) => number): Three => of.map(turn) as unknown as Three

/** Linear sRGB to cone responses, their cube roots to Oklab, and back: Björn Ottosson 2020, as in CSS Color 4, 10.1. */
const CONES: readonly Three[] = [
  [0.4122214708, 0.5363325363, 0.0514459929],
  [0.2119034982, 0.6806995451, 0.1073969566],
  [0.0883024619, 0.2817188376, 0.6299787005],
]
const LAB: readonly Three[] = [
  [0.2104542553, 0.793617785, -0.0040720468],
  [1.9779984951, -2.428592205, 0.4505937099],
  [0.0259040371, 0.7827717662, -0.808675766],
]
const UNLAB: readonly Three[] = [
  [1, 0.3963377774, 0.2158037573],
  [1, -0.1055613458, -0.0638541728],
  [1, -0.0894841775, -1.291485548],
]
const UNCONES: readonly Three[] = [
  [4.0767416621, -3.3077115913, 0.2309699292],
  [-1.2684380046, 2.6097574011, -0.3413193965],
  [-0.0041960863, -0.7034186147, 1.707614701],
]

const lab = (colour: Hex): Three => times(LAB, each(times(CONES, linear(colour)), Math.cbrt))

/** The same in Oklab: `color-mix(in oklab, a share, b)`. */
export const blended = (a: Hex, share: number, b: Hex): Hex =>
  hex(
    each(
      times(
        UNCONES,
        each(times(UNLAB, between(lab(a), lab(b), share)), (n) => n ** 3),
      ),
      toChannel,
    ),
  )
