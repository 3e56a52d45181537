import '../../drawing/pen/marks.css'
import '../bench/bench.css'
import './dummy.css'
import './slips/slip.css'
import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as modelSays from '../../../content/words/dummy/model.ts'
import * as says from '../../../content/words/dummy/page.ts'
import type { Design } from '../../paper/index.ts'
import { OpeningBar } from '../bench/OpeningBar.tsx'
import { ChartFigure } from '../figures/ChartFigure.tsx'
import { fetchBrush } from '../figures/fetch-brush.ts'
import { Knobs } from '../figures/Knobs.tsx'
import { SectionFigure } from '../figures/SectionFigure.tsx'
import { SheetFigure, SheetPick } from '../figures/SheetFigure.tsx'
import { screenFrames } from '../figures/screen-frames.ts'
import { ViewFigure } from '../figures/ViewFigure.tsx'
import { hiddenIn } from '../keeping/aside.ts'
import { fetched, notLoaded } from '../model/loading.ts'
import { recallUnit } from '../model/page.ts'
import type { FigureName } from '../state/config.ts'
import { EVERY_FIGURE } from '../state/config.ts'
import { Over } from './card/Over.tsx'
import { keepExamining } from './desk/examining.ts'
import { followKeys } from './follow-keys.ts'
import { keepFocus } from './keep-focus.ts'
import { ownerOf } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'
import { dummyModel } from './model/dummy-model.ts'
import { EMPTY } from './model/empty.ts'
import type { Work } from './model/work.ts'
import { workOn } from './model/work.ts'
import { Outline } from './Outline.tsx'
import { Sizes } from './Sizes.tsx'
import type { Starter } from './slips/Begin.tsx'
import { Begin } from './slips/Begin.tsx'
import { CardSlip, cardSays } from './slips/CardSlip.tsx'
import { KeysSlip } from './slips/KeysSlip.tsx'
import { MendSlip } from './slips/MendSlip.tsx'
import { Offers } from './slips/Offers.tsx'
import { PiecesSlip } from './slips/PiecesSlip.tsx'
import { SavedSlip } from './slips/SavedSlip.tsx'
import type { Teaches } from './slips/WishSlip.tsx'
import { WishSlip } from './slips/WishSlip.tsx'
import { Top } from './Top.tsx'
import { ToMend, Verdict } from './Verdict.tsx'

interface FrameProps {
  readonly dummy: Dummy
  readonly name: FigureName
  readonly children: ComponentChildren
}

/** A figure: large on the table, or small beside it, where a press makes it large. */
function Frame({ dummy, name, children }: FrameProps): JSX.Element {
  const isLarge = dummy.large.value === name
  return (
    <figure class="dummy-figure" data-figure={name} data-large={isLarge}>
      <div class="dummy-figure-picture" inert={!isLarge}>
        {children}
      </div>
      {isLarge ? null : (
        <button
          type="button"
          class="enlarge"
          onClick={() => {
            dummy.large.value = name
          }}
        >
          <strong>{says.captions[name]}</strong>
        </button>
      )}
    </figure>
  )
}

