import '../drawing/marks.css'
import '../widgets/bench.css'
import type { JSX } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import type { Camera } from '../drawing/camera.ts'
import { view } from '../drawing/view.ts'
import type { Design } from '../paper/index.ts'
import { compile } from '../paper/index.ts'
import { Figure } from '../widgets/Figure.tsx'
import { RangeField } from '../widgets/RangeField.tsx'

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
  /** Says which card it is. */
  readonly label: string
}

/** A small card that opens and shuts: one picture, one slider. The server draws the same picture first. */
export function Swing({
  design,
  opening,
  camera,
  width,
  height,
  frame,
  rise = [],
  label,
}: SwingProps): JSX.Element {
  const [now, setNow] = useState(opening)
  const poser = useMemo(() => compile(design), [design])
  const drawing = view(poser, now, camera, { width, height }, { rise, frame, squares: false, text: 17 })
  return (
    <div class="swing">
      <Figure drawing={drawing} />
      <RangeField
        label={`Opening of the ${label}`}
        value={now}
        min={frame[0] ?? 0}
        max={frame.at(-1) ?? 180}
        unit="deg"
        length="mm"
        onSet={setNow}
        onRest={() => {}}
      />
    </div>
  )
}
