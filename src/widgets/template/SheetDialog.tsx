/** Loaded when a template is asked for. */

import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/template/dialog.ts'
import type { Design } from '../../paper/index.ts'
import { tabbed } from '../../paper/index.ts'
import { NotLoadedError, notLoaded, reasonOf } from '../model/loading.ts'
import { keepWord, recall } from '../model/page.ts'
import { keepPrinted } from '../model/printed.ts'
import type { PaperChoice, TemplateChoice } from './choice.ts'
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
    says: says.paper,
    answers: [
      { label: says.a4, sets: { paper: 'a4' } },
      { label: says.usLetter, sets: { paper: 'letter' } },
    ],
  },
  {
    name: 'art',
    says: says.picture,
    answers: [
      { label: says.toColourIn, sets: { art: 'lines' } },
      // In colour it is a good copy: lines across it would spoil it.
      { label: says.inColour, sets: { art: 'colour', lines: 'ticks' } },
      { label: says.noPicture, sets: { art: 'none' } },
    ],
  },
  {
    name: 'lines',
    says: says.lines,
    answers: [
      { label: says.linesOnFront, sets: { lines: 'front' } },
      { label: says.ticksOnly, sets: { lines: 'ticks' } },
      { label: says.linesOnBack, sets: { lines: 'back' } },
    ],
  },
  {
    name: 'tabs',
    says: says.tabs,
    answers: [
      { label: says.tabsAsShown, sets: { tabs: 'own' } },
      { label: says.tabsThroughSlits, sets: { tabs: 'slit' } },
    ],
  },
  {
    name: 'form',
    says: says.form,
    answers: [
      { label: says.pdfToPrint, sets: { form: 'pdf' } },
      { label: says.svgToEdit, sets: { form: 'svg' } },
    ],
  },
]

interface AskProps {
  readonly question: Question
  readonly chosen: TemplateChoice
  readonly onChoose: (sets: Partial<TemplateChoice>) => void
}

function Ask({ question: { name, says: asked, answers }, chosen, onChoose }: AskProps): JSX.Element {
  return (
    <fieldset>
      <legend>{asked}</legend>
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
  const [said, setSaid] = useState('')
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
    setSaid('')
  }
  const save = async () => {
    // Not `disabled`: a button that goes while it has focus takes the focus along.
    if (busy) return
    setBusy(true)
    setSaid(says.drawing)
    try {
      const saved = await saveTemplate(design(), fileName, chosen)
      setSaid(saved.says)
      if (saved.isSaved) keepPrinted(slug)
    } catch (error) {
      setSaid(
        error instanceof NotLoadedError ? notLoaded(says.theFont, error) : says.notMade(reasonOf(error)),
      )
    }
    setBusy(false)
  }
  return (
    <dialog ref={dialog} class="sheet-dialog" aria-labelledby={`template-${slug}`} onClose={onClose}>
      <form method="dialog">
        <h3 id={`template-${slug}`}>{says.atTrueSize}</h3>
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
          {says.whatLinesMean[chosen.lines]}
          {chosen.tabs === 'slit' ? ` ${says.whatSlitsMean}` : ''}
          {hasArt && chosen.lines === 'back' && chosen.art !== 'none' ? ` ${says.pictureOnBack}` : ''}
        </p>
        <p class="quiet">{says.measureTheCheckLine}</p>
        <div class="dialog-buttons">
          <p class="sheet-says" role="status">
            {said}
          </p>
          <button type="button" class="button primary" aria-disabled={busy} onClick={save}>
            {says.saveTemplate}
          </button>
          <button type="submit" class="button">
            {says.close}
          </button>
        </div>
      </form>
    </dialog>
  )
}
