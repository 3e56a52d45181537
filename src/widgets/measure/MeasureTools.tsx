/** Loaded when a reader comes to the field for a ruler's reading. */
import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import * as says from '../../../content/words/measure/tools.ts'
import type { Design, Flat } from '../../paper/index.ts'
import { measure, opensTo } from '../../paper/index.ts'
import { readLink } from '../link/read-link.ts'
import { benchOf, lengthUnit } from '../model/page.ts'
import { printedOf } from '../model/printed.ts'
import type { BenchConfig } from '../state/config.ts'
import { benchFields } from '../state/fields.ts'
import type { LengthUnit, ValueUnit } from '../state/format.ts'
import { shown, small, typed, unitSign } from '../state/format.ts'
import { readingHelp } from '../state/reading-help.ts'
import type { Words } from '../state/readings.ts'
import { readingWords } from '../state/readings.ts'
import type { BenchState } from '../state/state.ts'
import { leadOf, startState } from '../state/state.ts'
import type { Further as What } from './compare.ts'
import { compare, compareSeveral, comparisonSays, severalSay } from './compare.ts'
import type { MeasureYoursProps, Texts } from './reading.ts'

type Measured = 'rise' | What

/** Longer than any card, mm; and the widest opening, degrees. */
const MOST: Readonly<Record<ValueUnit, number>> = { mm: 1000, deg: 180 }

const unitOf = (what: Measured): ValueUnit => (what === 'stop' ? 'deg' : 'mm')

/** What was typed, in mm or degrees; null if nothing was, undefined if it is no such reading. */
function readingIn(what: Measured, texts: Texts, length: LengthUnit): number | null | undefined {
  const text = texts[what] ?? ''
  if (text.trim() === '') return null
  const value = typed(text, unitOf(what), length)
  return value !== null && value >= 0 && value <= MOST[unitOf(what)] ? value : undefined
}

/** Whether what was typed is no reading. */
export const isWrong = (what: Measured, texts: Texts, length: LengthUnit): boolean =>
  readingIn(what, texts, length) === undefined

/** Which card the reader's ruler was held to. */
type Which = 'printed' | 'chapter' | 'bench'

interface Compared {
  readonly made: Design
  readonly point: Flat | null
  readonly which: Which
  /** Those that differ from one another, with what they are called. */
  readonly offered: readonly { readonly which: Which; readonly says: string }[]
  choose(which: Which): void
}

/** What sets a state apart from the chapter's own: `slit 46.0 mm`, `lean 5.0 mm`. */
const apart = (
  state: BenchState,
  start: BenchState,
  config: BenchConfig,
  length: LengthUnit,
): readonly string[] =>
  benchFields(start.design, config)
    .filter(({ get }) => Math.abs(get(state) - get(start)) >= 0.05)
    .map(({ label, unit, get }) => says.size(small(label), shown(get(state), unit, length)))

/**
 * The cards a reader may have made: the template that this device remembers, the chapter's own, and what the
 * bench shows whenever the hands rest, since finding slips is too slow for every frame of a drag.
 */
function useCompared(slug: string, design: Design, config: BenchConfig): Compared {
  const start = useMemo(() => startState(design, config), [design, config])
  const [rested, setRested] = useState<BenchState>(start)
  const [chosen, setChosen] = useState<Which | null>(null)
  const length = lengthUnit.value
  useEffect(
    () =>
      effect(() => {
        const bench = benchOf(slug).value
        if (!bench || bench.held.value !== null || bench.playing.value) return
        const now = bench.state.value
        setRested((before) => (before.design === now.design && before.point === now.point ? before : now))
      }),
    [slug],
  )
  const link = printedOf(slug)
  const printed = useMemo(() => (link === null ? null : readLink(link, start).state), [link, start])
  const called = (state: BenchState, name: string) => ({
    state,
    says: says.cardWith(name, apart(state, start, config, length)),
  })
  const cards: Readonly<Record<Which, { state: BenchState; says: string } | null>> = {
    printed: printed && called(printed, says.printedCard),
    chapter: called(start, says.chapterCard),
    bench: apart(rested, start, config, length).length === 0 ? null : called(rested, says.benchCard),
  }
  const which = chosen && cards[chosen] ? chosen : cards.printed ? 'printed' : 'chapter'
  const { design: made, point } = cards[which]?.state ?? start
  return {
    made,
    point,
    which,
    offered: (['printed', 'chapter', 'bench'] as const).flatMap((one) => {
      const card = cards[one]
      return card ? [{ which: one, says: card.says }] : []
    }),
    choose: setChosen,
  }
}

