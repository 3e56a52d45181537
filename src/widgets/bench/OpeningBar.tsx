import type { JSX } from 'preact'
import { useId } from 'preact/hooks'
import { NumberField } from '../fields/NumberField.tsx'
import { RangeField } from '../fields/RangeField.tsx'
import type { Bench } from '../model/bench-model.ts'
import { opened } from '../model/bench-model.ts'
import { slid } from '../state/keys.ts'
import { openingsOf, refusalOf } from '../state/opening.ts'
import { nextStep } from '../state/play.ts'

const wantsCalm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches

/**
 * How far the card stands open: play, slider, number. The slider goes from shut to flat; the part of it that
 * the card does not reach is hatched, and a press against that end is answered in words.
 */
export function OpeningBar({ bench }: { readonly bench: Bench }): JSX.Element {
  const { opening, design } = bench.state.value
  const [least, most] = openingsOf(design)
  const stops = least > 0 || most < 180
  const id = useId()
  const playing = bench.playing.value
  const set = (wanted: number) => bench.step('opening', (now) => opened(now, wanted))
  const press = () => {
    if (playing) bench.pause()
    else if (wantsCalm()) {
      set(nextStep(opening, [least, most]))
      bench.rest()
    } else bench.play()
  }
  const common = { label: 'Opening', value: opening, unit: 'deg', length: 'mm' } as const
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
        min={0}
        max={180}
        {...(stops ? { reach: [least, most] as const, describedBy: id } : {})}
        onSet={set}
        onKey={(press) => bench.step('opening', (now) => opened(now, slid(press, now.opening, 0, 180)))}
        onRest={bench.rest}
      />
      <NumberField
        {...common}
        min={least}
        max={most}
        refusal={refusalOf(design)}
        onSet={set}
        onRest={bench.rest}
      />
      {stops ? (
        <span class="aloud" id={id}>
          {refusalOf(design)}
        </span>
      ) : null}
      <p class="opening-stop" role="status">
        {bench.against.value}
      </p>
    </div>
  )
}
