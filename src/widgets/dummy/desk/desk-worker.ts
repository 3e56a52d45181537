/** Run beside the page. Every question gets an answer that says whether it is the last one. */
import type {
  Cut,
  Design,
  Find,
  Forgiveness,
  FreeRoom,
  Mended,
  Offer,
  Stuck,
  Unstuck,
  Wish,
} from '../../../paper/index.ts'
import { bestOf, finding, forgives, mend, noOffer, offers, room, stick } from '../../../paper/index.ts'

export type Ask =
  | {
      readonly what: 'offers'
      readonly design: Design
      readonly on: string
      readonly sitsOn: 'crease' | 'panel'
      readonly opening: number
    }
  | { readonly what: 'stick'; readonly design: Design; readonly on: string; readonly cut: Cut }
  | { readonly what: 'mend'; readonly design: Design; readonly pins: readonly string[] }
  | { readonly what: 'forgives'; readonly design: Design; readonly id: string }
  | {
      readonly what: 'room'
      readonly design: Design
      readonly panel: string
      readonly opening: number
    }
  | { readonly what: 'find'; readonly design: Design; readonly wish: Wish }

export type Answer =
  | { readonly to: 'offers'; readonly last: true; readonly offers: readonly Offer[]; readonly none: string }
  | { readonly to: 'stick'; readonly last: true; readonly stuck: Stuck | Unstuck }
  | { readonly to: 'mend'; readonly last: true; readonly mended: Mended }
  | { readonly to: 'forgives'; readonly last: true; readonly forgives: readonly Forgiveness[] }
  | { readonly to: 'room'; readonly last: true; readonly room: FreeRoom }
  /** Comes each time that another way is found; the last one says why there is none. */
  | { readonly to: 'find'; readonly last: boolean; readonly finds: readonly Find[]; readonly none: string }
  | { readonly to: 'fault'; readonly last: true; readonly why: string }

function answer(ask: Exclude<Ask, { what: 'find' }>): Answer {
  const { design } = ask
  if (ask.what === 'mend') return { to: 'mend', last: true, mended: mend(design, { pins: ask.pins }) }
  if (ask.what === 'forgives')
    return { to: 'forgives', last: true, forgives: forgives(design, { ids: [ask.id] }) }
  if (ask.what === 'room')
    return { to: 'room', last: true, room: room(design, ask.panel, { opening: ask.opening }) }
  if (ask.what === 'stick') return { to: 'stick', last: true, stuck: stick(design, ask.on, ask.cut) }
  const { on, sitsOn, opening } = ask
  const found = offers(design, on, { sitsOn, opening })
  const none = found.length > 0 ? '' : noOffer(design, on, { sitsOn }).sentence
  return { to: 'offers', last: true, offers: found, none }
}

/** Every way as it is found, the best few each time. */
function* seek(design: Design, wish: Wish): Generator<Answer> {
  const work = finding(design, wish)
  const finds: Find[] = []
  for (;;) {
    const { done, value } = work.next()
    if (done) {
      yield { to: 'find', last: true, finds: bestOf(finds), none: value?.sentence ?? '' }
      return
    }
    if (!value) continue
    finds.push(value)
    yield { to: 'find', last: false, finds: bestOf(finds), none: '' }
  }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  try {
    if (data.what === 'find') for (const found of seek(data.design, data.wish)) postMessage(found)
    else postMessage(answer(data))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    postMessage({ to: 'fault', last: true, why } satisfies Answer)
  }
})
