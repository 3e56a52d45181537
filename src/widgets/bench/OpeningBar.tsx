import './opening.css'
import type { JSX } from 'preact'
import { useId } from 'preact/hooks'
import * as says from '../../../content/words/bench.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { RangeField } from '../fields/RangeField.tsx'
import { Mark } from '../guess/Cover.tsx'
import type { Bench } from '../model/bench-model.ts'
import { useCalm } from '../model/calm.ts'
import { covering, lengthUnit } from '../model/page.ts'
import type { Coverable } from '../state/config.ts'
import { small, spoken } from '../state/format.ts'
import { slid } from '../state/keys.ts'
import { openingsOf, refusalOf } from '../state/opening.ts'
import { nextStep, STEP } from '../state/play.ts'
import { opened } from '../state/state.ts'

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
  const calm = useCalm()
  const [first] = bench.readings.value
  // What answers the chapter's guess is not spoken either.
  const isCovered = (name: Coverable) => covering.value && bench.config.covers?.includes(name)
  const rise = first && isCovered(first.name) ? undefined : first
  const set = (wanted: number) => bench.step('opening', (now) => opened(now, wanted))
  const press = () => {
    if (playing) bench.pause()
    else if (calm) {
      set(nextStep(opening, [least, most]))
      bench.rest()
    } else bench.play()
  }
  const common = { label: says.opening, value: opening, unit: 'deg', length: 'mm' } as const
  return (
    <div class="opening-bar">
      <button
        type="button"
        class="play"
        aria-label={playing ? says.pause : calm ? says.openAndShutBySteps : says.openAndShut}
        onClick={press}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d={playing ? 'M5 3h4v14H5zM11 3h4v14h-4z' : 'M5 2.5v15l13-7.5z'} />
        </svg>
      </button>
      <span class="opening-word" aria-hidden="true">
        {says.opening}
      </span>
      <RangeField
        {...common}
        {...(rise ? { says: `${small(rise.label)} ${spoken(rise.value, rise.unit, lengthUnit.value)}` } : {})}
        min={0}
        max={180}
        {...(stops ? { reach: [least, most] as const, describedBy: id } : {})}
        onSet={set}
        onKey={(press) => bench.step('opening', (now) => opened(now, slid(press, now.opening, 0, 180)))}
        onRest={bench.rest}
      />
      {stops && isCovered('stop') ? (
        <Mark />
      ) : (
        <NumberField
          {...common}
          min={least}
          max={most}
          refusal={refusalOf(design)}
          onSet={set}
          onRest={bench.rest}
        />
      )}
      {stops ? (
        <span class="aloud" id={id}>
          {isCovered('stop') ? says.covered : refusalOf(design)}
        </span>
      ) : null}
      <p class="opening-stop" role="status">
        {bench.against.value}
      </p>
      {calm ? <p class="opening-calm">{says.onePressOneStep(STEP)}</p> : null}
    </div>
  )
}
