import type { JSX } from 'preact'
import * as says from '../../../content/words/bench-chart.ts'
import type { Chart } from '../../drawing/chart/chart.ts'
import { chart } from '../../drawing/chart/chart.ts'
import type { Bench } from '../model/bench-model.ts'
import { lengthUnit } from '../model/page.ts'
import { angleWords, shown } from '../state/format.ts'
import { slid } from '../state/keys.ts'
import { openingsOf } from '../state/opening.ts'
import { opened } from '../state/state.ts'
import { Figure } from './Figure.tsx'
import type { Place } from './Grip.tsx'
import { Grip } from './Grip.tsx'
import { useKept, usePicture, useStage } from './stage.ts'

interface ChartFigureProps {
  readonly bench: Bench
  readonly lead: string | undefined
  /** It is drawn again only when the hand rests. */
  readonly small?: boolean
}

/** The rise through the whole motion; its dot is the card as it stands. */
export function ChartFigure({ bench, lead, small = false }: ChartFigureProps): JSX.Element {
  const stage = useStage({ width: 424, height: 296 }, small)
  const { ref, size, text } = stage
  const kept = useKept<Chart>()
  return usePicture(bench, stage, 'chart', () => {
    const { opening, point } = bench.state.value
    const length = lengthUnit.value
    const design = bench.design.value
    const [least, most] = openingsOf(design)
    const drawn = kept([design, opening, point, size, text, length, small, lead], () =>
      chart(design, opening, size, {
        ...(lead === undefined ? {} : { of: [lead] }),
        ...(point ? { point } : {}),
        text,
        unit: length,
        brief: small,
      }),
    )
    const dot = drawn.marks.find((mark) => mark.mark === 'dot' && mark.of === 'opening')
    const at: Place | null = dot?.mark === 'dot' ? dot.at : null
    const rise = bench.readings.value[0]
    const said = rise ? `, ${rise.label.toLowerCase()} ${shown(rise.value, rise.unit, length)}` : ''
    return (
      <div class="stage stage-chart" ref={ref}>
        <Figure drawing={drawn} />
        {at ? (
          <Grip
            label={says.openingOnChart}
            at={at}
            box={size}
            way="level"
            value={{ now: opening, min: least, max: most, text: `${angleWords(opening)}${said}` }}
            held={bench.held.value === 'chart'}
            rides=""
            onHold={() => bench.hold('chart')}
            onMove={(to) => bench.move((now) => opened(now, drawn.toOpening(to)))}
            onRelease={bench.release}
            onCancel={bench.cancel}
            onKey={(press) => bench.step('opening', (now) => opened(now, slid(press, now.opening, 0, 180)))}
            onRest={bench.rest}
          />
        ) : null}
      </div>
    )
  })
}
