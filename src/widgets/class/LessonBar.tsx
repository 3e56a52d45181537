import type { JSX } from 'preact'
import * as says from '../../../content/words/class-page.ts'
import { shifted } from '../../class/timings.ts'
import type { PackWords, Part } from '../../class/words.ts'
import { filled } from '../../class/words.ts'

interface LessonBarProps {
  readonly parts: readonly Part[]
  readonly words: PackWords
  readonly values: Readonly<Record<string, string>>
  readonly onMinutes: (minutes: readonly number[]) => void
}

/** The parts of the lesson, as wide as they are long. A dot gives a part more of the next one's time. */
export function LessonBar({ parts, words, values, onMinutes }: LessonBarProps): JSX.Element {
  const minutes = parts.map((part) => part.minutes)
  const move = (k: number, by: number) => onMinutes(shifted(minutes, k, by))
  const ends = parts.map((_, k) => minutes.slice(0, k + 1).reduce((sum, m) => sum + m, 0))
  const whole = ends.at(-1) ?? 1
  return (
    <div class="lesson">
      <div class="lesson-bar">
        {parts.map(({ name, minutes: long }, k) => (
          <div
            key={name}
            class="lesson-part"
            style={{ left: `${(100 * ((ends[k] ?? 0) - long)) / whole}%`, width: `${(100 * long) / whole}%` }}
          >
            <strong>{words.parts[name]}</strong>
            <span class="quiet">{says.shortMinutes(long)}</span>
          </div>
        ))}
        {parts.slice(0, -1).map(({ name }, k) => {
          const next = parts[k + 1]
          const part = words.parts[name]
          return (
            <button
              key={name}
              type="button"
              class="lesson-dot"
              role="slider"
              aria-label={says.endOf(part)}
              aria-valuemin={(ends[k] ?? 0) - (minutes[k] ?? 1) + 1}
              aria-valuemax={(ends[k] ?? 0) + (next?.minutes ?? 1) - 1}
              aria-valuenow={ends[k]}
              aria-valuetext={says.endsAfter(part, ends[k])}
              style={{ left: `${(100 * (ends[k] ?? 0)) / whole}%` }}
              onKeyDown={(event) => {
                const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key]
                if (by === undefined) return
                event.preventDefault()
                move(k, by)
              }}
              onPointerDown={(event) => {
                const dot = event.currentTarget
                const bar = dot.parentElement?.getBoundingClientRect()
                if (!bar) return
                dot.setPointerCapture(event.pointerId)
                const from = event.clientX
                const before = minutes
                const drag = ({ clientX }: PointerEvent) =>
                  onMinutes(shifted(before, k, ((clientX - from) / bar.width) * whole))
                const end = () => {
                  dot.removeEventListener('pointermove', drag)
                  dot.removeEventListener('pointerup', end)
                  dot.removeEventListener('pointercancel', end)
                }
                dot.addEventListener('pointermove', drag)
                dot.addEventListener('pointerup', end)
                dot.addEventListener('pointercancel', end)
              }}
            />
          )
        })}
      </div>
      <ol class="lesson-does">
        {parts.map((part, k) => (
          <li key={part.name}>
            <strong>{words.parts[part.name]}</strong>
            <span class="lesson-minutes">
              <button
                type="button"
                class="small-button"
                disabled={k === parts.length - 1}
                aria-label={says.oneMinuteLess(words.parts[part.name])}
                onClick={() => move(k, -1)}
              >
                −
              </button>
              <span>{says.shortMinutes(part.minutes)}</span>
              <button
                type="button"
                class="small-button"
                disabled={k === parts.length - 1}
                aria-label={says.oneMinuteMore(words.parts[part.name])}
                onClick={() => move(k, 1)}
              >
                +
              </button>
            </span>
            <span>{filled(part.does, values)}</span>
          </li>
        ))}
      </ol>
    </div>
  )
}
