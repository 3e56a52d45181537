import '../../drawing/pen/marks.css'
import './bench.css'
import './layout.css'
import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useId, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/bench.ts'
import type { Check } from '../../paper/index.ts'
import { SectionFigure, StationBar } from '../figures/SectionFigure.tsx'
import { SheetFigure, SheetPick } from '../figures/SheetFigure.tsx'
import { screenFrames } from '../figures/screen-frames.ts'
import { ViewFigure } from '../figures/ViewFigure.tsx'
import { Cover, ShowHide } from '../guess/Cover.tsx'
import type { Bench } from '../model/bench-model.ts'
import { benchModel } from '../model/bench-model.ts'
import type { DesignSource } from '../model/brought.ts'
import { designFrom } from '../model/brought.ts'
import { examineLater } from '../model/examine-later.ts'
import { notLoaded } from '../model/loading.ts'
import { benchOf, coverAtFirst, followGuess, recallUnit } from '../model/page.ts'
import { tellSpare } from '../model/spare.ts'
import type { BenchConfig, FigureName } from '../state/config.ts'
import { EVERY_FIGURE, foldsOf } from '../state/config.ts'
import type { Said } from '../state/reading-help.ts'
import { leadOf } from '../state/state.ts'
import { templateButton } from '../template/template-button.ts'
import { captions } from './captions.ts'
import { OpeningBar } from './OpeningBar.tsx'
import { LeadReading, ReadingStrip } from './ReadingStrip.tsx'

export interface FoldBenchProps {
  readonly design: DesignSource
  readonly slug: string
  readonly config: BenchConfig
  /** The kernel's verdicts on the design, worked out when the page is made. */
  readonly checks?: readonly Check[]
  /** What is said of each of its readings: `readingHelps`. */
  readonly helps: Partial<Record<Said, string>>
  /** Islands within it, which come a little later: `BenchChart`, `BenchNotes`, `BenchActions`, `BenchKnobs`. */
  readonly chart?: ComponentChildren
  readonly notes?: ComponentChildren
  readonly actions?: ComponentChildren
  readonly knobs?: ComponentChildren
  /** A second bench of a page: the address, the keys and the phrases of the page belong to the first one. */
  readonly aside?: boolean
}

const hints: Partial<Record<FigureName, string>> = {
  view: says.dragCard,
  sheet: says.dragBlue,
}

interface FrameProps {
  readonly name: FigureName
  readonly children: ComponentChildren
  readonly bar?: ComponentChildren
  /** It answers the chapter's guess. */
  readonly answers?: boolean
}

function FigureFrame({ name, children, bar, answers = false }: FrameProps): JSX.Element {
  return (
    <figure class={`bench-figure figure-${name}`} data-answers={answers}>
      {children}
      {answers ? <Cover /> : null}
      <figcaption>
        <strong>{captions[name]}</strong>
        {hints[name] ? <span class="hint">{hints[name]}</span> : null}
        {bar}
      </figcaption>
    </figure>
  )
}

/** Where there is little room: which figure is large. It works without script, as radio buttons do. */
function FigureSwitch({ figures }: { readonly figures: readonly FigureName[] }): JSX.Element {
  const group = useId()
  const large = figures.includes('sheet') ? 'sheet' : figures[0]
  return (
    <fieldset class="figure-switch">
      <legend class="aloud">{says.figure}</legend>
      {figures.map((name) => (
        <label key={name}>
          <input
            type="radio"
            name={group}
            value={name}
            defaultChecked={name === large}
            onChange={({ currentTarget }) => bringUp(currentTarget, name)}
          />
          <span>{captions[name]}</span>
        </label>
      ))}
    </fieldset>
  )
}

/** A figure that is chosen is brought into view, below what is pinned at the top. */
function bringUp(from: HTMLElement, name: FigureName): void {
  const figure = from.closest('.bench')?.querySelector(`.figure-${name}`)
  if (figure) requestAnimationFrame(() => figure.scrollIntoView({ block: 'nearest' }))
}

interface PickProps {
  readonly side: 'left' | 'right'
  readonly figures: readonly FigureName[]
  readonly first: FigureName | undefined
}

/** At the back of the room two figures stand side by side; each is chosen by its name. */
function FigurePick({ side, figures, first }: PickProps): JSX.Element {
  return (
    <select class={`figure-pick pick-${side}`} aria-label={says.figureOn(side)}>
      {figures.map((name) => (
        <option key={name} value={name} selected={name === first}>
          {captions[name]}
        </option>
      ))}
    </select>
  )
}

