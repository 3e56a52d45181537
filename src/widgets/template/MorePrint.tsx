import type { JSX } from 'preact'
import { useId } from 'preact/hooks'
import * as says from '../../../content/words/template/dialog.ts'
import type { PaperChoice, TemplateChoice, TypedName } from './choice.ts'
import { refusalOf } from './choice.ts'
import { papers } from './template.ts'

interface MorePrintProps {
  readonly chosen: TemplateChoice
  readonly onChoose: (sets: Partial<TemplateChoice>) => void
}

interface NumberProps {
  readonly label: string
  readonly name: TypedName
  readonly unit?: string
}

/** What a maker asks for now and then: another paper, more than one, a printer that errs, a card too large. */
export function MorePrint({ chosen, onChoose }: MorePrintProps): JSX.Element {
  const id = useId()
  const number = ({ label, name, unit }: NumberProps): JSX.Element => {
    const refusal = refusalOf(name, chosen[name])
    return (
      <>
        <label class="sheet-number">
          {label}
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            name={name}
            aria-invalid={refusal !== ''}
            aria-describedby={`${id}-${name}`}
            value={chosen[name]}
            onInput={(event) => onChoose({ [name]: event.currentTarget.value })}
          />
          {unit}
        </label>
        <span class="sheet-refusal" id={`${id}-${name}`} role="status">
          {refusal}
        </span>
      </>
    )
  }
  const isUsual = chosen.measured.trim() === '100'
  return (
    <details class="sheet-more" open={!isUsual}>
      <summary>{says.morePrint}</summary>
      <label class="sheet-number">
        {says.paper}
        <select
          name="paper-size"
          value={chosen.paper}
          onChange={(event) => onChoose({ paper: event.currentTarget.value as PaperChoice })}
        >
          {papers.map(({ name, label }) => (
            <option key={name} value={name}>
              {label}
            </option>
          ))}
          <option value="own">{says.ownSize}</option>
        </select>
      </label>
      {chosen.paper === 'own' ? (
        <>
          {number({ label: says.widthBefore, name: 'width', unit: says.widthAfter })}
          {number({ label: says.heightBefore, name: 'height', unit: says.heightAfter })}
        </>
      ) : null}
      {number({ label: says.copies, name: 'copies' })}
      <label>
        <input
          type="checkbox"
          checked={chosen.tiled}
          onChange={(event) => onChoose({ tiled: event.currentTarget.checked })}
        />
        {says.onSeveralSheets}
      </label>
      {number({ label: says.checkLineBefore, name: 'measured', unit: says.checkLineAfter })}
      <p class="quiet">{isUsual ? says.printersErr : says.makesUpForPrinter}</p>
    </details>
  )
}
