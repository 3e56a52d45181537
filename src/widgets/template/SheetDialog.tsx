/** Loaded when a template is asked for. */
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Design } from '../../paper/index.ts'
import { NotLoadedError, notLoaded, reasonOf } from '../model/loading.ts'
import { keepWord, recall } from '../model/page.ts'
import { keepPrinted } from '../model/printed.ts'
import type { Art, Form, Lines, PaperChoice } from './template.ts'
import { guessPaper, saveTemplate } from './template.ts'

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

const linesChoice: Choice<Lines> = {
  name: 'lines',
  says: 'Lines',
  of: [
    { value: 'front', label: 'on the front' },
    { value: 'ticks', label: 'ticks only' },
    { value: 'back', label: 'on the back' },
  ],
}

/** What is printed on the face that will be seen. */
const linesSay: Readonly<Record<Lines, string>> = {
  front: 'Every line is printed on the face that you will see: good to practise with.',
  ticks:
    'The face that you will see has ticks at the ends of the folds only, and glue places: for a good copy.',
  back: 'The face that you will see stays clean. On the other face left and right are swapped, and mountain and valley too.',
}

const artChoice: Choice<Art> = {
  name: 'art',
  says: 'Picture',
  of: [
    { value: 'none', label: 'none' },
    { value: 'lines', label: 'to colour in' },
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

/** The paper the device remembers, else the one that is usual where the reader lives. */
function likelyPaper(): PaperChoice {
  const known = recall('paper')
  return known === 'a4' || known === 'letter' ? known : guessPaper(navigator.language)
}

interface SheetDialogProps {
  readonly slug: string
  /** The design as it is now. */
  readonly design: () => Design
  readonly onClose: () => void
}

/** Which paper, which face, which kind of file; then the template at true size. */
export function SheetDialog({ slug, design, onClose }: SheetDialogProps): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null)
  const [paper, setPaper] = useState<PaperChoice>(likelyPaper)
  const [lines, setLines] = useState<Lines>('front')
  const [art, setArt] = useState<Art>('none')
  const [form, setForm] = useState<Form>('pdf')
  const [says, setSays] = useState('')
  const [busy, setBusy] = useState(false)
  useEffect(() => dialog.current?.showModal(), [])

  /** What was said of the last file does not hold for another choice. */
  const choose =
    <T extends string>(set: (value: T) => void) =>
    (value: T) => {
      set(value)
      setSays('')
    }
  const save = async () => {
    // Not `disabled`: a button that goes while it has focus takes the focus along.
    if (busy) return
    setBusy(true)
    setSays('Drawing the template …')
    try {
      setSays(await saveTemplate(design(), { slug, paper, lines, art, form }))
      keepPrinted(slug)
    } catch (error) {
      setSays(
        error instanceof NotLoadedError
          ? notLoaded('The font of the template', error)
          : `The template could not be made: ${reasonOf(error)}.`,
      )
    }
    setBusy(false)
  }
  return (
    <dialog ref={dialog} class="sheet-dialog" aria-labelledby={`template-${slug}`} onClose={onClose}>
      <form method="dialog">
        <h3 id={`template-${slug}`}>The template, at true size</h3>
        <Choices
          choice={paperChoice}
          value={paper}
          onChoose={choose((value) => {
            setPaper(value)
            keepWord('paper', value)
          })}
        />
        <Choices choice={linesChoice} value={lines} onChoose={choose<Lines>(setLines)} />
        <p class="quiet" role="status">
          {linesSay[lines]}
        </p>
        {design().art ? <Choices choice={artChoice} value={art} onChoose={choose<Art>(setArt)} /> : null}
        <Choices choice={formChoice} value={form} onChoose={choose<Form>(setForm)} />
        <p class="quiet">
          Print at 100 %, “actual size”. Then lay a ruler on the check line: it must be 100 mm or 4 in long.
        </p>
        <p class="sheet-says" role="status">
          {says}
        </p>
        <div class="dialog-buttons">
          <button type="button" class="button primary" aria-disabled={busy} onClick={save}>
            Save the template
          </button>
          <button type="submit" class="button">
            Close
          </button>
        </div>
      </form>
    </dialog>
  )
}
