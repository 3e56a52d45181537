/** Loaded when a template is asked for. */
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Design } from '../../paper/index.ts'
import { tabbed } from '../../paper/index.ts'
import { NotLoadedError, notLoaded, reasonOf } from '../model/loading.ts'
import { keepWord, recall } from '../model/page.ts'
import { keepPrinted } from '../model/printed.ts'
import type { Lines, PaperChoice, TemplateChoice } from './choice.ts'
import { MorePrint } from './MorePrint.tsx'
import { artWays, guessPaper, papers, saveTemplate, usualArt } from './template.ts'
import { useCount } from './use-count.ts'

/** A question of the dialog: each answer sets something of what was chosen, `name` first of all. */
interface Question {
  readonly name: 'paper' | 'art' | 'lines' | 'tabs' | 'form'
  readonly says: string
  readonly answers: readonly { readonly label: string; readonly sets: Partial<TemplateChoice> }[]
}

const questions: readonly Question[] = [
  {
    name: 'paper',
    says: 'Paper',
    answers: [
      { label: 'A4', sets: { paper: 'a4' } },
      { label: 'US Letter', sets: { paper: 'letter' } },
    ],
  },
  {
    name: 'art',
    says: 'Picture',
    answers: [
      { label: 'to colour in', sets: { art: 'lines' } },
      // In colour it is a good copy: lines across it would spoil it.
      { label: 'in colour', sets: { art: 'colour', lines: 'ticks' } },
      { label: 'none', sets: { art: 'none' } },
    ],
  },
  {
    name: 'lines',
    says: 'Lines',
    answers: [
      { label: 'on the front', sets: { lines: 'front' } },
      { label: 'ticks only', sets: { lines: 'ticks' } },
      { label: 'on the back', sets: { lines: 'back' } },
    ],
  },
  {
    name: 'tabs',
    says: 'Tabs',
    answers: [
      { label: 'as on the screen', sets: { tabs: 'own' } },
      { label: 'through slits', sets: { tabs: 'slit' } },
    ],
  },
  {
    name: 'form',
    says: 'As',
    answers: [
      { label: 'PDF, to print', sets: { form: 'pdf' } },
      { label: 'SVG, to edit', sets: { form: 'svg' } },
    ],
  },
]

/** What is printed on the face that will be seen. */
const linesSay: Readonly<Record<Lines, string>> = {
  front: 'Every line is printed on the face that you will see: good to practise with.',
  ticks:
    'The face that you will see has ticks at the ends of the folds only, and glue places: for a good copy.',
  back: 'The face that you will see stays clean. On the other face left and right are swapped, and mountain and valley too.',
}

/** A slit starts inside the paper: scissors cannot begin there. */
const slitsSay =
  ' Each tab goes through a slit and is glued behind, where nobody sees it. Slits need a knife: a job for an adult.'

/** Printed on the back, only what is drawn on the back is seen. */
const backSays = ' Of the picture, only what is drawn on that face is printed.'

interface AskProps {
  readonly question: Question
  readonly chosen: TemplateChoice
  readonly onChoose: (sets: Partial<TemplateChoice>) => void
}

function Ask({ question: { name, says, answers }, chosen, onChoose }: AskProps): JSX.Element {
  return (
    <fieldset>
      <legend>{says}</legend>
      {answers.map(({ label, sets }) => (
        <label key={label}>
          <input
            type="radio"
            name={name}
            value={sets[name]}
            checked={sets[name] === chosen[name]}
            onChange={() => onChoose(sets)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  )
}

/** The paper the device remembers, else the one that is usual where the reader lives. */
function likelyPaper(): PaperChoice {
  const known = recall('paper')
  return papers.find(({ name }) => name === known)?.name ?? guessPaper(navigator.language)
}

interface SheetDialogProps {
  readonly slug: string
  readonly fileName?: string
  /** The design as it is now. */
  readonly design: () => Design
  readonly onClose: () => void
}

/** Which paper, which face, which kind of file; then the template at true size. */
export function SheetDialog({ slug, fileName = slug, design, onClose }: SheetDialogProps): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null)
  const [chosen, setChosen] = useState<TemplateChoice>(() => ({
    paper: likelyPaper(),
    width: '200',
    height: '300',
    measured: recall('measured') ?? '100',
    copies: '1',
    tiled: false,
    lines: 'front',
    tabs: 'own',
    art: usualArt(design()),
    form: 'pdf',
  }))
  const [says, setSays] = useState('')
  const [busy, setBusy] = useState(false)
  useEffect(() => dialog.current?.showModal(), [])
  const { count, faults } = useCount(design, chosen)

  const hasArt = artWays(design()).length > 1
  const hasTabs = tabbed(design()).length > 0
  const choose = (sets: Partial<TemplateChoice>) => {
    if (sets.paper) keepWord('paper', sets.paper)
    if (sets.measured) keepWord('measured', sets.measured)
    setChosen({ ...chosen, ...sets })
    // What was said of the last file does not hold for another choice.
    setSays('')
  }
  const save = async () => {
    // Not `disabled`: a button that goes while it has focus takes the focus along.
    if (busy) return
    setBusy(true)
    setSays('Drawing the template …')
    try {
      const saved = await saveTemplate(design(), fileName, chosen)
      setSays(saved.says)
      if (saved.isSaved) keepPrinted(slug)
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
        {questions
          .filter(({ name }) => (name !== 'art' || hasArt) && (name !== 'tabs' || hasTabs))
          .map((question) => (
            <Ask key={question.name} question={question} chosen={chosen} onChoose={choose} />
          ))}
        <MorePrint chosen={chosen} onChoose={choose} />
        <p class="sheet-count" role="status">
          {count}
        </p>
        <p class="sheet-faults" role="status">
          {faults}
        </p>
        <p class="quiet" role="status">
          {linesSay[chosen.lines]}
          {chosen.tabs === 'slit' ? slitsSay : ''}
          {hasArt && chosen.lines === 'back' && chosen.art !== 'none' ? backSays : ''}
        </p>
        <p class="quiet">
          Print at 100 %, “actual size”. Then lay a ruler on the check line: it must be 100 mm or 4 in long.
        </p>
        <div class="dialog-buttons">
          <p class="sheet-says" role="status">
            {says}
          </p>
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
