import type { JSX } from 'preact'
import { useId, useState } from 'preact/hooks'
import * as says from '../../../content/words/pieces.ts'
import type { Flat } from '../../paper/index.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { lengthUnit } from '../model/page.ts'
import { readPath } from './path.ts'
import type { Sketch } from './sketch.ts'

interface CheckProps {
  readonly label: string
  readonly on: boolean
  readonly onSet: (on: boolean) => void
}

export function Check({ label, on, onSet }: CheckProps): JSX.Element {
  return (
    <label class="pieces-check">
      <input type="checkbox" checked={on} onChange={({ currentTarget }) => onSet(currentTarget.checked)} />
      {label}
    </label>
  )
}

interface PointProps {
  readonly sketch: Sketch
  readonly chosen: number
  /** Where a first point goes. */
  readonly middle: Flat
  readonly onSketch: (sketch: Sketch, chosen: number) => void
  /** A press has done its work, or a number is typed. */
  readonly onRest: () => void
}

/** The point taken up, in numbers: a way to draw without dragging. */
export function PointFields({ sketch, chosen, middle, onSketch, onRest }: PointProps): JSX.Element {
  const { points, curve, closed } = sketch
  const change = (next: Sketch, index: number) => {
    onSketch(next, index)
    onRest()
  }
  const point = points[chosen]
  const set = (next: Partial<typeof point>) =>
    onSketch(
      { ...sketch, points: points.map((one, k) => (k === chosen ? { ...one, ...next } : one)) },
      chosen,
    )
  const add = () => {
    const [a, b] = [
      points[chosen]?.at ?? middle,
      points[(chosen + 1) % Math.max(1, points.length)]?.at ?? middle,
    ]
    const isEnd = points.length < 3 || (!closed && chosen === points.length - 1)
    // Half-way to the next; the first few beside one another.
    const at: Flat = isEnd
      ? [a[0] + (points.length === 0 ? 0 : 8), a[1] + (points.length === 2 ? 8 : 0)]
      : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
    change(
      { ...sketch, points: [...points.slice(0, chosen + 1), { at }, ...points.slice(chosen + 1)] },
      points.length === 0 ? 0 : chosen + 1,
    )
  }
  const field = (label: string, index: 0 | 1) =>
    point ? (
      <span class="pieces-number">
        <span aria-hidden="true">{label}</span>
        <NumberField
          label={says.pointNumber(chosen + 1, label)}
          value={point.at[index]}
          min={-2000}
          max={2000}
          unit="mm"
          length={lengthUnit.value}
          refusal={says.pointRange}
          onSet={(value) => set({ at: index === 0 ? [value, point.at[1]] : [point.at[0], value] })}
          onRest={onRest}
        />
      </span>
    ) : null
  const walk = (by: number) => onSketch(sketch, (chosen + by + points.length) % points.length)
  return (
    <div class="pieces-points">
      {point ? (
        <div class="pieces-row">
          <button type="button" class="press" aria-label={says.pointBefore} onClick={() => walk(-1)}>
            ‹
          </button>
          <strong>{says.pointOf(chosen + 1, points.length)}</strong>
          <button type="button" class="press" aria-label={says.nextPoint} onClick={() => walk(1)}>
            ›
          </button>
          {field(says.across, 0)}
          {field(says.along, 1)}
        </div>
      ) : null}
      <div class="pieces-row">
        <button type="button" class="button small" onClick={add}>
          {says.addPoint}
        </button>
        {point ? (
          <button
            type="button"
            class="button small"
            onClick={() =>
              change(
                { ...sketch, points: points.filter((_, k) => k !== chosen) },
                Math.max(0, Math.min(chosen, points.length - 2)),
              )
            }
          >
            {says.takeAway}
          </button>
        ) : null}
        {points.length > 0 ? (
          <button type="button" class="button small" onClick={() => change({ ...sketch, points: [] }, 0)}>
            {says.startOver}
          </button>
        ) : null}
        {point && curve ? (
          <Check
            label={says.cornerHere}
            on={point.sharp === true}
            onSet={(sharp) => {
              set({ sharp })
              onRest()
            }}
          />
        ) : null}
      </div>
    </div>
  )
}

interface PathProps {
  /** The outline, 1 across at its longest, right and up of its middle. */
  readonly onOutline: (outline: readonly Flat[]) => void
}

/** An SVG path brought in: pasted, or from a file. Only its numbers are read. */
export function PathField({ onOutline }: PathProps): JSX.Element {
  const [text, setText] = useState('')
  const [trouble, setTrouble] = useState('')
  const id = useId()
  const read = (data: string) => {
    const found = readPath(data)
    setTrouble(found.done ? '' : found.sentence)
    if (found.done) onOutline(found.outline)
  }
  return (
    <details class="pieces-path">
      <summary>{says.bringPath}</summary>
      <label for={id}>{says.pastePath}</label>
      <textarea
        id={id}
        rows={3}
        spellcheck={false}
        value={text}
        aria-invalid={trouble !== ''}
        onInput={({ currentTarget }) => setText(currentTarget.value)}
      />
      <div class="pieces-row">
        <button type="button" class="button small" disabled={text.trim() === ''} onClick={() => read(text)}>
          {says.readIt}
        </button>
        <label class="button small pieces-file">
          {says.openFile}
          <input
            type="file"
            accept=".svg,image/svg+xml"
            onChange={async ({ currentTarget }) => {
              const file = currentTarget.files?.[0]
              currentTarget.value = ''
              if (!file) return
              if (file.size > 2_000_000) setTrouble(says.fileTooLarge)
              else read(await file.text())
            }}
          />
        </label>
      </div>
      {trouble === '' ? null : (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
    </details>
  )
}
