import '../fields/fields.css'
import '../../drawing/pen/marks.css'
import './class.css'
import type { JSX } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/class-page.ts'
import { POINT, sizeName } from '../../class/spread.ts'
import type { Together } from '../../class/together.ts'
import type { Part } from '../../class/words.ts'
import { lessonFor } from '../../class/words.ts'
import type { Design } from '../../paper/index.ts'
import { nameOf } from '../../paper/index.ts'
import { paperForLocale } from '../../sheet/pages/paper-sizes.ts'
import { ownCards } from '../keeping/own-cards.ts'
import type { Entry } from '../keeping/shelf.ts'
import type { Compared, ShownClass, Wanted } from './asked.ts'
import { classDesk } from './desk.ts'
import type { Found } from './find-card.ts'
import { askedCard, cardOf, LINKED } from './find-card.ts'
import { LessonBar } from './LessonBar.tsx'
import type { ClassOffer } from './offer.ts'
import { PackCell } from './PackCell.tsx'
import { ReadingsCell } from './ReadingsCell.tsx'
import type { ClassState } from './state.ts'
import { begin, keep, kept } from './state.ts'
import { Wall } from './Wall.tsx'
import { YourClass } from './YourClass.tsx'

/** So long after the last change a class is worked out, ms. */
const SETTLES = 250

const Cell = ({
  id,
  name,
  note,
  children,
}: {
  readonly id: string
  readonly name: string
  readonly note: string
  readonly children: JSX.Element | readonly JSX.Element[]
}): JSX.Element => (
  <section class="cell" aria-labelledby={id}>
    <div class="in-margin">
      <div>
        <h2 class="cell-name" id={id}>
          {name}
        </h2>
        <p class="cell-note">{note}</p>
      </div>
    </div>
    <div class="on-page">{children}</div>
  </section>
)

/** What the lesson's texts name. */
const valuesFor = (shown: ShownClass | null): Readonly<Record<string, string>> => {
  const measured = shown?.measured
  return {
    opening: `${measured?.opening ?? 90}°`,
    size: measured ? sizeName(measured) : says.someSize,
    part: measured && measured.id !== POINT ? nameOf(measured.id) : says.wholeCard,
    error: '1',
  }
}

/** Without its picture there is nothing to colour. */
const unadorned = ({ art: _, ...design }: Design): Design => design

