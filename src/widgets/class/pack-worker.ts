/** Run beside the page when a pack is asked for, and not before: it lays out all sheets and writes the PDF. */
import { packOf, packPdf } from '../../class/pack.ts'
import { sheetFont } from '../template/template.ts'
import type { Answer, Ask } from './asked.ts'
import { madeClass } from './order.ts'

async function packed({ wanted, only }: Extract<Ask, { what: 'pack' }>): Promise<Answer> {
  // Sizes are a smaller part of the work than sheets, and so is the writing.
  const part = (from: number, share: number) => (done: number, of: number) =>
    postMessage({ to: 'told', done: Math.round(from + (share * done) / of), of: 100 } satisfies Answer)
  const made = madeClass(wanted, part(0, 20))
  const [pack, font] = await Promise.all([packOf(made, part(20, 60)), sheetFont()])
  const bytes = await packPdf(made, pack, font, only ?? undefined)
  const pages = pack.sections
    .filter(({ name }) => only === null || name === only)
    .reduce((sum, one) => sum + one.pages.length, 0)
  return { to: 'pack', bytes: new Uint8Array(bytes), pages, shopping: pack.shopping }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  if (data.what !== 'pack') return
  packed(data).then(
    (answer) => postMessage(answer),
    (error: unknown) =>
      postMessage({
        to: 'fault',
        sentence: error instanceof Error ? error.message : String(error),
      } satisfies Answer),
  )
})
