import { given } from './options.ts'

export const usage =
  '--at X,Y,Z [--opening DEGREES] [--within MM] [--on FOLD,…] [--from WAY] [--made card|own] [--above MM] [--shown] [--out FILE] [--json]'

export const help = (ways: readonly string[]): string =>
  `Find mechanisms whose tip stands at a place in space, mm: x to the right, y along the gutter away from you, z up; at an opening (90 if left out). WAY: ${ways.join(', ')} (where it comes from). --shown: it may stick out when shut. --out writes the design with the best of them.`

export const notPoint = (got: string | boolean | undefined): string =>
  `--at must be three numbers in mm, as in 0,70,40${given(got)}.`

export const part = (name: string, kind: string, on: string, sizes: string): string =>
  `${name} (${kind}) on ${on}: ${sizes}`

/** `cards`: the size of each card of its own that it takes. */
export const facts = (
  off: string,
  sway: string,
  joints: number,
  layers: number,
  cards: readonly string[],
): string =>
  `${off} off; a millimetre's error moves it up to ${sway}; ${joints === 1 ? '1 joint' : `${joints} joints`}, ${layers} layers, ${cards.length === 0 ? 'no card of its own' : cards.join(' and ')}.`
