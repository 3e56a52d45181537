import type { JSX } from 'preact'
import { NumberField } from '../fields/NumberField.tsx'
import { RangeField } from '../fields/RangeField.tsx'
import type { Bench } from '../model/bench-model.ts'
import { opened } from '../model/bench-model.ts'
import { slid } from '../state/keys.ts'
import { nextStep } from '../state/play.ts'

const wantsCalm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches

/** How far the card stands open: play, slider, number. */
export function OpeningBar({ bench }: { readonly bench: Bench }): JSX.Element {
  const { opening } = bench.state.value
  const playing = bench.playing.value
  const set = (wanted: number) => bench.step('opening', (now) => opened(now, wanted))
  const press = () => {
    if (playing) bench.pause()
    else if (wantsCalm()) {
      set(nextStep(opening))
      bench.rest()
    } else bench.play()
  }
  const common = { label: 'Opening', value: opening, min: 0, max: 180, unit: 'deg', length: 'mm' } as const
  return (
    <div class="opening-bar">
      <button
        type="button"
        class="play"
        aria-label={playing ? 'Pause' : 'Open and shut the card'}
        onClick={press}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d={playing ? 'M5 3h4v14H5zM11 3h4v14h-4z' : 'M5 2.5v15l13-7.5z'} />
        </svg>
      </button>
      <span class="opening-word" aria-hidden="true">
        Opening
      </span>
      <RangeField
        {...common}
        onSet={set}
        onKey={(press) => bench.step('opening', (now) => opened(now, slid(press, now.opening, 0, 180)))}
        onRest={bench.rest}
      />
      <NumberField
        {...common}
        refusal="The opening goes from 0° (shut) to 180° (flat)."
        onSet={set}
        onRest={bench.rest}
      />
    </div>
  )
}
