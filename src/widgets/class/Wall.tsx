import type { JSX } from 'preact'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/class-wall.ts'
import * as keys from '../../../content/words/key-names.ts'
import { figureOf, orderOf, wordsOf } from '../../booklet/index.ts'
import type { Sheet } from '../../class/class.ts'
import type { Readings } from '../../class/readings.ts'
import { mostRead, readNumber } from '../../class/readings.ts'
import { SEEN } from '../../class/seen.ts'
import type { PackWords, Part } from '../../class/words.ts'
import { filled } from '../../class/words.ts'
import { view } from '../../drawing/view/view.ts'
import { broughtIn, compile } from '../../paper/index.ts'
import { Figure } from '../figures/Figure.tsx'
import type { KeyTold } from '../wall/at-wall.ts'
import { useNotes } from '../wall/use-notes.tsx'
import { useTools } from '../wall/use-tools.tsx'
import type { ShownClass } from './asked.ts'
import type { Found } from './find-card.ts'
import { ClassChart } from './ReadingsCell.tsx'

interface WallProps {
  readonly found: Found
  readonly shown: ShownClass
  readonly parts: readonly Part[]
  readonly words: PackWords
  readonly values: Readonly<Record<string, string>>
  readonly readings: Readings
  readonly onReading: (code: string, value: number) => void
  readonly onEnd: () => void
}

/** One thing on the wall at a time. */
interface Slide {
  readonly part: Part
  readonly says: string
  readonly answer?: string
  /** What a class can vote on. */
  readonly guesses?: readonly { readonly says: string; readonly right: boolean }[]
  readonly step?: number
  readonly shows: 'card' | 'question' | 'step' | 'readings' | 'curve'
}

const FIGURE = { width: 900, height: 560 }

/** A chart fills what the headline leaves, px of a screen 720 high; its words a twentieth of that. */
const CHART = { width: 1200, height: 420 }

const CHART_TEXT = 36

/** A headline longer than this is set smaller, letters. */
const LONG = 60

function slidesOf({ found, parts, words, values, shown }: WallProps): readonly Slide[] {
  const { chapter } = found
  const steps = orderOf(shown.design)
  return parts.flatMap((part): readonly Slide[] => {
    if (part.name === 'show') return [{ part, says: chapter.title, shows: 'card' }]
    if (part.name === 'guess')
      return chapter.ask
        ? [
            {
              part,
              says: chapter.ask.asks,
              answer: chapter.ask.answer,
              guesses: chapter.guesses,
              shows: 'question',
            },
          ]
        : []
    if (part.name === 'make')
      return steps.map((work, step) => ({
        part,
        step,
        says: wordsOf(shown.design, work).title,
        shows: 'step',
      }))
    if (part.name === 'measure')
      return [
        { part, says: filled(words.reading[shown.measured?.what ?? 'rise'], values), shows: 'readings' },
      ]
    return [
      ...(shown.differs ? [{ part, says: words.labels.curve ?? '', shows: 'curve' as const }] : []),
      ...chapter.recall.map(({ asks, answer, choices, right }) => ({
        part,
        says: asks,
        answer,
        guesses: choices.map((choice) => ({ says: choice, right: choice === right })),
        shows: 'question' as const,
      })),
    ]
  })
}

/** The keys of a lesson, for the list of keys at the wall. */
const KEYS: readonly KeyTold[] = [
  { key: keys.pageDown, says: says.pageDownDoes },
  { key: keys.pageUp, says: says.pageUpDoes },
  { key: keys.home, says: says.homeDoes },
  { key: keys.end, says: says.endDoes },
  { key: 'S', says: says.sDoes },
  { key: keys.escapeKey, says: says.escapeDoes },
]

const slideTitle = (slide: Slide): string =>
  `${slide.step === undefined ? '' : `${slide.step + 1}. `}${slide.says}`

