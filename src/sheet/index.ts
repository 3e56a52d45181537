/**
 * True-size sheets to print, cut and fold. Lengths in mm; a sheet never scales: a design too large for
 * the paper is refused with a `TooLargeError` that says by how much.
 */
import type { Design } from '../paper/index.ts'
import { plainText } from '../paper/index.ts'
import type { SheetFont } from './files/font.ts'
import { pageSvg } from './files/svg.ts'
import type { SheetArt } from './marks/instructions.ts'
import type { SheetOptions } from './pages/layout.ts'
import { layOut } from './pages/layout.ts'

export type { SheetFont } from './files/font.ts'

export { fontFiles, loadFont } from './files/font.ts'
export type { SheetArt, SheetFace, SheetLines } from './marks/instructions.ts'
export type { SheetMark } from './marks/setting.ts'
export type { Excess, Fit } from './pages/fit.ts'
export { fitOn, TooLargeError } from './pages/fit.ts'
export type { SheetOptions, SheetPage, SheetPart } from './pages/layout.ts'
export { layOut, printedOn, uncovered } from './pages/layout.ts'

export type { Paper, PaperName } from './pages/paper-sizes.ts'

export {
  ownPaper,
  paperForLocale,
  paperNamed,
  paperOf,
  papers,
  UnprintableError,
} from './pages/paper-sizes.ts'

/** The ways in which what is drawn on a design can be printed: all three where there is something to print. */
export const artWays = ({ art, papers }: Design): readonly SheetArt[] =>
  art || papers ? ['colour', 'lines', 'none'] : ['none']

/**
 * How it is printed unless somebody chooses: as lines to colour in. A class prints in black, colour is dear, and
 * colouring in is part of the making.
 */
export const usualArt = (design: Design): SheetArt => (artWays(design).includes('lines') ? 'lines' : 'none')

/**
 * The sheet as a PDF. The same design, options and font give the same bytes. The PDF writer is loaded
 * on the first call. Throws a `TooLargeError`.
 */
export async function sheetPdf(design: Design, options: SheetOptions, font: SheetFont): Promise<Uint8Array> {
  const pages = layOut(design, options)
  const { pagesPdf } = await import('./files/pdf.ts')
  return pagesPdf(pages, `${plainText(design.title)}: template at true size`, font)
}

/** The sheet's pages as SVG documents in mm; with a font they carry it inside. Throws a `TooLargeError`. */
export const sheetSvg = (design: Design, options: SheetOptions, font?: SheetFont): string[] =>
  layOut(design, options).map((page) => pageSvg(page, font))
