import type { JSX } from 'preact'
import * as says from '../../../../content/words/dummy/wish.ts'
import { opened } from '../../state/state.ts'
import type { Dummy } from '../model/dummy-model.ts'
import {
  MARK_OPENING,
  MOST_MARKS,
  markAt,
  NEAR_PATH,
  placeOfWish,
  withMark,
  withoutMark,
} from '../model/wishes.ts'
import { Blank } from './Blanks.tsx'

interface MarkProps {
  readonly dummy: Dummy
  /** Its place among the marks. */
  readonly k: number
}

/** One mark of the way, as a sentence with blanks. */
function MarkRow({ dummy, k }: MarkProps): JSX.Element | null {
  const { wish, bench } = dummy
  const { width, height } = bench.design.value.card
  const mark = wish.value.path?.[k]
  if (!mark) return null
  const { rise, along } = placeOfWish(mark)
  return (
    <li>
      {says.markAt}{' '}
      <Blank
        label={says.markOpening(k + 1)}
        value={mark.opening}
        unit="deg"
        {...MARK_OPENING}
        onSet={(value) => {
          wish.value = markAt(wish.peek(), k, {}, value)
          bench.step('opening', (state) => opened(state, value))
          bench.rest()
        }}
      />{' '}
      {says.markIs}{' '}
      <Blank
        label={says.markHowHigh(k + 1)}
        value={rise}
        unit="mm"
        min={0}
        max={2 * width}
        onSet={(value) => {
          wish.value = markAt(wish.peek(), k, { rise: value })
        }}
      />{' '}
      {says.markHigh}{' '}
      <Blank
        label={says.markHowFar(k + 1)}
        value={along}
        unit="mm"
        min={-height}
        max={2 * height}
        onSet={(value) => {
          wish.value = markAt(wish.peek(), k, { along: value })
        }}
      />{' '}
      {says.markFromYourEnd}{' '}
      <button
        type="button"
        class="link"
        aria-label={says.takeMarkAway(k + 1)}
        onClick={() => {
          wish.value = withoutMark(wish.peek(), k)
        }}
      >
        {says.takeAway}
      </button>
    </li>
  )
}

/** The way that a wished tip goes: marks at openings, drawn on the card or typed. */
export function WishPath({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { wish, draws } = dummy
  const { path = [], near = NEAR_PATH } = wish.value
  return (
    <>
      {path.length === 0 ? null : (
        <>
          <ol class="wish-marks" aria-label={says.marks}>
            {path.map((_, k) => (
              <MarkRow key={k} {...{ dummy, k }} />
            ))}
          </ol>
          <p class="wish-near">
            {says.asNearBefore}{' '}
            <Blank
              label={says.howNear}
              value={near}
              unit="mm"
              min={0.5}
              max={40}
              onSet={(value) => {
                wish.value = { ...wish.peek(), near: value }
              }}
            />
            {says.asNearAfter}
          </p>
        </>
      )}
      <div class="slip-buttons">
        <button
          type="button"
          class="button"
          aria-pressed={draws.value}
          onClick={() => {
            draws.value = !draws.peek()
          }}
        >
          {path.length === 0 ? says.drawWay : says.drawAgain}
        </button>
        {path.length < MOST_MARKS ? (
          <button
            type="button"
            class="button"
            onClick={() => {
              wish.value = withMark(wish.peek())
            }}
          >
            {says.addMark}
          </button>
        ) : null}
      </div>
      {draws.value ? (
        <p class="slip-says" role="status">
          {says.oneStroke}
        </p>
      ) : null}
    </>
  )
}