/** A lesson with paper: a class in one sentence, its pack, its wall, its readings. */
export function ClassPage({ offer }: { readonly offer: ClassOffer }): JSX.Element {
  const first = useMemo(() => begin(offer.cards[1]?.key ?? offer.cards[0]?.key ?? ''), [offer])
  const [state, setState] = useState(first)
  const [awake, setAwake] = useState(false)
  const [own, setOwn] = useState<readonly Entry[]>([])
  const [found, setFound] = useState<Found | null>(null)
  const [shown, setShown] = useState<ShownClass | null>(null)
  const [compared, setCompared] = useState<{
    readonly all: readonly Compared[]
    readonly together: Together | null
  }>({ all: [], together: null })
  const [trouble, setTrouble] = useState('')
  const [onWall, setOnWall] = useState(false)
  const desk = useRef(classDesk())
  const compares = useRef(classDesk())
  const wallButton = useRef<HTMLButtonElement>(null)

  useEffect(() => {
    const asked = askedCard(offer, location.search, location.hash)
    // The paper that a device's language has, as for templates and booklets, until another is chosen.
    const paper = paperForLocale(navigator.language)
    const before = kept({ ...first, choice: { ...first.choice, paper } })
    // Readings belong to the card that they were read off; a link of before brings nothing any more.
    const isSame = asked === null ? before.card !== LINKED : asked === before.card && asked !== LINKED
    setState(
      isSame
        ? before
        : {
            ...before,
            card: asked ?? first.card,
            readings: {},
            choice: { ...before.choice, differs: 'first' },
          },
    )
    setAwake(true)
    void ownCards().then(setOwn)
  }, [offer, first])

  const change = (by: (before: ClassState) => ClassState) =>
    setState((before) => {
      const next = by(before)
      keep(next)
      return next
    })

  useEffect(() => {
    if (!awake) return undefined
    let isLate = false
    void cardOf(state.card, offer).then((card) => {
      if (isLate) return
      setFound(card.ok ? card.found : null)
      setTrouble(card.ok ? '' : card.sentence)
    })
    return () => {
      isLate = true
    }
  }, [state.card, awake, offer])

  const lesson = offer.lessons.find(({ ages }) => ages === state.choice.ages) ?? offer.lessons[0]
  const wanted = useMemo<Wanted | null>(() => {
    if (!found || !lesson) return null
    const { design, chapter, lead, point, seen } = found
    return {
      ...{ design, lesson, chapter, choice: state.choice, words: offer.words },
      ...(lead === undefined ? {} : { lead }),
      ...(point === undefined ? {} : { point }),
      ...(seen === undefined ? {} : { seen }),
      ...(state.minutes === null ? {} : { minutes: state.minutes }),
    }
  }, [found, lesson, state.choice, state.minutes, offer.words])

  useEffect(() => {
    if (!wanted) return undefined
    const timer = setTimeout(
      () =>
        desk.current.ask({ what: 'class', wanted }, (answer) => {
          if (answer.to === 'class') {
            setShown(answer.shown)
            setTrouble('')
          } else if (answer.to === 'fault') setTrouble(answer.sentence)
        }),
      SETTLES,
    )
    return () => clearTimeout(timer)
  }, [wanted])

  useEffect(() => {
    if (!wanted || Object.keys(state.readings).length === 0) {
      setCompared({ all: [], together: null })
      return undefined
    }
    const timer = setTimeout(
      () =>
        compares.current.ask({ what: 'compare', wanted, readings: state.readings }, (answer) => {
          if (answer.to === 'compare') setCompared({ all: answer.compared, together: answer.together })
        }),
      SETTLES,
    )
    return () => clearTimeout(timer)
  }, [wanted, state.readings])

  const told = lesson ? lessonFor(lesson, shown?.differs ?? true) : null
  const planned = told?.plans[`${state.choice.minutes}`] ?? []
  const parts = planned.map(
    (part, k): Part => ({
      ...part,
      minutes: state.minutes?.length === planned.length ? (state.minutes[k] ?? part.minutes) : part.minutes,
    }),
  )
  const values = valuesFor(shown)
  const walled = useMemo(
    () => shown && (state.choice.picture ? shown : { ...shown, design: unadorned(shown.design) }),
    [shown, state.choice.picture],
  )
  const read = Object.keys(state.readings).length
  return (
    <div class="class-page" data-awake={awake} data-ready={shown !== null}>
      <Cell id="class-your-class" name={says.yourClass} note={says.yourClassNote}>
        <YourClass
          {...{ offer, own, state }}
          isLinked={state.card === LINKED}
          sizes={shown?.sizes ?? null}
          onState={change}
        />
        <p class="trouble" role="alert" hidden={trouble === ''}>
          {trouble}
        </p>
      </Cell>
      <Cell id="class-the-lesson" name={says.theLesson} note={says.minutes(state.choice.minutes)}>
        <LessonBar
          {...{ parts, values }}
          words={offer.words}
          onMinutes={(minutes) => change((before) => ({ ...before, minutes }))}
        />
        <p class="pack-buttons">
          <button
            ref={wallButton}
            type="button"
            class="button"
            aria-disabled={!shown || !found}
            onClick={() => setOnWall(shown !== null && found !== null)}
          >
            {says.putItOnTheWall}
          </button>
          <span class="quiet">{says.wallNote}</span>
        </p>
      </Cell>
      <Cell id="class-the-pack" name={says.thePack} note={says.thePackNote}>
        <PackCell wanted={wanted} shown={shown} shopping={shown?.shopping ?? []} />
      </Cell>
      <Cell
        id="class-afterwards"
        name={says.afterwards}
        note={read === 0 ? says.afterwardsNote : says.readSoFar(read, state.choice.pupils)}
      >
        <ReadingsCell
          shown={shown}
          readings={state.readings}
          compared={compared.all}
          together={compared.together}
          onReadings={(by) => change((before) => ({ ...before, readings: by(before.readings) }))}
        />
      </Cell>
      {onWall && found && walled ? (
        <Wall
          {...{ found, parts, values }}
          shown={walled}
          words={offer.words}
          readings={state.readings}
          onReading={(code, value) =>
            change((before) => ({ ...before, readings: { ...before.readings, [code]: value } }))
          }
          onEnd={() => {
            setOnWall(false)
            wallButton.current?.focus()
          }}
        />
      ) : null}
    </div>
  )
}
