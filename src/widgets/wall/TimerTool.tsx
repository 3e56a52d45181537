import type { JSX } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import * as says from '../../../content/words/wall.ts'
import { clockText, leftOf, MINUTES, minutesIn, resting, turned } from './timer.ts'

/** Often enough that no second is missed, ms. */
const TICK = 200

/** A time that runs down, large enough for the last row. */
export function TimerTool(): JSX.Element {
  const [text, setText] = useState('5')
  const [timer, setTimer] = useState(() => resting(5))
  const [now, setNow] = useState(() => Date.now())
  const left = leftOf(timer, now)
  const isOver = left === 0
  const isRunning = timer.runs && !isOver
  useEffect(() => {
    if (!isRunning) return undefined
    const tick = setInterval(() => setNow(Date.now()), TICK)
    return () => clearInterval(tick)
  }, [isRunning])
  const minutes = minutesIn(text)
  const press = () => {
    const at = Date.now()
    setNow(at)
    setTimer(isOver ? resting(minutes ?? 5) : turned(timer, at))
  }
  return (
    <section class="wall-slip wall-timer" aria-label={says.timer}>
      <p class="wall-clock" data-over={isOver}>
        {clockText(left)}
      </p>
      <button type="button" class="button" onClick={press}>
        {isOver ? says.again : isRunning ? says.stop : says.start}
      </button>
      <label>
        {says.minutes}{' '}
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={text}
          aria-invalid={minutes === null}
          onInput={(event) => {
            setText(event.currentTarget.value)
            const typed = minutesIn(event.currentTarget.value)
            if (typed !== null) setTimer(resting(typed))
          }}
        />
      </label>
      {minutes === null ? <p role="alert">{says.minutesFrom(MINUTES.least, MINUTES.most)}</p> : null}
      <p role="status">{isOver ? says.timeIsUp : ''}</p>
    </section>
  )
}
