import type { JSX } from 'preact'
import * as says from '../../../../content/words/dummy/slips.ts'
import { placed } from '../../model/place.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { Slip } from './Slip.tsx'

/** A dummy of the garden to begin with: its design comes when it is taken. */
export interface Starter {
  readonly title: string
  /** The address of its design. */
  readonly design: string
  /** The address of its picture. */
  readonly picture: string
}

interface BeginProps {
  readonly dummy: Dummy
  readonly starters: readonly Starter[]
  readonly onTake: (starter: Starter) => void
  readonly onSaved: () => void
}

/** An empty card asks what is wanted. */
export function Begin({ dummy, starters, onTake, onSaved }: BeginProps): JSX.Element {
  return (
    <Slip dummy={dummy} title={says.whatDoYouWant} stays>
      <button type="button" class="way" onClick={() => dummy.choose({ what: 'fold', name: 'gutter' })}>
        <svg viewBox="0 0 40 28" aria-hidden="true">
          <path class="way-card" d="M4 6 20 22 36 6" />
          <circle class="way-ring" cx="20" cy="22" r="4.5" />
        </svg>
        <span>
          <strong>{says.pressFold}</strong>
          {says.pressFoldMore}
        </span>
      </button>
      <button
        type="button"
        class="way"
        onClick={() => {
          dummy.slip.value = 'wish'
        }}
      >
        <svg viewBox="0 0 40 28" aria-hidden="true">
          <path class="way-card" d="M4 10 20 26 36 10" />
          <circle class="way-tip" cx="20" cy="6" r="4" />
          <path class="way-path" d="M20 11V24" />
        </svg>
        <span>
          <strong>{says.makeWish}</strong>
          {says.makeWishMore}
        </span>
      </button>
      <h3>{says.orFromGarden}</h3>
      <div class="starters">
        {starters.map((starter) => (
          <button key={starter.design} type="button" class="offer" onClick={() => onTake(starter)}>
            <img src={starter.picture} alt="" width="150" height="110" loading="lazy" />
            <strong>{starter.title}</strong>
          </button>
        ))}
      </div>
      <p class="slip-ways">
        <a href={placed('/garden/')}>{says.wholeGarden}</a>
        <a href={placed('/plans/')}>{says.followPlan}</a>
        <button type="button" class="link" onClick={onSaved}>
          {says.openSaved}
        </button>
      </p>
    </Slip>
  )
}
