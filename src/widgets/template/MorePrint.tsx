import type { JSX } from 'preact'
import type { PaperChoice, TemplateChoice } from './choice.ts'
import { papers } from './template.ts'

interface MorePrintProps {
  readonly chosen: TemplateChoice
  readonly onChoose: (sets: Partial<TemplateChoice>) => void
}

interface NumberProps {
  readonly label: string
  readonly name: 'width' | 'height' | 'measured' | 'copies'
  readonly unit?: string
}

/** What a maker asks for now and then: another paper, more than one, a printer that errs, a card too large. */
export function MorePrint({ chosen, onChoose }: MorePrintProps): JSX.Element {
  const number = ({ label, name, unit }: NumberProps): JSX.Element => (
    <label class="sheet-number">
      {label}
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        name={name}
        value={chosen[name]}
        onInput={(event) => onChoose({ [name]: event.currentTarget.value })}
      />
      {unit}
    </label>
  )
  const isUsual = chosen.measured.trim() === '100'
  return (
    <details class="sheet-more" open={!isUsual}>
      <summary>More about paper and printer</summary>
      <label class="sheet-number">
        Paper
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
          <option value="own">a size of my own</option>
        </select>
      </label>
      {chosen.paper === 'own' ? (
        <>
          {number({ label: 'It is', name: 'width', unit: 'mm wide' })}
          {number({ label: 'and', name: 'height', unit: 'mm high' })}
        </>
      ) : null}
      {number({ label: 'Copies of each piece', name: 'copies' })}
      <label>
        <input
          type="checkbox"
          checked={chosen.tiled}
          onChange={(event) => onChoose({ tiled: event.currentTarget.checked })}
        />
        What is larger than the paper goes on several sheets, to be joined
      </label>
      {number({ label: 'On my last print the 100 mm line was', name: 'measured', unit: 'mm long' })}
      <p class="quiet">
        {isUsual
          ? 'Printers err a little. Measure the check line, type its length, and the next print makes up for it.'
          : 'This print makes up for your printer, and says so. Measure its check line again.'}
      </p>
    </details>
  )
}
