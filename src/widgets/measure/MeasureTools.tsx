/** Loaded when a reader comes to the field for a ruler's reading. */
import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Design, Flat } from '../../paper/index.ts'
import { measure, opensTo } from '../../paper/index.ts'
import { benchOf, lengthUnit } from '../model/page.ts'
import type { BenchConfig } from '../state/config.ts'
import type { LengthUnit, ValueUnit } from '../state/format.ts'
import { shown, typed, unitSign } from '../state/format.ts'
import type { Words } from '../state/readings.ts'
import { readingWords } from '../state/readings.ts'
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

interface Rested {
  readonly made: Design
  readonly point: Flat | null
}

/** What the bench shows whenever the hands rest: finding slips is too slow for every frame of a drag. */
function useRested(slug: string, design: Design, config: BenchConfig): Rested {
  const [rested, setRested] = useState<Rested>({ made: design, point: config.point ?? null })
  useEffect(
    () =>
      effect(() => {
        const bench = benchOf(slug).value
        if (!bench || bench.held.value !== null) return
        const { design: made, point } = bench.state.value
        setRested((before) => (before.made === made && before.point === point ? before : { made, point }))
      }),
    [slug],
  )
  return rested
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

interface Asked extends Rested {
  readonly at: number
  readonly lead: string | undefined
  readonly further: readonly What[]
  wordsOf(what: Measured): Words
}

function useAsked({ slug, design, config, id, at = 90 }: PartProps): Asked {
  const { made, point } = useRested(slug, design, config)
  const lead = id ?? leadOf(made, config)?.id
  const further = useMemo(() => furtherOf(made, lead, at), [made, lead, at])
  const wordsOf = (what: Measured) =>
    readingWords(
      what,
      startState(made, config),
      made.mechanisms.find((m) => m.id === lead),
    )
  return { made, point, at, lead, further, wordsOf }
}

/** Fields for further readings, each of which may be left empty. */
export function Further(props: PartProps): JSX.Element {
  const { field, texts, onType } = props
  const { further, wordsOf } = useAsked(props)
  const length = lengthUnit.value
  return (
    <>
      <p>Two readings tell more than one. Leave empty what you did not measure.</p>
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
  const { config, id, texts } = props
  const { made, point, at, lead, further, wordsOf } = useAsked(props)
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
    const type = wrong === 'rise' ? 'Type' : `${wordsOf(wrong).label}: type`
    return <p>{`${type} a number from 0 to ${shown(MOST[unitOf(wrong)], unitOf(wrong), length)}.`}</p>
  }
  if (!found) return null
  return (
    <>
      <p>
        {found.model === null ? null : (
          <>
            At {at}° the model says <strong>{shown(found.model, 'mm', length)}</strong>.{' '}
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
