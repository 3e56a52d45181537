import './booklet.css'
import '../../drawing/pen/marks.css'
import type { JSX } from 'preact'
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as keys from '../../../content/words/key-names.ts'
import { doNotCut } from '../../../content/words/sheet.ts'
import * as says from '../../../content/words/step-book.ts'
import type { PerPage } from '../../booklet/book-pages.ts'
import type { Words, Work } from '../../booklet/index.ts'
import { figureOf, orderOf, wordsOf } from '../../booklet/index.ts'
import type { Design } from '../../paper/index.ts'
import { Figure } from '../figures/Figure.tsx'
import { fromGarden } from '../keeping/from-garden.ts'
import { carriesDesign, readLink } from '../keeping/link.ts'
import { notLoaded } from '../model/loading.ts'
import { placed } from '../model/place.ts'
import type { KeyTold } from '../wall/at-wall.ts'
import { useNotes } from '../wall/use-notes.tsx'
import { useTools } from '../wall/use-tools.tsx'
import { BookFile } from './BookFile.tsx'
import { markMine } from './mark-mine.ts'
import { StepFigure } from './StepFigure.tsx'

/** Of a figure, px; the page scales it a little. Words in it stay as large as they are. */
const SIZES = { wide: { width: 560, height: 400 }, narrow: { width: 320, height: 240 } } as const

const sizeHere = () => (matchMedia('(width < 800px)').matches ? SIZES.narrow : SIZES.wide)

