/**
 * True-size sheets to print, cut and fold. Lengths in mm; a sheet never scales: a design too large for
 * the paper is refused with a `TooLargeError` that says by how much.
 */
import * as says from '../../content/words/sheet.ts'
import type { Design } from '../paper/index.ts'
import { plainText } from '../paper/index.ts'
import type { SheetFont } from './files/font.ts'
import { pageSvg } from './files/svg.ts'
import type { SheetArt } from './marks/instructions.ts'
import type { SheetOptions, SheetPage } from './pages/layout.ts'
import { layOut } from './pages/layout.ts'

export { faultSays } from './fault-says.ts'
export type { SheetFont } from './files/font.ts'

export { fontFiles, loadFont } from './files/font.ts'
export type { SheetArt, SheetFace, SheetLines } from './marks/instructions.ts'
export type { SheetMark } from './marks/setting.ts'
export type { Excess, Fit } from './pages/fit.ts'
export { fitOn, TooLargeError } from './pages/fit.ts'
export type { SheetOptions, SheetPage, SheetPart } from './pages/layout.ts'
export { checkCopies, layOut, printedOn, uncovered } from './pages/layout.ts'

export type { Paper, PaperName } from './pages/paper-sizes.ts'

export {
  ownPaper,
  paperForLocale,
  paperNamed,
  paperOf,
  papers,
  UnprintableError,
} from './pages/paper-sizes.ts'

export { paperUse, useSays } from './pages/paper-use.ts'

/** The ways in which what is drawn on a design can be printed: all three where there is something to print. */
export const artWays = ({ art, papers }: Design): readonly SheetArt[] =>
  art || papers ? ['colour', 'lines', 'none'] : ['none']

/**
 * How it is printed unless somebody chooses: as lines to colour in. A class prints in black, colour is dear, and
 * colouring in is part of the making.
 */
export const usualArt = (design: Design): SheetArt => (artWays(design).includes('lines') ? 'lines' : 'none')

/**
 * The pages of a design's sheet as a PDF. The same pages and font give the same bytes. The PDF writer is loaded on the
 * first call.
 */
export async function pdfOf(
  pages: readonly SheetPage[],
  { title }: Design,
  font: SheetFont,
): Promise<Uint8Array> {
  const { pagesPdf } = await import('./files/pdf.ts')
  return pagesPdf(pages, says.fileTitle(plainText(title)), font)
}

/** The pages as SVG documents in mm; with a font they carry it inside. */
export const svgsOf = (pages: readonly SheetPage[], font?: SheetFont): string[] =>
  pages.map((page) => pageSvg(page, font))

/** The sheet as a PDF. Throws a `TooLargeError`. */
export const sheetPdf = async (design: Design, options: SheetOptions, font: SheetFont): Promise<Uint8Array> =>
  pdfOf(layOut(design, options), design, font)

/** The sheet's pages as SVG documents. Throws a `TooLargeError`. */
export const sheetSvg = (design: Design, options: SheetOptions, font?: SheetFont): string[] =>
  svgsOf(layOut(design, options), font)
