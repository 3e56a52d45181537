import '../drawing/pen/marks.css'
import '../widgets/bench/bench.css'
import type { JSX } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import { pointInView } from '../drawing/page-point/page-point.ts'
import type { Camera } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Design, Flat } from '../paper/index.ts'
import { compile } from '../paper/index.ts'
import { RangeField } from '../widgets/fields/RangeField.tsx'
import { Figure } from '../widgets/figures/Figure.tsx'
import { openingsOf } from '../widgets/state/opening.ts'

interface SwingProps {
  readonly design: Design
  /** Where the card stands before anyone moves it, degrees. */
  readonly opening: number
  readonly camera: Camera
  /** Of the picture, px; the page scales it. */
  readonly width: number
  readonly height: number
  /** Openings that the framing has room for, degrees: the slider goes from the first to the last. */
  readonly frame: readonly number[]
  /** Mechanisms whose rise is measured in the picture. */
  readonly rise?: readonly string[]
  /** A point of a bare card, mm, shown with its twin. */
  readonly point?: Flat
  /** Height of the words in the picture, px. */
  readonly text?: number
  /** Says which card it is. */
  readonly label: string
}

/** A small card that opens and shuts: one picture, one slider. The server draws the same picture first. */
export function Swing(props: SwingProps): JSX.Element {
  const { design, opening, camera, width, height, frame, rise = [], point, text = 17, label } = props
  const [now, setNow] = useState(opening)
  const [least, most] = openingsOf(design)
  const poser = useMemo(() => compile(design), [design])
  const plain = view(poser, now, camera, { width, height }, { rise, frame, text })
  const drawing = point ? pointInView(plain, point, now, { text, unit: 'mm' }) : plain
  return (
    <div class="swing">
      <Figure drawing={drawing} />
      <div class="swing-bar">
        <span aria-hidden="true">Opening</span>
        <RangeField
          label={`Opening of the ${label}`}
          value={now}
          min={Math.max(least, frame[0] ?? 0)}
          max={Math.min(most, frame.at(-1) ?? 180)}
          unit="deg"
          length="mm"
          onSet={setNow}
          onRest={() => {}}
        />
        <span class="number" aria-hidden="true">
          {now.toFixed(0)}°
        </span>
      </div>
    </div>
  )
}
