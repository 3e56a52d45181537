import { given, tabsHelp } from './options.ts'

type Given = string | boolean | undefined

export const usage =
  '--paper PAPER --out FILE.dxf|FILE.svg [--copies N] [--gap MM] [--margin MM] [--grain kept|free] [--bridges MM] [--perforate CUT,GAP] [--glue] [--tabs flat|slit]'

export const help = (papers: readonly string[]): string =>
  `Write the flat pieces for a cutting machine, side by side by their outlines, each line type a layer: creases first, then cuts within a piece, outlines last. Pieces are named: in an SVG by titles, in a DXF by text on a layer that is off. PAPER: ${papers.join(', ')}, WIDTHxHEIGHT in mm, or roll:WIDTH. Main folds lie along the grain, which runs along the height, unless it is left free. Bridges are uncut stretches that hold a piece in its sheet. A second sheet is named with a 2. ${tabsHelp}`

/** `paper`: what a sheet of that size is called; null where it has no name. `across`: pieces whose folds lie across the grain. */
export const sheet = (
  file: string,
  pieces: number,
  paper: string | null,
  width: string,
  height: string,
  full: number,
  across: readonly string[],
): string =>
  `${file}: ${pieces === 1 ? '1 piece' : `${pieces} pieces`} on ${paper === null ? '' : `${paper}, `}${width} by ${height} mm, ${full} % full.${across.length > 0 ? ` Across the grain: ${across.join(', ')}.` : ''}`

export const notWholeIn = (option: string, min: number, max: number, got: Given): string =>
  `--${option} must be a whole number from ${min} to ${max}${given(got)}.`

export const notLengthIn = (option: string, min: number, max: number, got: Given): string =>
  `--${option} must be a number from ${min} to ${max} mm${given(got)}.`

export const notPaper = (papers: readonly string[], least: number, most: number, got: Given): string =>
  `--paper must be one of ${papers.join(', ')}, WIDTHxHEIGHT or roll:WIDTH from ${least} to ${most} mm${given(got)}.`

export const notPerforation = (least: number, most: number, got: Given): string =>
  `--perforate must be CUT,GAP, each from ${least} to ${most} mm${given(got)}.`

/** The card itself among its pieces. */
export const card = 'card'
