import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks'
import { type Design, type Flat, measure, opensTo } from '../paper/index.ts'
import type { Further } from './compare.ts'
import type { BenchConfig } from './config.ts'
import { shown, typed, unitSign, type ValueUnit } from './format.ts'
import { benchOf, lengthUnit } from './page.ts'
import { readingWords } from './readings.ts'
import { leadOf, startState } from './state.ts'

interface MeasureYoursProps {
  readonly slug: string
  /** The design with which the page begins: the one of the printed template, until the bench says otherwise. */
  readonly design: Design
  readonly config: BenchConfig
  /** The mechanism whose rise is read; the bench's lead if left out. */
  readonly id?: string
  /** The opening at which the reader measures, degrees; 90 if left out. */
  readonly at?: number
}

/** Longer than any card, mm. */
const LONGEST = 1000

/** What may be measured beside the rise: what the card has, and what does not always read alike. */
function furtherOf(design: Design, id: string, at: number): readonly Further[] {
  const gapes = measure(design, at).gapes.some(({ between }) => between.includes(id))
  return [
    'reach',
    ...(gapes ? (['gape'] as const) : []),
    ...(opensTo(design, id) < 180 ? (['stop'] as const) : []),
  ]
}

type What = 'rise' | Further

/** Loaded when a reader comes to the field: what compares, and finds slips. */
type Tools = typeof import('./compare.ts')

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

/** The reader's ruler against the model, and what the hand may have done. */
export function MeasureYours({ slug, design, config, id, at = 90 }: MeasureYoursProps): JSX.Element {
  const field = useId()
  const [texts, setTexts] = useState<Partial<Record<What, string>>>({})
  const [tools, setTools] = useState<Tools | null>(null)
  const root = useRef<HTMLDivElement>(null)
  const fetchTools = () => void import('./compare.ts').then(setTools, () => {})
  useEffect(() => {
    // What was typed before the page woke counts too.
    const inputs = [...(root.current?.querySelectorAll('input') ?? [])].filter(({ value }) => value)
    if (inputs.length === 0) return
    setTexts(Object.fromEntries(inputs.map(({ name, value }) => [name, value])))
    fetchTools()
  }, [])
  const length = lengthUnit.value
  const { made, point } = useRested(slug, design, config)
  const lead = id ?? leadOf(made, config)?.id
  const further = useMemo(
    () => (point || lead === undefined ? [] : furtherOf(made, lead, at)),
    [made, point, lead, at],
  )
  const unitOf = (what: What): ValueUnit => (what === 'stop' ? 'deg' : 'mm')
  const reads = (['rise', ...further] as const).map((what) => {
    const text = texts[what] ?? ''
    const unit = unitOf(what)
    const value = typed(text, unit, length)
    const most = unit === 'deg' ? 180 : LONGEST
    const fits = text.trim() === '' || (value !== null && value >= 0 && value <= most)
    return { what, text, unit, value: fits ? value : null, fits, most }
  })
  const key = JSON.stringify(reads.map(({ value }) => value))
  const found = useMemo(() => {
    const given = reads.filter(({ value }) => value !== null)
    const [first] = given
    if (!tools || !first || reads.some(({ fits }) => !fits)) return null
    if (given.length === 1 && first.what === 'rise') {
      const one = tools.compare(made, config, point, { id, opening: at }, first.value ?? 0)
      const says = tools.comparisonSays(one, length, leadOf(made, config)?.id)
      return { model: one.model, says, causes: [] }
    }
    const several = tools.compareSeveral(
      made,
      config,
      { id, opening: at },
      Object.fromEntries(given.map(({ what, value }) => [what, value])),
    )
    return { model: null, ...tools.severalSay(several, at, length, leadOf(made, config)?.id) }
  }, [tools, key, made, config, point, id, at, length])
  const wrong = reads.find(({ fits }) => !fits)
  const wordsOf = (what: What) =>
    readingWords(
      what,
      startState(made, config),
      made.mechanisms.find((m) => m.id === lead),
    )
  const row = ({ what, text, unit, fits }: (typeof reads)[number]) => (
    <p class="measure-ask" key={what}>
      <label for={`${field}-${what}`}>{what === 'rise' ? 'My ruler says' : wordsOf(what).label}</label>
      <input
        id={`${field}-${what}`}
        name={what}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={text}
        aria-invalid={!fits}
        aria-describedby={`${field}-says${what === 'rise' ? '' : ` ${field}-${what}-help`}`}
        onFocus={fetchTools}
        onInput={(event) => {
          fetchTools()
          setTexts({ ...texts, [what]: event.currentTarget.value })
        }}
      />
      <span class="unit">{unitSign(unit, length)}</span>
      {what === 'rise' ? null : (
        <span class="measure-help" id={`${field}-${what}-help`}>
          {wordsOf(what).help}
        </span>
      )}
    </p>
  )
  return (
    <div class="measure-yours" ref={root}>
      {reads.slice(0, 1).map(row)}
      {further.length > 0 ? (
        <details class="measure-more">
          <summary>Add a second reading</summary>
          <p>Two readings tell more than one. Leave empty what you did not measure.</p>
          {reads.slice(1).map(row)}
        </details>
      ) : null}
      <div class="measure-says" id={`${field}-says`} role="status">
        {wrong ? (
          <p>{`${wrong.what === 'rise' ? 'Type' : `${wordsOf(wrong.what).label}: type`} a number from 0 to ${shown(wrong.most, wrong.unit, length)}.`}</p>
        ) : null}
        {found ? (
          <p>
            {found.model === null ? null : (
              <>
                At {at}° the model says <strong>{shown(found.model, 'mm', length)}</strong>.{' '}
              </>
            )}
            {found.says.join(' ')}
          </p>
        ) : null}
        {found && found.causes.length > 0 ? (
          <ul>
            {found.causes.map((cause) => (
              <li key={cause}>{cause}</li>
            ))}
          </ul>
        ) : null}
      </div>
    </div>
  )
}
