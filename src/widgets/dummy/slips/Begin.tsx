import type { JSX } from 'preact'
import type { Design } from '../../../paper/index.ts'
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
    <Slip dummy={dummy} title="What do you want?" stays>
      <button type="button" class="way" onClick={() => dummy.choose({ what: 'fold', name: 'gutter' })}>
        <svg viewBox="0 0 40 28" aria-hidden="true">
          <path class="way-card" d="M4 6 20 22 36 6" />
          <circle class="way-ring" cx="20" cy="22" r="4.5" />
        </svg>
        <span>
          <strong>Press a fold</strong>
          See what can be built on it. The gutter is the first.
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
          <strong>Make a wish</strong>
          “I want something up here.” Say where a tip should be.
        </span>
      </button>
      <h3>Or begin with one from the garden</h3>
      <div class="starters">
        {starters.map((starter) => (
          <button key={starter.design} type="button" class="offer" onClick={() => onTake(starter)}>
            <img src={starter.picture} alt="" width="150" height="110" loading="lazy" />
            <strong>{starter.title}</strong>
          </button>
        ))}
      </div>
      <p class="slip-ways">
        <a href={placed('/garden/')}>See the whole garden</a>
        <a href={placed('/plans/')}>Follow a plan</a>
        <button type="button" class="link" onClick={onSaved}>
          Open a saved dummy
        </button>
      </p>
    </Slip>
  )
}

/** An empty card of two A6 pages, 0.25 mm thick. */
export const EMPTY: Design = {
  hingebook: 1,
  title: 'My first dummy',
  card: { width: 105, height: 148, caliper: 0.25 },
  mechanisms: [],
}
