import type { JSX } from 'preact'
import * as says from '../../../content/words/bench.ts'
import { pointInSection } from '../../drawing/page-point/page-point.ts'
import type { Section } from '../../drawing/section/section.ts'
import { section } from '../../drawing/section/section.ts'
import { openingsNear } from '../../drawing/view/camera.ts'
import { RangeField } from '../fields/RangeField.tsx'
import type { Bench } from '../model/bench-model.ts'
import { lengthUnit } from '../model/page.ts'
import { slid } from '../state/keys.ts'
import { cutAt } from '../state/state.ts'
import { Figure } from './Figure.tsx'
import { useKept, usePicture, useStage } from './stage.ts'

/** Where the section is cut, without dragging. */
export function StationBar({ bench }: { readonly bench: Bench }): JSX.Element {
  const { station, design, point } = bench.state.value
  return (
    <div class="figure-bar">
      <span aria-hidden="true">{says.cutAt}</span>
      <RangeField
        label={says.whereCutAlong}
        value={bench.station.value}
        min={0}
        max={design.card.height}
        unit="mm"
        length={lengthUnit.value}
        onSet={(wanted) => bench.step('section', (now) => cutAt(now, wanted))}
        onKey={(press) =>
          bench.step('section', (now) =>
            cutAt(now, slid(press, now.station ?? bench.station.peek(), 0, design.card.height)),
          )
        }
        onRest={bench.rest}
      />
      <button
        type="button"
        class="press"
        aria-pressed={station === null}
        onClick={() => {
          bench.step('section', (now) => cutAt(now, now.station === null ? bench.station.peek() : null))
          bench.rest()
        }}
      >
        {point ? says.stayAtDot : says.stayAtTip}
      </button>
    </div>
  )
}

interface SectionFigureProps {
  readonly bench: Bench
  /** The mechanism that is measured. */
  readonly lead: string | undefined
  /** It is drawn again only when the hand rests. */
  readonly small?: boolean
}

/** The fold from its end: how the parts stand over the page. */
export function SectionFigure({ bench, lead, small = false }: SectionFigureProps): JSX.Element {
  const stage = useStage({ width: 237, height: 293 }, small)
  const { ref, size, text } = stage
  const kept = useKept<Section>()
  return usePicture(bench, stage, 'section', () => {
    const { opening, station, point } = bench.state.value
    const unit = lengthUnit.value
    const poser = bench.poser.value
    const at = station === null && lead !== undefined ? lead : bench.station.value
    const drawing = kept([poser, opening, at, point, size, text, unit, lead], () => {
      const plain = section(poser, opening, at, size, {
        ...(lead === undefined ? {} : { of: lead }),
        frame: openingsNear(bench.start.opening, opening),
        text,
        unit,
      })
      return point ? pointInSection(plain, point, opening, { text, unit }) : plain
    })
    return (
      <div class="stage stage-section" ref={ref}>
        <Figure drawing={drawing} />
      </div>
    )
  })
}
