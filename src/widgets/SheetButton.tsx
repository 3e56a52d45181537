import type { JSX } from 'preact'
import { useRef, useState } from 'preact/hooks'
import type { Design } from '../paper/index.ts'
import { keepWord, recall } from './page.ts'
import type { Face, Form, PaperChoice } from './template.ts'

interface SheetButtonProps {
  readonly slug: string
  /** The design as it is now. */
  readonly design: () => Design
}

interface Choice<T extends string> {
  readonly name: string
  readonly says: string
  readonly of: readonly { readonly value: T; readonly label: string }[]
}

const paperChoice: Choice<PaperChoice> = {
  name: 'paper',
  says: 'Paper',
  of: [
    { value: 'a4', label: 'A4' },
    { value: 'letter', label: 'US Letter' },
  ],
}
const faceChoice: Choice<Face> = {
  name: 'face',
  says: 'Lines on',
  of: [
    { value: 'inside', label: 'the inside' },
    { value: 'outside', label: 'the outside' },
  ],
}
const formChoice: Choice<Form> = {
  name: 'form',
  says: 'As',
  of: [
    { value: 'pdf', label: 'PDF, to print' },
    { value: 'svg', label: 'SVG, to edit' },
  ],
}

interface ChoiceProps<T extends string> {
  readonly choice: Choice<T>
  readonly value: T
  readonly onChoose: (value: T) => void
}

function Choices<T extends string>({ choice, value, onChoose }: ChoiceProps<T>): JSX.Element {
  return (
    <fieldset>
      <legend>{choice.says}</legend>
      {choice.of.map((one) => (
        <label key={one.value}>
          <input
            type="radio"
            name={choice.name}
            value={one.value}
            checked={one.value === value}
            onChange={() => onChoose(one.value)}
          />
          {one.label}
        </label>
      ))}
    </fieldset>
  )
}

/** The template of the state on the screen, at true size. What makes it is loaded when it is asked for. */
export function SheetButton({ slug, design }: SheetButtonProps): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null)
  const [paper, setPaper] = useState<PaperChoice>('a4')
  const [face, setFace] = useState<Face>('inside')
  const [form, setForm] = useState<Form>('pdf')
  const [says, setSays] = useState('')
  const [busy, setBusy] = useState(false)

  const open = async () => {
    setSays('')
    dialog.current?.showModal()
    const known = recall('paper')
    if (known === 'a4' || known === 'letter') setPaper(known)
    else setPaper((await import('./template.ts')).guessPaper(navigator.language))
  }
  const save = async () => {
    setBusy(true)
    setSays('Drawing the template …')
    try {
      const { saveTemplate } = await import('./template.ts')
      setSays(await saveTemplate(design(), { slug, paper, face, form }))
    } catch {
      setSays('The template could not be loaded. Check that you are online, then try again.')
    }
    setBusy(false)
  }
  return (
    <>
      <button type="button" class="button primary" onClick={open}>
        Print the template
      </button>
      <dialog ref={dialog} class="sheet-dialog" aria-labelledby={`template-${slug}`}>
        <form method="dialog">
          <h3 id={`template-${slug}`}>The template, at true size</h3>
          <Choices
            choice={paperChoice}
            value={paper}
            onChoose={(value) => {
              setPaper(value)
              keepWord('paper', value)
              setSays('')
            }}
          />
          <Choices choice={faceChoice} value={face} onChoose={setFace} />
          <Choices choice={formChoice} value={form} onChoose={setForm} />
          <p class="quiet">
            Print at 100 %, “actual size”. Then lay a ruler on the check line: it must be 100 mm or 4 in long.
          </p>
          <p class="sheet-says" role="status">
            {says}
          </p>
          <div class="dialog-buttons">
            <button type="button" class="button primary" disabled={busy} onClick={save}>
              Save the template
            </button>
            <button type="submit" class="button">
              Close
            </button>
          </div>
        </form>
      </dialog>
    </>
  )
}
