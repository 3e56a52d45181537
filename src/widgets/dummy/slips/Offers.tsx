import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/slips.ts'
import type { Offer } from '../../../paper/index.ts'
import { reasonOf } from '../../model/loading.ts'
import { lengthUnit } from '../../model/page.ts'
import type { Ask } from '../desk/desk.ts'
import { deskFor } from '../desk/desk.ts'
import type { Chosen } from '../model/chosen.ts'
import { called } from '../model/chosen.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { offerHigh } from '../model/offer-high.ts'
import { Slip } from './Slip.tsx'
import { Thumb } from './Thumb.tsx'

interface Found {
  readonly offers: readonly Offer[]
  /** Why there are none. */
  readonly none: string
}

/** What can be built on a thing, asked for beside the page; null: it is being worked out. */
function useOffers({ bench }: Dummy, thing: Chosen): Found | null {
  const design = bench.design.value
  const desk = useMemo(() => deskFor<Extract<Ask, { what: 'offers' }>>(), [])
  const [found, setFound] = useState<Found | null>(null)
  const { what, name } = thing
  useEffect(() => {
    setFound(null)
    desk.ask(
      {
        what: 'offers',
        design,
        on: name,
        sitsOn: what === 'fold' ? 'crease' : 'panel',
        opening: bench.state.peek().opening,
      },
      setFound,
      (error) => setFound({ offers: [], none: says.notWorkedOut(reasonOf(error)) }),
    )
    return desk.callOff
  }, [desk, bench, design, what, name])
  return found
}

interface OfferCardProps {
  readonly dummy: Dummy
  readonly offer: Offer
}

function OfferCard({ dummy, offer }: OfferCardProps): JSX.Element {
  const { bench, trying } = dummy
  const { camera } = bench.state.value
  const { id, label, variant, design, opening } = offer
  const shows = trying.value === design
  const show = () => {
    trying.value = design
  }
  const hide = () => {
    if (trying.peek() === design) trying.value = null
  }
  return (
    <button
      type="button"
      class="offer"
      onPointerEnter={show}
      onPointerLeave={hide}
      onFocus={show}
      onBlur={hide}
      onClick={() => dummy.put(design, says.added(label), { what: 'part', name: id })}
    >
      <Thumb design={design} opening={opening} camera={camera} lit={[id]} moves={shows} />
      <strong>{label}</strong>
      {variant === '' ? null : <span class="offer-variant">{variant}</span>}
      <span class="offer-rise">{offerHigh(offer, lengthUnit.value)}</span>
    </button>
  )
}

/** What can be built on the fold or face taken up: each sized to fit and sound, in small and moving. */
export function Offers({ dummy, thing }: { readonly dummy: Dummy; readonly thing: Chosen }): JSX.Element {
  const found = useOffers(dummy, thing)
  const count = found?.offers.length ?? 0
  const told = found === null ? says.lookingForOffers : count === 0 ? found.none : says.pressOffer
  const place = called(thing)
  return (
    <Slip dummy={dummy} title={thing.what === 'fold' ? says.buildOn(place) : says.stickOn(place)}>
      <p class="slip-says" role="status">
        {told}
      </p>
      {thing.what === 'fold' ? (
        <p class="slip-says">
          {says.orWishBefore}{' '}
          <button
            type="button"
            class="link"
            onClick={() => {
              dummy.slip.value = 'wish'
            }}
          >
            {says.orWish}
          </button>
          {says.orWishAfter}
        </p>
      ) : null}
      {thing.what === 'face' ? (
        <>
          <button
            type="button"
            class="button primary pieces-way"
            onClick={() => {
              dummy.slip.value = 'pieces'
            }}
          >
            {says.takeShape}
          </button>
          <p class="slip-says">{says.blueSquares}</p>
        </>
      ) : null}
      <div class="offers">
        {found?.offers.map((offer) => (
          <OfferCard key={`${offer.kind} ${offer.variant}`} {...{ dummy, offer }} />
        ))}
      </div>
    </Slip>
  )
}
