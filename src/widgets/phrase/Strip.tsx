/** Loaded when a phrase is pressed with the bench out of sight. */

import type { JSX } from 'preact'
import * as says from '../../../content/words/phrase-strip.ts'
import { SectionFigure } from '../figures/SectionFigure.tsx'
import { ViewFigure } from '../figures/ViewFigure.tsx'
import { Cover, Mark } from '../guess/Cover.tsx'
import type { Bench } from '../model/bench-model.ts'
import { movedOn } from '../model/moved.ts'
import { covering, lengthUnit } from '../model/page.ts'
import { EVERY_FIGURE } from '../state/config.ts'
import { angleWords, shown, spoken } from '../state/format.ts'
import { leadOf } from '../state/state.ts'

interface StripProps {
  readonly slug: string
  readonly bench: Bench
  readonly onClose: () => void
}

/** The card, its section and its first reading, small, at the top of the screen. */
export function Strip({ slug, bench, onClose }: StripProps): JSX.Element {
  const length = lengthUnit.value
  const lead = leadOf(bench.start.design, bench.config)?.id
  const [reading] = bench.readings.value
  const was = reading && movedOn(slug).value?.was[reading.name]
  const { opening } = bench.state.value
  const { covers = [] } = bench.config
  const answers = reading !== undefined && covers.includes(reading.name)
  const upToBench = () => {
    onClose()
    const top = document.querySelector<HTMLElement>('.bench-grid')
    top?.scrollIntoView({ block: 'start' })
    top?.querySelector<HTMLElement>('button, input, [tabindex="0"]')?.focus({ preventScroll: true })
  }
  return (
    <section class="phrase-strip bench" aria-label={says.theCard} data-covers={covers.join(' ')}>
      <div class="phrase-view">
        <ViewFigure bench={bench} options={lead === undefined ? {} : { rise: [lead] }} />
      </div>
      {(bench.config.figures ?? EVERY_FIGURE).includes('section') ? (
        <div class="phrase-section" data-answers={covers.includes('section')}>
          <SectionFigure bench={bench} lead={lead} />
          {covers.includes('section') ? <Cover /> : null}
        </div>
      ) : null}
      <div class="phrase-says">
        {reading ? (
          <p class="phrase-reading">
            <span>{reading.label}</span>
            {answers ? <Mark /> : null}{' '}
            <span class="phrase-number" data-answers={answers}>
              <strong>{shown(reading.value, reading.unit, length)}</strong>
              {was !== undefined && Math.abs(was - reading.value) >= 0.05 ? (
                <span class="was">{says.was(shown(was, reading.unit, length))}</span>
              ) : null}
            </span>
          </p>
        ) : null}
        <p class="phrase-opening">{says.openTo(angleWords(opening))}</p>
        <p class="phrase-ways">
          <button type="button" onClick={upToBench}>
            {says.upToBench}
          </button>
          <button type="button" onClick={onClose}>
            {says.close}
          </button>
        </p>
        <p class="aloud" aria-live="polite">
          {reading && was !== undefined && !(answers && covering.value)
            ? `${reading.label} ${spoken(reading.value, reading.unit, length)}`
            : ''}
        </p>
      </div>
    </section>
  )
}