/** What the teacher has at hand for a slide: what the class does, what is right, what to take care of. */
function notesOf(
  { part, answer, step }: Slide,
  { shown, values, found, words }: WallProps,
): readonly string[] {
  const work = step === undefined ? undefined : orderOf(shown.design)[step]
  const said = work ? wordsOf(shown.design, work) : null
  return [
    says.partNote(words.parts[part.name], part.minutes, filled(part.does, values)),
    ...(answer === undefined ? [] : [says.answerNote(answer)]),
    ...(said ? said.text : []),
    ...(said?.check === undefined ? [] : [says.checkNote(said.check)]),
    ...(said?.caution === undefined ? [] : [says.cautionNote(said.caution)]),
    ...(part.name === 'guess' ? found.chapter.misconceptions.map(says.theyMayThink) : []),
  ]
}

/** The lesson for the wall: one thing at a time, answers covered until they are asked for. */
export function Wall(props: WallProps): JSX.Element | null {
  const { found, shown, words, readings, onReading, onEnd } = props
  const slides = useMemo(() => slidesOf(props), [found, shown, props.parts])
  const [at, setAt] = useState(0)
  const [isOpen, setOpen] = useState(false)
  const dialog = useRef<HTMLDialogElement>(null)
  const title = useRef<HTMLHeadingElement>(null)
  const go = (n: number) => {
    setAt(Math.min(slides.length - 1, Math.max(0, n)))
    setOpen(false)
    // What had the focus may go with the slide.
    title.current?.focus({ preventScroll: true })
  }
  useEffect(() => {
    dialog.current?.showModal()
    title.current?.focus()
  }, [])
  const slide = slides[at]
  const after = slides[at + 1]
  const notes = useNotes({
    title: slide ? slideTitle(slide) : '',
    says: slide ? notesOf(slide, props) : [],
    next: after ? slideTitle(after) : says.thatWasAll,
  })
  const { open: openTools, kit } = useTools({
    keys: KEYS,
    // Nothing here moves by itself.
    rest: () => {},
    asked: slide?.guesses
      ? {
          asks: slide.says,
          guesses: slide.guesses,
          covered: !isOpen,
          onCover: (covered) => setOpen(!covered),
        }
      : null,
    notes,
  })
  const covers = slide?.answer !== undefined || slide?.shows === 'curve'
  // At once: the next key goes on from where the last one came to.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as Element
      if (target.matches('input[type="text"]') || event.ctrlKey || event.metaKey || event.altKey) return
      // What moves a slider moves the slider.
      if (target.matches('input') && /^(Arrow|Home|End)/.test(event.key)) return
      const to = {
        PageDown: at + 1,
        ArrowRight: at + 1,
        PageUp: at - 1,
        ArrowLeft: at - 1,
        Home: 0,
        End: slides.length - 1,
      }[event.key]
      if (event.key === 's' || event.key === 'S') setOpen(!isOpen)
      // A clicker has one key on: it uncovers first.
      else if (to === at + 1 && covers && !isOpen) setOpen(true)
      else if (to === undefined) return
      else go(to)
      event.preventDefault()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  })
  if (!slide) return null
  return (
    <dialog class="wall" ref={dialog} aria-label={says.theLessonOnTheWall} onClose={onEnd}>
      <header>
        <p class="wall-part">
          {words.parts[slide.part.name]} <span>{says.shortMinutes(slide.part.minutes)}</span>
        </p>
        <h2 tabIndex={-1} ref={title} class={slide.says.length > LONG ? 'wall-long' : undefined}>
          {slideTitle(slide)}
        </h2>
      </header>
      <div class="wall-middle">
        {slide.shows === 'card' || slide.shows === 'question' ? <Opens found={found} shown={shown} /> : null}
        {slide.shows === 'step' && slide.step !== undefined ? (
          <StepFigure shown={shown} step={slide.step} />
        ) : null}
        {slide.shows === 'readings' || slide.shows === 'curve' ? (
          <ClassChart
            {...{ shown, readings }}
            withModel={slide.shows === 'curve' && isOpen}
            size={CHART}
            text={CHART_TEXT}
          />
        ) : null}
        {slide.shows === 'readings' ? <Quick shown={shown} onReading={onReading} /> : null}
      </div>
      {covers ? (
        <p class="wall-answer" role="status">
          {isOpen ? (slide.answer ?? says.lineIsTheModel) : '?'}
        </p>
      ) : null}
      <footer>
        <button type="button" class="button" aria-disabled={at === 0} onClick={() => go(at - 1)}>
          {says.back}
        </button>
        {covers ? (
          <button type="button" class="button" aria-pressed={isOpen} onClick={() => setOpen(!isOpen)}>
            {isOpen ? says.hide : says.show}
          </button>
        ) : null}
        <progress max={slides.length} value={at + 1} aria-label={says.slideOf(at + 1, slides.length)} />
        <button type="button" class="button" onClick={openTools}>
          {says.tools}
        </button>
        <button type="button" class="button" onClick={() => dialog.current?.close()}>
          {says.end}
        </button>
        <button
          type="button"
          class="button primary"
          aria-disabled={at === slides.length - 1}
          onClick={() => go(at + 1)}
        >
          {says.next}
        </button>
      </footer>
      {kit}
    </dialog>
  )
}

