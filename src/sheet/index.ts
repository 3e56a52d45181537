/**
 * True-size sheets to print, cut and fold. Lengths in mm; a sheet never scales: a design too large for
 * the paper is refused with a `TooLargeError` that says by how much.
 */
import type { Design } from '../paper/index.ts'
import type { SheetFont } from './font.ts'
import type { SheetOptions } from './layout.ts'
import { layOut } from './layout.ts'
import { pageSvg } from './svg.ts'

export type { Excess, Fit } from './fit.ts'
export { fitOn, TooLargeError } from './fit.ts'
export type { SheetFont } from './font.ts'
export { fontFiles, loadFont } from './font.ts'
export type { SheetOptions, SheetPage } from './layout.ts'
export { layOut } from './layout.ts'
export type { Paper, PaperName } from './paper-sizes.ts'
export { paperForLocale, paperNamed, paperOf, papers } from './paper-sizes.ts'
export type { SheetMark } from './setting.ts'
export type { SheetFace } from './words.ts'

/**
 * The sheet as a PDF. The same design, options and font give the same bytes. The PDF writer is loaded
 * on the first call. Throws a `TooLargeError`.
 */
export async function sheetPdf(design: Design, options: SheetOptions, font: SheetFont): Promise<Uint8Array> {
  const pages = layOut(design, options)
  const { pagesPdf } = await import('./pdf.ts')
  return pagesPdf(pages, `${design.title}: template at true size`, font)
}

/** The sheet's pages as SVG documents in mm; with a font they carry it inside. Throws a `TooLargeError`. */
export const sheetSvg = (design: Design, options: SheetOptions, font?: SheetFont): string[] =>
  layOut(design, options).map((page) => pageSvg(page, font))
