import './elsewhere.css'
import type { JSX } from 'preact'
import { useId, useState } from 'preact/hooks'
import * as says from '../../../content/words/exports/cutter-tools.ts'
import { FILE_ENDING, fileName } from '../keeping/file-text.ts'
import { reasonOf } from '../model/loading.ts'
import type { CutterChoice, CutterFormat } from './cutter.ts'
import type { Taken } from './exports.ts'

const PAPERS = ['a4', 'a3', 'letter', 'tabloid', 'roll'] as const satisfies readonly CutterChoice['paper'][]

const FORMATS = [
  ['dxf', 'DXF'],
  ['svg', 'SVG'],
] as const satisfies readonly (readonly [CutterFormat, string])[]

const CHECKS = [
  ['keepsGrain', says.keepsGrain],
  ['bridges', says.bridges],
  ['perforated', says.perforated],
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
      setSaid(says.notMade(reasonOf(error)))
    }
  }
  return (
    <details>
      <summary>{says.summary}</summary>
      <p class="slip-says">{says.explained}</p>
      <div class="cutter-choices">
        <label>
          {says.cutFrom}{' '}
          <select
            value={choice.paper}
            onChange={({ currentTarget }) =>
              setChoice({ ...choice, paper: currentTarget.value as CutterChoice['paper'] })
            }
          >
            {PAPERS.map((name) => (
              <option key={name} value={name}>
                {says.papers[name]}
              </option>
            ))}
          </select>
        </label>
        <label>
          {says.copies}{' '}
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
            {says.copiesRange(MOST_COPIES)}
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
            aria-label={says.piecesAs(label)}
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