/** The card, opened and shut by a slider. */
function Opens({ found, shown }: Pick<WallProps, 'found' | 'shown'>): JSX.Element {
  const { design } = shown
  const seen = found.seen ?? SEEN
  const [opening, setOpening] = useState(() => Math.round(broughtIn(found.design, 100)))
  const poser = useMemo(() => compile(found.design), [found.design])
  const drawing = useMemo(
    () =>
      view(poser, broughtIn(found.design, opening), { far: 1.7, ...seen.camera }, FIGURE, {
        stand: seen.stand,
      }),
    [poser, opening, seen, found.design],
  )
  return (
    <div class="wall-card">
      <Figure drawing={drawing} />
      <label>
        <span>{says.open}</span>
        <input
          type="range"
          min={0}
          max={180}
          value={opening}
          aria-label={says.openingOf(design.title)}
          aria-valuetext={says.degrees(opening)}
          onInput={({ currentTarget }) => setOpening(Number(currentTarget.value))}
        />
      </label>
    </div>
  )
}

function StepFigure({
  shown,
  step,
}: {
  readonly shown: ShownClass
  readonly step: number
}): JSX.Element | null {
  const { design } = shown
  const work = useMemo(() => orderOf(design)[step], [design, step])
  const drawing = useMemo(() => (work ? figureOf(design, work, FIGURE) : null), [design, work])
  if (!work || !drawing) return null
  return (
    <div class="wall-step">
      <Figure drawing={drawing} />
      <div>
        {wordsOf(design, work).text.map((one) => (
          <p key={one}>{one}</p>
        ))}
      </div>
    </div>
  )
}

/** A reading called out is typed at once: its code, a space, the number. */
function Quick({ shown, onReading }: Pick<WallProps, 'shown' | 'onReading'>): JSX.Element {
  const [text, setText] = useState('')
  const [said, setSaid] = useState('')
  const of = { sheets: shown.sheets as readonly Sheet[], card: shown.design.card }
  return (
    <form
      class="wall-quick"
      onSubmit={(event) => {
        event.preventDefault()
        const [, code = '', number = ''] = /^\s*([A-Za-z]+\d+)[\s,:;=]+(.+)$/.exec(text) ?? []
        const sheet = of.sheets.find((one) => one.code === code.toUpperCase())
        const read = readNumber(number, mostRead(of))
        if (!sheet) setSaid(says.howToType(of.sheets[0]?.code ?? 'A1'))
        else if (!read.ok) setSaid(read.sentence)
        else {
          onReading(sheet.code, read.value)
          setSaid(says.readingTaken(sheet.code, read.value))
          setText('')
        }
      }}
    >
      <label>
        {says.sheetAndReading}{' '}
        <input
          type="text"
          autocomplete="off"
          value={text}
          onInput={({ currentTarget }) => setText(currentTarget.value)}
        />
      </label>
      <button type="submit" class="button">
        {says.add}
      </button>
      <span role="status">{said}</span>
    </form>
  )
}