/** What can be measured beside the rise: what this card has, and what does not always read alike. */
function furtherOf(design: Design, id: string | undefined, at: number): readonly What[] {
  if (id === undefined) return []
  const gapes = measure(design, at).gapes.some(({ between }) => between.includes(id))
  return [
    'reach',
    ...(gapes ? (['gape'] as const) : []),
    ...(opensTo(design, id) < 180 ? (['stop'] as const) : []),
  ]
}

interface PartProps extends MeasureYoursProps {
  /** In front of every id. */
  readonly field: string
  readonly texts: Texts
  readonly onType: (what: string, text: string) => void
}

interface Asked extends Compared {
  readonly at: number
  readonly lead: string | undefined
  readonly further: readonly What[]
  wordsOf(what: Measured): Words & { readonly help: string }
}

function useAsked({ slug, design, config, id, at = 90 }: PartProps): Asked {
  const compared = useCompared(slug, design, config)
  const { made } = compared
  const lead = id ?? leadOf(made, config)?.id
  const further = useMemo(() => furtherOf(made, lead, at), [made, lead, at])
  const wordsOf = (what: Measured) => ({
    ...readingWords(what, startState(made, config)),
    help: readingHelp(
      what,
      made.mechanisms.find((m) => m.id === lead),
      config,
    ),
  })
  return { ...compared, at, lead, further, wordsOf }
}

/** Fields for further readings, each of which may be left empty. */
export function Further(props: PartProps): JSX.Element {
  const { field, texts, onType } = props
  const { further, wordsOf } = useAsked(props)
  const length = lengthUnit.value
  return (
    <>
      <p>{says.severalTellMore}</p>
      {further.map((what) => (
        <p class="measure-ask" key={what}>
          <label for={`${field}-${what}`}>{wordsOf(what).label}</label>
          <input
            id={`${field}-${what}`}
            type="text"
            class="number-input"
            inputMode="decimal"
            autocomplete="off"
            value={texts[what] ?? ''}
            aria-invalid={isWrong(what, texts, length)}
            aria-describedby={`${field}-${what}-help ${field}-says`}
            onInput={(event) => onType(what, event.currentTarget.value)}
          />
          <span class="unit">{unitSign(unitOf(what), length)}</span>
          <span class="measure-help" id={`${field}-${what}-help`}>
            {wordsOf(what).help}
          </span>
        </p>
      ))}
    </>
  )
}

/** What the readings show, and what they speak for. */
export function Says(props: PartProps): JSX.Element | null {
  const { config, id, texts, field } = props
  const { made, point, at, lead, further, wordsOf, which, offered, choose } = useAsked(props)
  const length = lengthUnit.value
  const all: readonly Measured[] = ['rise', ...further]
  const values = all.map((what) => readingIn(what, texts, length))
  const key = values.join()
  const found = useMemo(() => {
    const given = Object.fromEntries(
      all.flatMap((what, k) => (typeof values[k] === 'number' ? [[what, values[k]]] : [])),
    ) as Partial<Record<Measured, number>>
    const count = Object.keys(given).length
    if (count === 0 || values.includes(undefined)) return null
    const where = { id, opening: at }
    const unnamed = leadOf(made, config)?.id
    if (count > 1 || given.rise === undefined) {
      const several = compareSeveral(made, config, where, given)
      return { model: null, ...severalSay(several, at, length, unnamed) }
    }
    const one = compare(made, config, point, where, given.rise)
    return { model: one.model, says: comparisonSays(one, length, unnamed), causes: [] }
  }, [key, made, config, point, id, at, length, lead])
  const wrong = all.find((_, k) => values[k] === undefined)
  if (wrong) {
    const most = shown(MOST[unitOf(wrong)], unitOf(wrong), length)
    return <p>{wrong === 'rise' ? says.typeNumber(most) : says.typeNumberFor(wordsOf(wrong).label, most)}</p>
  }
  if (!found) return null
  const name = offered.find((one) => one.which === which)?.says
  return (
    <>
      {offered.length > 1 ? (
        <p class="measure-with">
          <label for={`${field}-with`}>{says.compareWith}</label>
          <select
            id={`${field}-with`}
            value={which}
            onChange={({ currentTarget }) => choose(currentTarget.value as Which)}
          >
            {offered.map((one) => (
              <option key={one.which} value={one.which}>
                {one.says}
              </option>
            ))}
          </select>
        </p>
      ) : (
        <p>{says.comparedWith(name ?? '')}</p>
      )}
      <p>
        {found.model === null ? null : (
          <>
            {says.modelSaysBefore(at)} <strong>{shown(found.model, 'mm', length)}</strong>
            {says.modelSaysAfter}{' '}
          </>
        )}
        {found.says.join(' ')}
      </p>
      {found.causes.length > 0 ? (
        <ul>
          {found.causes.map((cause) => (
            <li key={cause}>{cause}</li>
          ))}
        </ul>
      ) : null}
    </>
  )
}