/** Words of the chapter that move the card: what does so comes when the first of them is pressed. */
async function pressPhrase(bench: Bench, slug: string, { target }: Event): Promise<void> {
  const phrase = target instanceof Element && target.closest<HTMLButtonElement>('button[data-phrase]')
  if (!phrase) return
  try {
    const { press } = await import('../phrase/phrases.tsx')
    press(bench, slug, phrase)
  } catch (error) {
    bench.trouble.value = notLoaded(says.whatMovesCard, error)
    document.querySelector('.bench-grid')?.scrollIntoView()
  }
}

/** Wakes the bench on the page; returns what puts it to sleep again. */
function wake(bench: Bench, slug: string, root: HTMLElement, aside: boolean): () => void {
  const onClick = (event: Event) => {
    if (!aside) void pressPhrase(bench, slug, event)
  }
  const onLost = (event: Event) => {
    const { target, detail } = event as CustomEvent<{ readonly error: unknown }>
    const isChart = target instanceof Element && target.closest('.figure-chart')
    bench.trouble.value = notLoaded(isChart ? says.theChart : says.whatSetsSizes, detail.error)
    event.preventDefault()
  }
  const leave = () => bench.pause()
  recallUnit()
  const follow = followGuess()
  const stop = examineLater(bench)
  benchOf(slug).value = bench
  const forget = tellSpare(bench, root)
  root.addEventListener('astro:hydration-error', onLost)
  document.addEventListener('click', onClick)
  addEventListener('pagehide', leave)
  return () => {
    root.removeEventListener('astro:hydration-error', onLost)
    document.removeEventListener('click', onClick)
    removeEventListener('pagehide', leave)
    benchOf(slug).value = null
    stop()
    follow()
    forget()
    bench.dispose()
  }
}

/**
 * A chapter's bench: the card standing and flat, its section and its chart, what can be set and what is
 * read. The server draws the first picture with the same functions.
 */
export function FoldBench({
  design: source,
  slug,
  config,
  checks,
  helps,
  chart,
  notes,
  actions,
  knobs,
  aside = false,
}: FoldBenchProps): JSX.Element {
  const design = designFrom(source)
  const [bench] = useState(() => {
    coverAtFirst(config)
    return benchModel(design, config, { frames: screenFrames, ...(checks ? { checks } : {}) })
  })
  const [awake, setAwake] = useState(false)
  const root = useRef<HTMLDivElement>(null)
  useEffect(() => {
    setAwake(true)
    return root.current ? wake(bench, slug, root.current, aside) : undefined
  }, [bench, slug, aside])
  const figures = config.figures ?? EVERY_FIGURE
  const has = (name: FigureName): boolean => figures.includes(name)
  const lead = leadOf(design, config)?.id
  const covers = config.covers ?? []
  const folds = foldsOf(config)
  const [left, right] = [figures[0], figures[1] ?? figures[0]]
  return (
    <div ref={root} class="bench" data-awake={awake} data-covers={covers.join(' ')}>
      <a class="skip bench-skip" href={`#${templateButton(slug)}`}>
        {says.skipToTemplate}
      </a>
      <div class="bench-grid" data-folds={folds.join(' ')}>
        <FigurePick side="left" figures={figures} first={left} />
        <FigurePick side="right" figures={figures} first={right} />
        {has('view') ? (
          <FigureFrame name="view" bar={knobs}>
            <ViewFigure bench={bench} options={lead === undefined ? {} : { rise: [lead] }} />
          </FigureFrame>
        ) : null}
        {has('section') ? (
          <FigureFrame name="section" answers={covers.includes('section')} bar={<StationBar bench={bench} />}>
            <SectionFigure bench={bench} lead={lead} />
          </FigureFrame>
        ) : null}
        {has('sheet') ? (
          <FigureFrame name="sheet" bar={<SheetPick bench={bench} />}>
            <SheetFigure bench={bench} section={has('section')} />
          </FigureFrame>
        ) : null}
        <div class="bench-bar">
          {figures.length > 1 ? <FigureSwitch figures={figures} /> : null}
          <OpeningBar bench={bench} />
          <LeadReading bench={bench} slug={slug} />
          {covers.length > 0 ? <ShowHide /> : null}
        </div>
        <ReadingStrip bench={bench} slug={slug} helps={helps} />
        {notes}
        <Notes bench={bench} />
        {has('chart') ? (
          <FigureFrame name="chart" answers={covers.includes('chart')}>
            {chart}
          </FigureFrame>
        ) : null}
        {actions}
      </div>
    </div>
  )
}

/** What the bench could not use of the link that the page was opened with, and what did not load. */
function Notes({ bench }: { readonly bench: Bench }): JSX.Element {
  const trouble = bench.trouble.value
  const notes = [...bench.notes.value, ...(trouble === '' ? [] : [trouble])]
  return (
    <div class="bench-notes" role="status">
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
    </div>
  )
}
