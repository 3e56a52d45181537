import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import { nameOf } from '../../paper/index.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { lengthUnit } from '../model/page.ts'
import { brought } from './bring-picture.ts'
import type { LaidPicture } from './laid-picture.ts'
import { layPicture, pictureOn } from './laid-picture.ts'
import type { PiecesProps } from './PiecesDesk.tsx'
import { Check } from './SketchTools.tsx'

interface SizeProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly onSet: (value: number) => void
}

const Size = ({ label, value, min, onSet }: SizeProps): JSX.Element => (
  <span class="pieces-number">
    <span aria-hidden="true">{label}</span>
    <NumberField
      label={says.pictureSize(label.toLowerCase())}
      {...{ value, min, onSet }}
      max={400}
      unit="mm"
      length={lengthUnit.value}
      refusal={says.pictureRange(min)}
      onRest={() => {}}
    />
  </span>
)

interface PictureProps {
  readonly props: PiecesProps
  readonly panel: string
  /** Where a picture lies at first, and how wide: as a reader sees the face upright, mm. */
  readonly at: readonly [right: number, up: number]
  readonly wide: number
}

/** A picture laid on the face: to draw after, or to be printed. */
export function PictureTools({ props, panel, at, wide }: PictureProps): JSX.Element {
  const { design, take } = props
  const [trouble, setTrouble] = useState('')
  const picture = pictureOn(design, panel)
  const lay = (next: LaidPicture | null, told: string) => take(layPicture(design, panel, next), told)
  const bring = async (file: File | undefined) => {
    if (!file) return
    const found = await brought(file)
    if (typeof found === 'string') return setTrouble(found)
    setTrouble('')
    const place = picture ?? {
      at: [Math.round(at[0]), Math.round(at[1])],
      width: Math.round(wide),
      trace: true,
    }
    lay({ ...place, ...found }, says.pictureLies(nameOf(panel)))
  }
  const set = (part: Partial<LaidPicture>, told: string = says.pictureAnew) =>
    picture && lay({ ...picture, ...part }, told)
  return (
    <details class="trace">
      <summary>{says.layPicture}</summary>
      <p class="slip-says">{says.pictureExplained}</p>
      <input
        type="file"
        accept="image/png,image/jpeg,image/svg+xml"
        aria-label={says.pictureFile}
        onChange={({ currentTarget }) => {
          void bring(currentTarget.files?.[0])
          currentTarget.value = ''
        }}
      />
      {trouble === '' ? null : (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {picture ? (
        <>
          <Check
            label={says.printIt}
            on={!picture.trace}
            onSet={(prints) =>
              set({ trace: !prints }, prints ? says.picturePrinted : says.pictureOnlyDrawnAfter)
            }
          />
          <div class="pieces-row">
            <Size label={says.width} value={picture.width} min={1} onSet={(width) => set({ width })} />
            <Size
              label={says.toTheRight}
              value={picture.at[0]}
              min={-400}
              onSet={(right) => set({ at: [right, picture.at[1]] })}
            />
            <Size
              label={says.up}
              value={picture.at[1]}
              min={-400}
              onSet={(up) => set({ at: [picture.at[0], up] })}
            />
            <button type="button" class="button small" onClick={() => lay(null, says.pictureGone)}>
              {says.takeAway}
            </button>
          </div>
        </>
      ) : null}
    </details>
  )
}
