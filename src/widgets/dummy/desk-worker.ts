/** Run beside the page. Every question gets an answer that says whether it is the last one. */
import type { Design, Offer } from '../../paper/index.ts'
import { noOffer, offers } from '../../paper/index.ts'

export interface Mended {
  readonly design: Design
  readonly changes: readonly {
    readonly id: string
    readonly field: string
    readonly from: number
    readonly to: number
  }[]
  readonly left: readonly { readonly sentence: string }[]
}

export type Ask =
  | {
      readonly what: 'offers'
      readonly design: Design
      readonly on: string
      readonly sitsOn: 'crease' | 'panel'
      readonly opening: number
    }
  | { readonly what: 'mend'; readonly design: Design; readonly pins: readonly string[] }

export type Answer =
  | { readonly to: 'offers'; readonly last: true; readonly offers: readonly Offer[]; readonly none: string }
  | { readonly to: 'mend'; readonly last: true; readonly mended: Mended }
  | { readonly to: 'fault'; readonly last: true; readonly why: string }

function answer(ask: Ask): Answer {
  const { design } = ask
  switch (ask.what) {
    case 'offers': {
      const { on, sitsOn, opening } = ask
      const found = offers(design, on, { sitsOn, opening })
      const none = found.length > 0 ? '' : noOffer(design, on, { sitsOn }).sentence
      return { to: 'offers', last: true, offers: found, none }
    }
    case 'mend':
      return { to: 'mend', last: true, mended: { design, changes: [], left: [] } }
  }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  try {
    postMessage(answer(data))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    postMessage({ to: 'fault', last: true, why } satisfies Answer)
  }
})
