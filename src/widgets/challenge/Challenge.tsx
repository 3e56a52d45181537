import './challenge.css'
import { effect } from '@preact/signals'
import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import * as says from '../../../content/words/challenge.ts'
import type { Check } from '../../paper/index.ts'
import { Mark } from '../guess/Cover.tsx'
import { linkTo } from '../model/address.ts'
import type { DesignSource } from '../model/brought.ts'
import { designFrom } from '../model/brought.ts'
import { keepSolved, metOn, solvedBy } from '../model/met.ts'
import { benchOf, lengthUnit } from '../model/page.ts'
import type { BenchConfig } from '../state/config.ts'
import type { BenchState } from '../state/state.ts'
import { startState } from '../state/state.ts'
import type { Goal } from './judge.ts'
import { judge, measuresOf } from './judge.ts'

interface ChallengeProps {
  readonly slug: string
  /** The design with which the page begins. */
  readonly design: DesignSource
  readonly config: BenchConfig
  readonly goal: Goal
  /** What the chapter calls it. */
  readonly name: string
  /** Under what the device remembers that it was met. */
  readonly solvedKey: string
  /** The verdicts on that design, so that the page says the same before and after it wakes. */
  readonly checks: readonly Check[]
  readonly children?: ComponentChildren
}

/** Between two looks at the bench, ms: judging every picture of a drag would make the drag slow. */
const LOOK = 120

interface Seen {
  readonly state: BenchState
  readonly checks: readonly Check[] | null
}

/** What the bench shows, looked at now and then. The first picture is the server's, whatever it shows by now. */
function useSeen(slug: string, first: Seen): Seen {
  const [seen, setSeen] = useState(first)
  useEffect(() => {
    let wait: ReturnType<typeof setTimeout> | undefined
    const look = () => {
      wait = undefined
      const bench = benchOf(slug).peek()
      if (bench) setSeen({ state: bench.state.peek(), checks: bench.checks.peek() })
    }
    const stop = effect(() => {
      const bench = benchOf(slug).value
      if (!bench) return
      // Read, so that a change of either is seen.
      void bench.state.value
      void bench.checks.value
      wait ??= setTimeout(look, LOOK)
    })
    return () => {
      stop()
      clearTimeout(wait)
    }
  }, [slug])
  return seen
}

/** A goal that holds for so long is met, ms: a hand may pass through it. */
const HOLDS = 600

/** A task that the kernel judges while the reader works on the page's bench. Once met it keeps its tick. */
export function Challenge(props: ChallengeProps): JSX.Element {
  const { slug, config, goal, name, solvedKey, checks, children } = props
  const design = designFrom(props.design)
  const seen = useSeen(slug, { state: startState(design, config), checks })
  const { done, says: verdict } = judge(goal, seen.state, config, seen.checks, lengthUnit.value)
  const [met, setMet] = useState(false)
  const [solved, setSolved] = useState<string | null>(null)
  useEffect(() => setSolved(solvedBy(slug, solvedKey)), [slug, solvedKey])
  useEffect(() => {
    const noted = metOn(slug)
    if (!done) {
      setMet(false)
      if (noted.peek()?.key === solvedKey) noted.value = null
      return undefined
    }
    const wait = setTimeout(() => {
      const bench = benchOf(slug).peek()
      const link = bench ? linkTo(bench) : ''
      setMet(true)
      setSolved(link)
      keepSolved(slug, solvedKey, link)
      noted.value = { key: solvedKey, name }
    }, HOLDS)
    return () => clearTimeout(wait)
  }, [done, slug, solvedKey, name])
  // How the card stands may be what the chapter's guess asks.
  const answers = config.covers?.some((one) => measuresOf(goal).includes(one)) ?? false
  const ticked = done || solved !== null
  return (
    <div class="challenge" data-done={ticked}>
      <span class="challenge-tick" aria-hidden="true">
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <rect x="2" y="2" width="20" height="20" rx="3" />
          {ticked ? <path d="M6 12.5l4.2 4.2L18.5 7.5" /> : null}
        </svg>
      </span>
      <div class="challenge-words">
        {children}
        <p class="challenge-says">
          {done ? <strong>{says.done} </strong> : null}
          {!done && solved !== null ? (
            <>
              <strong>{says.doneBefore}</strong>{' '}
              {solved === '' ? null : <a href={`#${solved}`}>{says.answerOnBench}</a>}{' '}
            </>
          ) : (
            <>
              <span data-answers={answers}>{verdict}</span>
              {answers ? <Mark /> : null}
            </>
          )}
        </p>
        <p class="aloud" aria-live="polite">
          {met ? says.doneSaid(verdict) : ''}
        </p>
      </div>
    </div>
  )
}