/** The number of a step in the address, as in `#step=4`. */
const STEP = /(?:^|[#&])step=(\d{1,3})(?:&|$)/

type Found =
  | { readonly what: 'nothing' }
  | { readonly what: 'trouble'; readonly sentence: string }
  | { readonly what: 'design'; readonly design: Design; readonly isOwn: boolean }

/** The design that the address asks for: one of the garden by name, or one that a link carries. */
async function asked(): Promise<Found> {
  const garden = await fromGarden(location.search)
  if (garden)
    return garden.read.read
      ? { what: 'design', design: garden.read.design, isOwn: false }
      : { what: 'trouble', sentence: garden.read.sentence }
  if (!carriesDesign(location.hash)) return { what: 'nothing' }
  const link = await readLink(location.hash)
  if (link.read) markMine(document, placed('/dummy/'))
  return link.read
    ? { what: 'design', design: link.design, isOwn: true }
    : { what: 'trouble', sentence: link.sentence }
}

interface Step {
  readonly work: Work
  readonly words: Words
}

const Picture = ({ design, work }: { readonly design: Design; readonly work: Work }): JSX.Element => {
  const drawing = useMemo(() => figureOf(design, work, sizeHere()), [design, work])
  return <Figure drawing={drawing} />
}

const Text = ({ words }: { readonly words: Words }): JSX.Element => (
  <>
    {words.text.map((sentence) => (
      <p key={sentence}>{sentence}</p>
    ))}
    {words.letters === undefined ? null : (
      <p>
        <strong>{says.letters}</strong> {words.letters}
      </p>
    )}
    {words.check === undefined ? null : (
      <p class="book-check">
        <strong>{says.check}</strong> {words.check}
      </p>
    )}
    <p class="quiet">{says.youNeed(words.tools)}</p>
    {words.caution === undefined ? null : (
      <p class="book-care">
        <strong>{says.takeCare}</strong> {words.caution}
      </p>
    )}
  </>
)

/** All steps on paper, so many to a page. */
const Sheets = ({
  design,
  steps,
  perPage,
}: {
  readonly design: Design
  readonly steps: readonly Step[]
  readonly perPage: number
}): JSX.Element => (
  <ol class="book-sheets" data-per-page={perPage}>
    {steps.map(({ work, words }, k) => (
      <li key={k}>
        <h2>
          {k + 1}. {words.title}
        </h2>
        <Picture {...{ design, work }} />
        <Text words={words} />
      </li>
    ))}
  </ol>
)

/** What the keys of a booklet do, for the list of keys at the wall. */
const KEYS: readonly KeyTold[] = [
  { key: keys.pageDown, says: says.pageDownDoes },
  { key: keys.pageUp, says: says.pageUpDoes },
  { key: keys.home, says: says.homeDoes },
  { key: keys.end, says: says.endDoes },
  { key: keys.space, says: says.spaceDoes },
]

/** Steps with more to read than this are set smaller on a projector, letters: all of a step is seen at once. */
const LONG = 270

/** All that a step says, as it is read out. */
const saidOf = ({ text, letters, check, tools, caution }: Words): readonly string[] => [
  ...text,
  ...(letters === undefined ? [] : [says.lettersSaid(letters)]),
  ...(check === undefined ? [] : [says.checkSaid(check)]),
  says.youNeed(tools),
  ...(caution === undefined ? [] : [says.cautionSaid(caution)]),
]

/** What of a card does not work yet. A reader's own is checked once its first step is seen; the garden's all work. */
function useFault(design: Design, isOwn: boolean): string {
  const [fault, setFault] = useState('')
  useEffect(() => {
    if (!isOwn) return undefined
    let gone = false
    const look = async () => {
      const { faultSays } = await import('../../sheet/fault-says.ts')
      return faultSays(design)
    }
    look()
      .catch((error: unknown) => notLoaded(says.theChecks, error))
      .then((sentence) => {
        if (!gone) setFault(sentence)
      })
    return () => {
      gone = true
    }
  }, [design, isOwn])
  return fault
}

/** One design's steps, one at a time. */
function Book({ design, isOwn }: { readonly design: Design; readonly isOwn: boolean }): JSX.Element {
  const steps = useMemo(
    () => orderOf(design).map((work): Step => ({ work, words: wordsOf(design, work) })),
    [design],
  )
  const within = (n: number): number => Math.min(steps.length - 1, Math.max(0, n))
  const [at, setAt] = useState(() => within(Number(STEP.exec(location.hash)?.[1] ?? 1) - 1))
  const [perPage, setPerPage] = useState<PerPage>(4)
  const fault = useFault(design, isOwn)
  const [prints, setPrints] = useState(false)
  const size = useMemo(sizeHere, [])
  const book = useRef<HTMLElement>(null)
  const title = useRef<HTMLHeadingElement>(null)
  const moving = useRef<(() => void) | null>(null)
  const [words, after] = [steps[at]?.words, steps[at + 1]?.words]
  const notes = useNotes({
    title: `${at + 1}. ${words?.title ?? ''}`,
    says: words ? saidOf(words) : [],
    next: after ? after.title : says.thatWasTheLast,
  })
  const { open: openTools, kit } = useTools({ keys: KEYS, rest: () => moving.current?.(), notes })
  const go = (n: number) => {
    const next = within(n)
    if (next === at) return
    setAt(next)
    const rest = location.hash.replace(/^#/, '').replace(STEP, '')
    history.replaceState(history.state, '', `#${rest === '' ? '' : `${rest}&`}step=${next + 1}`)
    title.current?.focus({ preventScroll: true })
  }
  // At once: the next key goes on from the step that the last one came to.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as Element | null
      if (event.ctrlKey || event.metaKey || event.altKey || target?.matches('select, input, textarea')) return
      const to = {
        ArrowRight: at + 1,
        PageDown: at + 1,
        ArrowLeft: at - 1,
        PageUp: at - 1,
        Home: 0,
        End: steps.length - 1,
      }[event.key]
      if (to === undefined) return
      event.preventDefault()
      go(to)
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  })
  useEffect(() => {
    // What goes to paper is drawn only then, however printing was asked for.
    const before = () => setPrints(true)
    const after = () => setPrints(false)
    addEventListener('beforeprint', before)
    addEventListener('afterprint', after)
    return () => {
      removeEventListener('beforeprint', before)
      removeEventListener('afterprint', after)
    }
  }, [])
  const step = steps[at]
  if (!step) return <p class="trouble">{says.noSteps}</p>
  return (
    <section
      class="book"
      ref={book}
      data-long={[fault, ...saidOf(step.words)].join(' ').length > LONG}
      aria-label={says.stepsFor(design.title)}
    >
      <h1>{says.cardStepByStep(design.title)}</h1>
      {fault === '' ? null : (
        <p class="trouble" role="alert">
          <strong>{doNotCut}</strong> {fault}
        </p>
      )}
      <div class="book-step">
        <StepFigure
          key={at}
          design={design}
          work={step.work}
          size={size}
          onRest={(rest) => {
            moving.current = rest
          }}
        />
        <div class="book-words">
          <p class="book-count" aria-hidden="true">
            {says.stepOf(at + 1, steps.length)}
          </p>
          <h2 tabIndex={-1} ref={title} aria-label={says.stepTitled(at + 1, steps.length, step.words.title)}>
            {step.words.title}
          </h2>
          <Text words={step.words} />
        </div>
      </div>
      <div class="book-bar">
        <button type="button" class="button" aria-disabled={at === 0} onClick={() => go(at - 1)}>
          {says.back}
        </button>
        <progress value={at + 1} max={steps.length} aria-hidden="true" />
        <button type="button" class="button book-tools" onClick={openTools}>
          {says.tools}
        </button>
        <button
          type="button"
          class="button primary"
          aria-disabled={at === steps.length - 1}
          onClick={() => go(at + 1)}
        >
          {says.next}
        </button>
      </div>
      <BookFile design={design} fault={fault} perPage={perPage} onPerPage={setPerPage}>
        <button
          type="button"
          class="button"
          onClick={() => {
            setPrints(true)
            // Once all steps are drawn.
            requestAnimationFrame(() => print())
          }}
        >
          {says.printSteps}
        </button>
        <button type="button" class="button" onClick={() => void book.current?.requestFullscreen?.()}>
          {says.fillScreen}
        </button>
      </BookFile>
      <details class="book-all">
        <summary>{says.allInWords}</summary>
        <ol>
          {steps.map(({ words }, k) => (
            <li key={k}>
              <button
                type="button"
                class="link"
                aria-current={k === at ? 'step' : undefined}
                onClick={() => go(k)}
              >
                {words.title}
              </button>
              <Text words={words} />
            </li>
          ))}
        </ol>
      </details>
      {prints ? <Sheets {...{ design, steps, perPage }} /> : null}
      {kit}
    </section>
  )
}

/** A card of the garden that has steps. */
interface CardToMake {
  /** In the address. */
  readonly name: string
  readonly title: string
  readonly picture: string
  /** What it asks of the hands, and how long it takes. */
  readonly asks: string
}

interface StepBookProps {
  readonly cards: readonly CardToMake[]
}

/** The steps of the card that the address asks for; without one, a choice of the garden's. */
export function StepBook({ cards }: StepBookProps): JSX.Element {
  const [found, setFound] = useState<Found | null>(null)
  useEffect(() => {
    void asked().then(setFound)
  }, [])
  if (found?.what === 'design') return <Book design={found.design} isOwn={found.isOwn} />
  return (
    <section class="book">
      <h1>{says.stepByStep}</h1>
      {found?.what === 'trouble' ? (
        <p class="trouble" role="alert">
          {found.sentence}
        </p>
      ) : null}
      <p>{says.chooseCard}</p>
      <ul class="book-cards" data-awake={found !== null}>
        {cards.map(({ name, title, picture, asks }) => (
          <li key={name}>
            <a href={placed(`/steps/?from=${name}`)}>
              <img src={placed(picture)} alt="" width="480" height="300" loading="lazy" decoding="async" />
              {title}
            </a>
            <span class="quiet">{asks}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
