import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
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
      label={`Picture: ${label.toLowerCase()}`}
      {...{ value, min, onSet }}
      max={400}
      unit="mm"
      length={lengthUnit.value}
      refusal={`A number from ${min} to 400 mm.`}
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
  const lay = (next: LaidPicture | null, says: string) => take(layPicture(design, panel, next), says)
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
    lay({ ...place, ...found }, `A picture lies on ${nameOf(panel)}.`)
  }
  const set = (part: Partial<LaidPicture>, says = 'The picture is laid anew.') =>
    picture && lay({ ...picture, ...part }, says)
  return (
    <details class="trace">
      <summary>Lay a picture on it</summary>
      <p class="slip-says">
        A PNG, JPEG or SVG, to draw after or to print. It is made small and kept in the design; it is sent
        nowhere.
      </p>
      <input
        type="file"
        accept="image/png,image/jpeg,image/svg+xml"
        aria-label="Picture to lay on the face"
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
            label="Print it with the card"
            on={!picture.trace}
            onSet={(prints) =>
              set(
                { trace: !prints },
                prints ? 'The picture is printed with the card.' : 'The picture is only drawn after.',
              )
            }
          />
          <div class="pieces-row">
            <Size label="Width" value={picture.width} min={1} onSet={(width) => set({ width })} />
            <Size
              label="To the right"
              value={picture.at[0]}
              min={-400}
              onSet={(right) => set({ at: [right, picture.at[1]] })}
            />
            <Size
              label="Up"
              value={picture.at[1]}
              min={-400}
              onSet={(up) => set({ at: [picture.at[0], up] })}
            />
            <button
              type="button"
              class="button small"
              onClick={() => lay(null, 'The picture is taken away.')}
            >
              Take it away
            </button>
          </div>
        </>
      ) : null}
    </details>
  )
}