function Figures({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const bench = dummy.shown.value
  const hidden = hiddenIn(dummy.bench.design.value, dummy.aside.value)
  const lead = hidden.has(bench.config.lead ?? '') ? undefined : bench.config.lead
  const isSmall = (name: FigureName): boolean => dummy.large.value !== name
  const press = (panel: string | null) => {
    if (panel === null) return
    const owner = ownerOf(bench.design.peek(), { what: 'face', name: panel })
    const there = owner ? ({ what: 'part', name: owner.id } as const) : null
    // A second press on a part takes up the face that is pressed.
    const again = there && dummy.chosen.peek()?.name === there.name
    dummy.choose(there && !again ? there : { what: 'face', name: panel })
  }
  const pictures: Readonly<Record<FigureName, () => JSX.Element>> = {
    view: () => (
      <ViewFigure
        bench={bench}
        options={lead === undefined ? {} : { rise: [lead] }}
        small={isSmall('view')}
        over={(drawn) => <Over {...{ dummy, drawn }} />}
        onPress={press}
      />
    ),
    sheet: () => (
      <>
        <SheetFigure bench={bench} section={false} small={isSmall('sheet')} />
        {isSmall('sheet') ? null : <SheetPick bench={bench} />}
      </>
    ),
    section: () => <SectionFigure bench={bench} lead={lead} small={isSmall('section')} />,
    chart: () => <ChartFigure bench={bench} lead={lead} small={isSmall('chart')} />,
  }
  return (
    <>
      {EVERY_FIGURE.map((name) => (
        <Frame key={name} {...{ dummy, name }}>
          {pictures[name]()}
        </Frame>
      ))}
    </>
  )
}

interface SlipsProps {
  readonly dummy: Dummy
  readonly work: Work | null
  readonly starters: readonly Starter[]
  readonly teaches: Teaches
  readonly onTake: (starter: Starter) => void
}

/** Where there is no room for small figures: their names, of which one is large. */
const FigureNames = ({ dummy }: { readonly dummy: Dummy }): JSX.Element => (
  <div class="figure-names">
    {EVERY_FIGURE.map((name) => (
      <button
        key={name}
        type="button"
        aria-pressed={dummy.large.value === name}
        onClick={() => {
          dummy.large.value = name
        }}
      >
        {says.captions[name]}
      </button>
    ))}
  </div>
)

/** The one slip that lies beside the card now. */
function Slips({ dummy, work, starters, teaches, onTake }: SlipsProps): JSX.Element | null {
  const { slip, chosen } = dummy
  switch (slip.value) {
    case 'begin':
      return (
        <Begin
          {...{ dummy, starters, onTake }}
          onSaved={() => {
            slip.value = 'saved'
          }}
        />
      )
    case 'offers':
      return chosen.value ? <Offers dummy={dummy} thing={chosen.value} /> : null
    case 'pieces':
      return chosen.value ? <PiecesSlip dummy={dummy} thing={chosen.value} /> : null
    case 'wish':
      return <WishSlip {...{ dummy, teaches }} />
    case 'mend':
      return <MendSlip dummy={dummy} />
    case 'card':
      return <CardSlip dummy={dummy} />
    case 'keys':
      return <KeysSlip dummy={dummy} />
    case 'saved':
      return work ? <SavedSlip {...{ dummy, work }} /> : null
    default:
      return null
  }
}

/** Where the margin's words stand on the page, and are folded away until they are asked for. */
const NARROW = '(width < 60em)'

/** The margin: what is on the card, whether it works, and what it is made of. */
function Margin({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const [open, setOpen] = useState(true)
  useEffect(() => {
    const narrow = matchMedia(NARROW)
    const look = () => setOpen(!narrow.matches)
    look()
    narrow.addEventListener('change', look)
    return () => narrow.removeEventListener('change', look)
  }, [])
  return (
    <div class="in-margin dummy-margin">
      <Verdict dummy={dummy} />
      <details open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>{says.onThisCard}</summary>
        <Outline dummy={dummy} />
        <h2>{says.card}</h2>
        <p class="quiet">{cardSays(dummy.bench.design.value)}</p>
        <button
          type="button"
          class="link"
          onClick={() => {
            dummy.slip.value = 'card'
          }}
        >
          {says.changeCard}
        </button>
      </details>
    </div>
  )
}

export interface DummyPageProps {
  readonly starters: readonly Starter[]
  readonly teaches: Teaches
}

/** The page on which a maker plans a card of their own, from an empty card or a dummy to a sheet. */
export function DummyPage({ starters, teaches }: DummyPageProps): JSX.Element {
  const [dummy] = useState(() => dummyModel(EMPTY, screenFrames))
  const [awake, setAwake] = useState(false)
  const [work, setWork] = useState<Work | null>(null)
  const { bench, slip } = dummy
  const root = useRef<HTMLDivElement>(null)
  useEffect(() => (root.current ? keepFocus(root.current) : undefined), [])
  useEffect(() => {
    recallUnit()
    void fetchBrush()
    const stop = [keepExamining(bench), followKeys(dummy)]
    const coming = workOn(dummy)
    // The card is not touched before it is known which one lies there.
    void coming.then((found) => {
      setWork(found)
      setAwake(true)
    })
    return () => {
      for (const end of stop) end()
      void coming.then(({ end }) => end())
      bench.dispose()
    }
  }, [dummy, bench])
  const onTake = async ({ design, title }: Starter) => {
    try {
      const answer = await fetched(design)
      // The site's own file, checked when the site was built.
      dummy.put((await answer.json()) as Design, modelSays.putOnTable(title))
    } catch (error) {
      bench.trouble.value = notLoaded(title, error)
    }
  }
  return (
    <div ref={root} class="dummy bench" data-awake={awake} data-slip={slip.value ?? 'none'}>
      <Margin dummy={dummy} />
      <div class="on-page dummy-page">
        <Top {...{ dummy, work }} />
        <div class="dummy-table" data-large={dummy.large.value}>
          <Figures dummy={dummy} />
          <FigureNames dummy={dummy} />
          <Slips {...{ dummy, work, starters, teaches, onTake }} />
        </div>
        <div class="dummy-bar">
          <OpeningBar bench={bench} />
          <ToMend dummy={dummy} />
          <Knobs bench={bench} />
        </div>
        <Sizes dummy={dummy} />
        <p class="aloud" role="status">
          {dummy.told.value}
        </p>
      </div>
    </div>
  )
}
