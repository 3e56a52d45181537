import type { JSX } from 'preact'
import * as says from '../../../content/words/beside.ts'
import type { Bench } from '../model/bench-model.ts'
import { seenFrom } from '../state/state.ts'

/** Degrees the view turns at each press. */
const TURN_PER_PRESS = 10

const knobs = [
  { label: says.turnLeft, turn: -1, tilt: 0, path: 'M11 4 5 10l6 6M5 10h10' },
  { label: says.turnRight, turn: 1, tilt: 0, path: 'M9 4l6 6-6 6M15 10H5' },
  { label: says.lookHigher, turn: 0, tilt: 1, path: 'M4 11l6-6 6 6M10 5v10' },
  { label: says.lookLower, turn: 0, tilt: -1, path: 'M4 9l6 6 6-6M10 15V5' },
] as const

/** Turns the view without dragging. */
export function Knobs({ bench }: { readonly bench: Bench }): JSX.Element {
  const look = (turn: number, tilt: number) => {
    bench.step('camera', ({ camera, ...now }) =>
      seenFrom(
        { ...now, camera },
        { turn: camera.turn + turn * TURN_PER_PRESS, tilt: camera.tilt + tilt * TURN_PER_PRESS },
      ),
    )
    bench.rest()
  }
  return (
    <fieldset class="knobs" aria-label={says.whereFrom}>
      {knobs.map(({ label, turn, tilt, path }) => (
        <button
          key={label}
          type="button"
          class="press"
          aria-label={label}
          title={label}
          onClick={() => look(-turn, tilt)}
        >
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <path d={path} />
          </svg>
        </button>
      ))}
    </fieldset>
  )
}
