import './elsewhere.css'
import type { JSX } from 'preact'
import { useId, useState } from 'preact/hooks'
import { FILE_ENDING, fileName } from '../keeping/file-text.ts'
import { reasonOf } from '../model/loading.ts'
import type { CutterChoice, CutterFormat } from './cutter.ts'
import type { Taken } from './exports.ts'

const PAPERS = [
  ['a4', 'A4'],
  ['a3', 'A3'],
  ['letter', 'US Letter'],
  ['tabloid', 'US Tabloid'],
  ['roll', 'A roll 300 mm wide'],
] as const satisfies readonly (readonly [CutterChoice['paper'], string])[]

const FORMATS = [
  ['dxf', 'DXF'],
  ['svg', 'SVG'],
] as const satisfies readonly (readonly [CutterFormat, string])[]

const CHECKS = [
  ['keepsGrain', 'Main folds along the grain'],
  ['bridges', 'Bridges hold the pieces'],
  ['perforated', 'Folds as rows of cuts'],
] as const satisfies readonly (readonly [keyof CutterChoice, string])[]

const FIRST: CutterChoice = {
  paper: 'a4',
  copies: 1,
  keepsGrain: true,
  bridges: false,
  perforated: false,
}

const MOST_COPIES = 100

/** A number of copies as typed; null if it is none that can be made. */
const copiesIn = (text: string): number | null =>
  /^\d{1,3}$/.test(text.trim()) && Number(text) >= 1 && Number(text) <= MOST_COPIES ? Number(text) : null

/** The pieces side by side for a cutting machine, as they stand. */
export function CutterTools({ now }: { readonly now: () => Pick<Taken, 'design'> }): JSX.Element {
  const refusal = useId()
  const [choice, setChoice] = useState(FIRST)
  const [typed, setTyped] = useState(String(FIRST.copies))
  const [said, setSaid] = useState('')
  const isRefused = copiesIn(typed) === null
  const save = async (format: CutterFormat) => {
    try {
      const { design } = now()
      const stem = fileName(design.title).slice(0, -FILE_ENDING.length)
      const { saveCut } = await import('./cutter.ts')
      setSaid(await saveCut(design, stem, choice, format))
    } catch (error) {
      setSaid(`This could not be made: ${reasonOf(error)}`)
    }
  }
  return (
    <details>
      <summary>For a cutting machine</summary>
      <p class="slip-says">
        The pieces side by side at true size, each line type a layer: creases first, outlines last.
      </p>
      <div class="cutter-choices">
        <label>
          Cut from{' '}
          <select
            value={choice.paper}
            onChange={({ currentTarget }) =>
              setChoice({ ...choice, paper: currentTarget.value as CutterChoice['paper'] })
            }
          >
            {PAPERS.map(([name, label]) => (
              <option key={name} value={name}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <label>
          Copies{' '}
          <input
            type="text"
            class="number-input"
            inputMode="numeric"
            autocomplete="off"
            aria-invalid={isRefused}
            aria-describedby={isRefused ? refusal : undefined}
            value={typed}
            onInput={({ currentTarget }) => {
              setTyped(currentTarget.value)
              const copies = copiesIn(currentTarget.value)
              if (copies !== null) setChoice({ ...choice, copies })
            }}
          />
        </label>
        {isRefused ? (
          <span class="refusal" id={refusal} role="alert">
            A whole number of copies from 1 to {MOST_COPIES}.
          </span>
        ) : null}
        {CHECKS.map(([name, label]) => (
          <label key={name}>
            <input
              type="checkbox"
              checked={choice[name]}
              onChange={({ currentTarget }) => setChoice({ ...choice, [name]: currentTarget.checked })}
            />{' '}
            {label}
          </label>
        ))}
      </div>
      <div class="slip-buttons">
        {FORMATS.map(([format, label]) => (
          <button
            key={format}
            type="button"
            class="button"
            aria-label={`Pieces for a cutting machine as ${label}`}
            onClick={() => void save(format)}
          >
            {label}
          </button>
        ))}
      </div>
      <p class="slip-says" role="status">
        {said}
      </p>
    </details>
  )
}
