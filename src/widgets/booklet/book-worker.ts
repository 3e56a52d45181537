/** Run beside the page when a booklet is asked for, and not before: it draws all figures and writes the PDF. */
import type { BookOptions } from '../../booklet/book-pages.ts'
import { bookPdf } from '../../booklet/book-pdf.ts'
import type { Design } from '../../paper/index.ts'
import { sheetFont } from '../template/template.ts'

export interface BookAsk {
  readonly design: Design
  readonly options: BookOptions
}

export type BookAnswer =
  | { readonly to: 'book'; readonly bytes: Uint8Array<ArrayBuffer>; readonly pages: number }
  | { readonly to: 'fault'; readonly sentence: string }

addEventListener('message', ({ data: { design, options } }: MessageEvent<BookAsk>) => {
  sheetFont()
    .then((font) => bookPdf(design, options, font))
    .then(
      ({ bytes, pages }) =>
        postMessage({ to: 'book', bytes: new Uint8Array(bytes), pages } satisfies BookAnswer),
      (error: unknown) =>
        postMessage({
          to: 'fault',
          sentence: error instanceof Error ? error.message : String(error),
        } satisfies BookAnswer),
    )
})
