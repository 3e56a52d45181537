import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import { NumberField } from '../fields/NumberField.tsx'
import { lengthUnit } from '../model/page.ts'
import type { Traced } from './tracing.ts'
import { painted, trace, traced } from './tracing.ts'

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

interface TraceProps {
  readonly panel: string
  /** Where a picture lies at first, and how wide: as a reader sees the face upright, mm. */
  readonly at: readonly [right: number, up: number]
  readonly wide: number
}

/** A picture laid under the face, to trace it. */
export function TraceTools({ panel, at, wide }: TraceProps): JSX.Element {
  const [trouble, setTrouble] = useState('')
  const picture = traced.value.get(panel)
  const bring = async (file: File | undefined) => {
    if (!file) return
    const found = await painted(file)
    if (typeof found === 'string') return setTrouble(found)
    setTrouble('')
    trace(panel, { ...found, width: Math.round(wide), at: [Math.round(at[0]), Math.round(at[1])] })
  }
  const set = (part: Partial<Traced>) => picture && trace(panel, { ...picture, ...part })
  return (
    <details class="trace">
      <summary>Lay a picture under it, to trace</summary>
      <p class="slip-says">
        A PNG or JPEG. It is seen here alone: it is not printed, not sent, and gone when you leave the page.
      </p>
      <input
        type="file"
        accept="image/png,image/jpeg"
        aria-label="Picture to trace"
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
          <button type="button" class="button small" onClick={() => trace(panel, null)}>
            Take it away
          </button>
        </div>
      ) : null}
    </details>
  )
}
