/** The booklet as a file. Heavy: load it when one is asked for. */
import * as says from '../../content/words/booklet/pages.ts'
import type { Design } from '../paper/index.ts'
import { plainText } from '../paper/index.ts'
import type { SheetFont } from '../sheet/files/font.ts'
import { pagesPdf } from '../sheet/files/pdf.ts'
import type { BookOptions } from './book-pages.ts'
import { bookPages } from './book-pages.ts'

/** The same design, options and font give the same bytes. */
export async function bookPdf(
  design: Design,
  options: BookOptions,
  font: SheetFont,
): Promise<{ readonly bytes: Uint8Array; readonly pages: number }> {
  const pages = bookPages(design, options)
  const bytes = await pagesPdf(pages, says.fileTitle(plainText(design.title)), font)
  return { bytes, pages: pages.length }
}
