import './challenge.css'
import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Check, Design } from '../../paper/index.ts'
import { benchOf, lengthUnit } from '../model/page.ts'
import type { BenchConfig } from '../state/config.ts'
import { startState } from '../state/state.ts'
import type { Goal } from './judge.ts'
import { judge } from './judge.ts'

interface ChallengeProps {
  readonly slug: string
  /** The design with which the page begins. */
  readonly design: Design
  readonly config: BenchConfig
  readonly goal: Goal
  /** The verdicts on that design, so that the page says the same before and after it wakes. */
  readonly checks: readonly Check[]
  readonly children?: ComponentChildren
}

/** A task that the kernel judges while the reader works on the page's bench. */
export function Challenge({ slug, design, config, goal, checks, children }: ChallengeProps): JSX.Element {
  // The first picture is the server's, whatever the bench shows by now: waking does not mend attributes.
  const [awake, setAwake] = useState(false)
  useEffect(() => setAwake(true), [])
  const shown = benchOf(slug).value
  const bench = awake ? shown : null
  const state = bench?.state.value ?? startState(design, config)
  const { done, says } = judge(goal, state, config, bench ? bench.checks.value : checks, lengthUnit.value)
  const [met, setMet] = useState(false)
  useEffect(() => {
    // It stays quiet while a hand passes through the goal; a goal that holds is told once.
    if (!done) {
      setMet(false)
      return undefined
    }
    const wait = setTimeout(() => setMet(true), 600)
    return () => clearTimeout(wait)
  }, [done])
  return (
    <div class="challenge" data-done={done}>
      <span class="challenge-tick" aria-hidden="true">
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <rect x="2" y="2" width="20" height="20" rx="3" />
          {done ? <path d="M6 12.5l4.2 4.2L18.5 7.5" /> : null}
        </svg>
      </span>
      <div class="challenge-words">
        {children}
        <p class="challenge-says">
          {done ? <strong>Done. </strong> : null}
          {says}
        </p>
        <p class="aloud" aria-live="polite">
          {met ? `Challenge done. ${says}` : ''}
        </p>
      </div>
    </div>
  )
}
