/** Run beside the page. Every question gets an answer that says whether it is the last one. */
import type { Design, Offer } from '../../paper/index.ts'
import { noOffer, offers } from '../../paper/index.ts'

export type Ask =
  | {
      readonly what: 'offers'
      readonly design: Design
      readonly on: string
      readonly sitsOn: 'crease' | 'panel'
      readonly opening: number
    }

export type Answer =
  | { readonly to: 'offers'; readonly last: true; readonly offers: readonly Offer[]; readonly none: string }
  | { readonly to: 'fault'; readonly last: true; readonly why: string }

function answer(ask: Ask): Answer {
  const { design, on, sitsOn, opening } = ask
  const found = offers(design, on, { sitsOn, opening })
  const none = found.length > 0 ? '' : (noOffer(design, on, { sitsOn })?.sentence ?? '')
  return { to: 'offers', last: true, offers: found, none }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  try {
    postMessage(answer(data))
  } catch (error) {
    postMessage({ to: 'fault', last: true, why: error instanceof Error ? error.message : String(error) } satisfies Answer)
  }
})
